// Package instant has small things about times: the later of two, minutes as durations, a cook's quarter hours.
package instant

import (
	"math"
	"time"

	"example.com/cookday/schedule/unit"
)

// SameTime is what an option does that moves no take-off.
const SameTime = " is done at the same time"

func Round3(x float64) float64 { return math.Round(x*1000) / 1000 }

func NonNil[T any](s []T) []T {
	if s == nil {
		return []T{}
	}
	return s
}

// Quarter is to what a cook's clock is rounded ahead of the day.
const Quarter = 15 * time.Minute

func Later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

// Celsius and pounds let the trade's figures be written as the trade says them.
func Celsius(f float64) float64 { return float64(unit.FromFahrenheit(f)) }

func Earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}

func Minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

func UnitMinutes(d unit.Duration) float64 { return time.Duration(d).Minutes() }

func Latest(a, b time.Time) time.Time {
	if a.Before(b) {
		return b
	}
	return a
}

func RoundTo(n, step int) int { return (n + step/2) / step * step }

// QuarterDown is the quarter of an hour before an instant: a cook's clock.
func QuarterDown(t time.Time) time.Time { return t.Truncate(Quarter) }
