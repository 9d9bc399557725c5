package instant

import (
	"time"
)

func Later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
