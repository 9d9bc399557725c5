package day

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
)

func ClockIn(r schedule.Request, c *schedule.Clock, loc *time.Location) time.Time {
	d := Day{Req: r, Loc: loc}
	return d.Clock(c)
}

// Everything is cut and chilled by chillHour of the day before, or earlier where
// quiet hours would leave less than the published two hours to look after it.
const (
	chillHour  = 20
	chillLeast = 12
)

func ChillAt(r schedule.Request, loc *time.Location) time.Time {
	y, m, n := r.Serve.Date.Date()
	d := Day{Req: r, Loc: loc, End: time.Date(y, m, n, r.Serve.Time.Hours(), r.Serve.Time.Minutes(), 0, 0, loc)}
	latest := time.Date(y, m, n-1, chillHour, 0, 0, 0, loc)
	for at := latest; at.Hour() >= chillLeast; at = at.Add(-2 * instant.Quarter) {
		if len(d.Untended(at, at.Add(ChillWatch))) == 0 {
			return at
		}
	}
	return latest
}

const (
	ParcelCut = "cooked-meat"
	ParcelKg  = 1.0 // what a pair of tongs turns over
)
