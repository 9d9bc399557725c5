package schedule

import (
	"fmt"
	"regexp"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"github.com/rickb777/date"
	"github.com/rickb777/date/clock"
)

// zoneName keeps to names of the zone database: "Local" and files of a system are none.
var zoneName = regexp.MustCompile(`^[A-Z][A-Za-z0-9_+-]*(/[A-Z][A-Za-z0-9_+-]*)*$`)

// ZoneNamed is the time zone that a cook means by the name of a clock, a city, a state or a
// country of one zone, such as Central, EST, Chicago or Ohio, as the zone database calls
// it; empty where none is known, or more than one.
func ZoneNamed(text string) string { return instant.ZoneNamed(text) }

// serve looks at the main serving instant; all other clocks need its zone and date.
func (v *validator) serve() {
	s := v.r.Serve
	loc, err := v.known, error(nil)
	if loc == nil || loc.String() != s.TZ {
		loc, err = time.LoadLocation(s.TZ)
	}
	place := ZoneNamed(s.TZ)
	switch choice := instant.ZonesNamed(s.TZ); {
	case s.TZ == "":
		v.faults.Add("serve.tz", "is missing; write the zone such as America/Chicago")
	case choice != "":
		v.faults.Add("serve.tz", "%s has more than one clock; write %s", say.Quoted(s.TZ), choice)
	case place != "" && place != s.TZ:
		known := v.faults.Len()
		v.faults.Add("serve.tz", "%s is not what the zone database calls it; write %s", say.Quoted(s.TZ), place)
		v.faults.Mended(known, s.TZ, place)
	case s.TZ == unreadZone:
		v.faults.Add("serve.tz", "%s stands for a large city that shares your clock; write its name, such as Chicago or New York", unreadZone)
	case err != nil || s.TZ == "Local" || !zoneName.MatchString(s.TZ):
		v.faults.Add("serve.tz", "%s is not a known time zone, nor a place known here; write a large city that shares your clock, such as Chicago or New York, or its name, such as America/Chicago or Europe/Berlin", say.Quoted(s.TZ))
	default:
		v.loc = loc
	}
	if s.Date == (date.Date{}) {
		v.faults.Add("serve.date", "is missing; write the day of serving such as 2027-07-03")
		return
	}
	if v.date("serve.date", s.Date) {
		v.serveAt, _ = v.instant("serve.time", Clock{Time: s.Time})
	}
}

func (v *validator) date(path string, d date.Date) bool {
	if d.Year() >= 1970 && d.Year() <= 2200 {
		return true
	}
	v.faults.Add(path, "%s must lie in the years 1970 to 2200", d)
	return false
}

// instant is the instant of a clock, on the day of serving if it has no date. It
// is not known after a fault here or in what it rests on.
func (v *validator) instant(path string, c Clock) (time.Time, bool) {
	if c.Time < 0 || c.Time >= clock.Day || c.Time%clock.Minute != 0 {
		v.faults.Add(path, `the time must be a whole minute from "00:00" to "23:59"`)
		return time.Time{}, false
	}
	day := v.r.Serve.Date
	if c.Date != nil {
		day = *c.Date
		if !v.date(path, day) {
			return time.Time{}, false
		}
	}
	if v.loc == nil || day == (date.Date{}) {
		return time.Time{}, false
	}
	t, sentence := wallInstant(day, c.Time, v.loc)
	if sentence != "" {
		v.faults.Add(path, "%s", sentence)
	}
	return t, sentence == ""
}

// reach is how far a clock may lie from the main serving instant: longer is a
// slip in the date.
const reach = 7 * 24 * time.Hour

// near is an instant that lies within reach of the main serving instant.
func (v *validator) near(path string, c Clock) (time.Time, bool) {
	t, ok := v.instant(path, c)
	if !ok || v.serveAt.IsZero() {
		return t, ok
	}
	if d := t.Sub(v.serveAt); d > reach || d < -reach {
		v.faults.Add(path, "%s is more than 7 days from the serving at %s", told(t), told(v.serveAt))
		return t, false
	}
	return t, true
}

// before refuses a clock that is not before the serving instant it leads to.
func (v *validator) before(path string, c Clock, serving time.Time) {
	t, ok := v.near(path, c)
	if ok && !serving.IsZero() && !t.Before(serving) {
		v.faults.Add(path, "%s is not before the serving at %s; an earlier day is written {date: %s, time: %q}",
			told(t), told(serving), serving.AddDate(0, 0, -1).Format(time.DateOnly), t.Format("15:04"))
	}
}

// lastServing is the last serving instant of the day, zero if it is not known.
func (v *validator) lastServing() time.Time {
	last := v.serveAt
	for _, dish := range v.r.Dishes {
		if dish.Serve == nil || v.loc == nil || last.IsZero() {
			continue
		}
		day := v.r.Serve.Date
		if dish.Serve.Date != nil {
			day = *dish.Serve.Date
		}
		if t, sentence := wallInstant(day, dish.Serve.Time, v.loc); sentence == "" && t.After(last) {
			last = t
		}
	}
	return last
}

// quiet hours are a habit, not an appointment: a clock change inside them is no fault.
func (v *validator) quiet() {
	for i, q := range v.r.Quiet {
		path := strict.ItemPath("quiet", i)
		for _, c := range []clock.Clock{q.From, q.To} {
			if c < 0 || c >= clock.Day {
				v.faults.Add(path, `both times must lie between "00:00" and "23:59"`)
			}
		}
		if q.From == q.To {
			v.faults.Add(path, "from and to are both %s; they must differ, and to may be on the next day", q.From.HhMm())
		}
	}
}

func told(t time.Time) string { return t.Format("2006-01-02 15:04") }

// wallInstant is the instant at which a wall clock shows c on a day. Where the
// clocks change there may be none or two: then the sentence says so.
func wallInstant(on date.Date, c clock.Clock, loc *time.Location) (time.Time, string) {
	y, m, d := on.Date()
	wall := time.Date(y, m, d, c.Hours(), c.Minutes(), 0, 0, time.UTC)
	// Offsets lie between -12 and +14 hours: a day and a half to each side is beyond any change.
	before := wall.Add(-36 * time.Hour).In(loc)
	after := wall.Add(36 * time.Hour).In(loc)
	first, second := wallUnder(before, wall), wallUnder(after, wall)
	showsFirst, showsSecond := shows(first, wall), shows(second, wall)
	switch {
	case first.Equal(second), showsFirst && !showsSecond:
		return first, ""
	case showsSecond && !showsFirst:
		return second, ""
	case showsFirst:
		return first, fmt.Sprintf("%s happens twice in %s, for the clocks go back that night: at %s and at %s; serve before %s or from %s on",
			told(wall), loc, first.Format("15:04 MST"), second.Format("15:04 MST"), changeWall(before, after), changeWall(before, before))
	}
	return second, fmt.Sprintf("%s does not exist in %s, for the clocks go forward from %s to %s; it may mean %s or %s: write one of them",
		told(wall), loc, changeWall(before, before), changeWall(before, after), second.Format("15:04 MST"), first.Format("15:04 MST"))
}

// wallUnder is the instant at which a clock with the offset of like shows wall, in its zone.
func wallUnder(like, wall time.Time) time.Time {
	_, offset := like.Zone()
	return wall.Add(-time.Duration(offset) * time.Second).In(like.Location())
}

// shows says whether the clocks show wall at t.
func shows(t, wall time.Time) bool { return told(t) == told(wall) }

// changeWall is what a clock with the offset of like shows when the offset of
// before ends.
func changeWall(before, like time.Time) string {
	_, end := before.ZoneBounds()
	_, offset := like.Zone()
	return end.UTC().Add(time.Duration(offset) * time.Second).Format("15:04")
}
