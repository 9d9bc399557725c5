package instant

import (
	"time"
)

func Earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

func Minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }
