package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// at is an instant on the cook's clock, to the minute.
func (v *view) at(t time.Time) time.Time { return t.In(v.loc).Round(time.Minute) }

// clock prints the time of day, and the zone's abbreviation where the clock shows
// that time twice.
func (v *view) clock(t time.Time) string {
	t = v.at(t)
	if v.twice(t) {
		return v.sys.Clock(t) + t.Format(" MST")
	}
	return v.sys.Clock(t)
}

// clockColumn is the time of day for a column of them, as wide as each other.
func (v *view) clockColumn(t time.Time) string {
	text := v.clock(t)
	width := columns(v.sys.Clock(time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC))) // the widest there is
	return strings.Repeat(" ", max(width-columns(text), 0)) + text
}

// clockColumnBy is clockColumn with the weekday where it is not that of ref.
func (v *view) clockColumnBy(t, ref time.Time) string {
	if v.sameDay(t, ref) {
		return v.clockColumn(t)
	}
	return v.clockBy(t, ref)
}

// twice tells whether the cook's clock shows this time again half an hour, one or two hours
// before or after (no zone of this century turns its clocks by another amount).
func (v *view) twice(t time.Time) bool {
	for _, by := range []time.Duration{-2 * time.Hour, -time.Hour, -30 * time.Minute, 30 * time.Minute, time.Hour, 2 * time.Hour} {
		if t.Add(by).In(v.loc).Format(time.TimeOnly) == t.In(v.loc).Format(time.TimeOnly) {
			return true
		}
	}
	return false
}

// day prints a day for a heading, date one with its year.
func (v *view) day(t time.Time) string { return v.sys.Day(v.at(t)) }

func (v *view) date(t time.Time) string { return v.sys.Date(v.at(t)) }

// sameDay tells whether two instants share a date on the cook's clock.
func (v *view) sameDay(a, b time.Time) bool {
	return v.at(a).Format(time.DateOnly) == v.at(b).Format(time.DateOnly)
}

// clockBy prints the time of day and the weekday where it is not that of ref.
func (v *view) clockBy(t, ref time.Time) string {
	if v.sameDay(t, ref) {
		return v.clock(t)
	}
	return v.clock(t) + v.at(t).Format(" Mon")
}

// litAt is when the first fire was lit, as the log says.
func (v *view) litAt() (time.Time, bool) {
	for _, s := range v.Steps {
		if s.Kind == schedule.StepLight && s.Phase == 1 && s.Done && slices.ContainsFunc(v.Log, func(e schedule.Entry) bool { return e.Kind == schedule.LogLit && e.At.Equal(s.At) }) {
			return s.At, true
		}
	}
	return time.Time{}, false
}

// lightLabel stands before when the fire is lit, or was.
func (v *view) lightLabel() string {
	if _, ok := v.litAt(); ok {
		return "Lit at"
	}
	return "Light at"
}

// lights says when the fire is lit, and lit anew.
func (v *view) lights() string {
	lit := *v.LightAt
	if at, ok := v.litAt(); ok {
		lit = at
	}
	text := v.clockOn(lit)
	for _, f := range v.Phases {
		if f.Relit {
			text += "; again at " + v.clockBy(f.SetupFrom, *v.LightAt)
		}
	}
	return text
}

// clockOn is a time of the headline, with its day where that is not the one on which people
// eat, which is told beside it.
func (v *view) clockOn(at time.Time) string {
	if v.dayBefore() == nil && v.sameDay(at, v.tableAt()) {
		return v.clock(at)
	}
	return v.clock(at) + " on " + v.day(at)
}

// window says the spread of an instant, nothing where the plan fixes it.
func (v *view) window(w schedule.Window, ref time.Time) string {
	if w.Early.IsZero() || v.at(w.Early).Equal(v.at(w.Late)) {
		return ""
	}
	if v.at(w.Expected).Truncate(time.Minute).Equal(v.at(ref).Truncate(time.Minute)) { // which stands beside it
		return fmt.Sprintf("Likely between %s and %s.", v.clockBy(w.Early, ref), v.clockBy(w.Late, ref))
	}
	return fmt.Sprintf("Most likely %s (%s to %s).", v.clockBy(w.Expected, ref), v.clockBy(w.Early, ref), v.clockBy(w.Late, ref))
}

// spread is the window of an instant in few words, to stand right behind it.
func (v *view) spread(w schedule.Window, ref time.Time) string {
	return fmt.Sprintf("%s to %s", v.clockBy(w.Early, ref), v.clockBy(w.Late, ref))
}

// span prints a stretch of time: "23:00 Fri to 05:30 Sat".
func (v *view) span(from, to time.Time) string {
	if v.sameDay(from, to) {
		return v.clock(from) + " to " + v.clock(to)
	}
	return v.clock(from) + v.at(from).Format(" Mon") + " to " + v.clock(to) + v.at(to).Format(" Mon")
}

// quietAt finds the quiet hours that an instant falls into.
func (v *view) quietAt(t time.Time) bool {
	for _, q := range v.Quiet {
		if !t.Before(q.From) && t.Before(q.To) {
			return true
		}
	}
	return false
}

// jump is a change of the clock: to or from summer time.
type jump struct {
	at    time.Time
	text  string // said to somebody who reads it half asleep
	short string // for a picture
}

// jumps finds the clock changes from one instant to another.
func (v *view) jumps(from, to time.Time) []jump {
	var found []jump
	for t := from.In(v.loc); ; {
		_, end := t.ZoneBounds()
		if end.IsZero() || end.After(to) {
			return found
		}
		name, before := end.Add(-time.Second).In(v.loc).Zone()
		_, after := end.In(v.loc).Zone()
		way, by := "forward", time.Duration(after-before)*time.Second
		if by < 0 {
			way, by = "back", -by
		}
		if by > 0 {
			old := end.In(time.FixedZone(name, before))
			found = append(found, jump{end, fmt.Sprintf("The clocks go %s by %s: %s becomes %s.", way, v.sys.About(by), v.sys.Clock(old), v.sys.Clock(end.In(v.loc))),
				fmt.Sprintf("clocks %s %s", way, v.sys.About(by))})
		}
		t = end
	}
}

// extent is the first and the last instant of a plan.
func (v *view) extent() (from, to time.Time) {
	from, to = v.at(v.ServeAt), v.at(v.ServeAt)
	mind := func(instants ...time.Time) {
		for _, t := range instants {
			if !t.IsZero() && t.Before(from) {
				from = v.at(t)
			}
			if t.After(to) {
				to = v.at(t)
			}
		}
	}
	for _, s := range v.Steps {
		mind(s.At, s.Window.Early, s.Window.Late)
	}
	for _, f := range v.Phases {
		mind(f.SetupFrom, f.From, f.To)
	}
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			for _, s := range b.Stages {
				mind(s.From, s.To)
			}
			if off, known := takeOff(b); known {
				mind(off.Late)
			}
		}
	}
	return from, to
}
