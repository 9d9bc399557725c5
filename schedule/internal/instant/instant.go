// Package instant has small things about times: the later of two, minutes as durations, a cook's quarter hours.
package instant

import (
	"time"

	"example.com/cookday/schedule/unit"
)

// Quarter is to what a cook's clock is rounded ahead of the day.
const Quarter = 15 * time.Minute

// Later is the later of two instants.
func Later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

// Earlier is the earlier of two instants.
func Earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

// Minutes is so many minutes as a duration.
func Minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

// UnitMinutes is a duration of a request in minutes.
func UnitMinutes(d unit.Duration) float64 { return time.Duration(d).Minutes() }

// QuarterDown is the quarter of an hour before an instant: a cook's clock.
func QuarterDown(t time.Time) time.Time { return t.Truncate(Quarter) }

// UpTo is the first instant not before t that is a whole multiple of a step.
func UpTo(t time.Time, step time.Duration) time.Time {
	at := t.Truncate(step)
	if at.Before(t) {
		at = at.Add(step)
	}
	return at
}
