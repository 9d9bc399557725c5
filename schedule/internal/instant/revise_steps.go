package instant

import (
	"time"
)

func Latest(a, b time.Time) time.Time {
	if a.Before(b) {
		return b
	}
	return a
}
