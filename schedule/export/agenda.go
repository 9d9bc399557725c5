package export

import (
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

// day is the steps of one date on the cook's clock.
type day struct {
	title   string
	entries []entry
}

// entry is a line of the agenda: a step, or a remark between the steps.
type entry struct {
	at     time.Time
	remark string        // quiet hours, clock change, now; empty for a step
	step   schedule.Step // if there is no remark
	kind   string        // in words
	text   string        // what to do
	more   string        // what is done with it in one go
	also   []schedule.Step
	window string // when to expect it
	change string // what a revision did to it
	quiet  bool   // falls into quiet hours
	part   string // of the day, of which opens says where it begins
}

// agenda lists the steps by day, with remarks where quiet hours begin and end,
// where the clock changes and where now is. With next > 0 only so many things to do that
// are still to come, without remarks but the day's.
func (v *view) agenda(next int) []day {
	entries := v.merged(v.Steps)
	if next > 0 {
		entries = v.toDo(entries, next)
	}
	for i := range entries {
		if e := &entries[i]; i > 0 && entries[i-1].step.Dish == e.step.Dish && entries[i-1].step.Window == e.step.Window {
			e.window = "" // "take off" has said it for "rest"
		}
	}
	if next == 0 {
		entries = append(v.remarks(), entries...) // first where the instant is the same
		slices.SortStableFunc(entries, func(a, b entry) int { return a.at.Compare(b.at) })
		v.inParts(entries)
	}
	var days []day
	for i, e := range entries {
		if i == 0 || !v.sameDay(entries[i-1].at, e.at) {
			days = append(days, day{title: v.day(e.at)})
		}
		d := &days[len(days)-1]
		d.entries = append(d.entries, e)
	}
	return slices.DeleteFunc(days, day.empty)
}

// empty says whether nothing is done or happens on a day but quiet hours.
func (d day) empty() bool {
	return !slices.ContainsFunc(d.entries, func(e entry) bool { return e.remark == "" || !strings.Contains(e.remark, "Quiet hours") })
}

// toDo are the first n entries still to come at which somebody has to do something.
func (v *view) toDo(entries []entry, n int) []entry {
	var out []entry
	for _, e := range entries {
		if !toDo(e.step) || e.step.At.Before(v.now) {
			continue
		}
		if out = append(out, e); len(out) == n {
			break
		}
	}
	return out
}

// next says when somebody has to do something next, and what: all that is due at that
// instant. It is empty where there is no now, or nothing left to do.
func (v *view) next() string {
	if v.now.IsZero() {
		return ""
	}
	left := slices.DeleteFunc(slices.Clone(v.Steps), func(s schedule.Step) bool {
		return !toDo(s) || s.At.Before(v.now)
	})
	var words []string
	for _, s := range left {
		if !v.at(s.At).Equal(v.at(left[0].At)) {
			break
		}
		words = append(words, v.stepTitle(s))
	}
	if len(words) == 0 {
		return ""
	}
	return v.clockBy(left[0].At, v.now) + " " + strings.Join(words, "; ")
}

// firstOfAll says when the work of a day that has not begun begins, and with what.
func (v *view) firstOfAll() string {
	i := slices.IndexFunc(v.Steps, toDo)
	if i < 0 || v.Revision > 0 {
		return ""
	}
	s := v.Steps[i]
	return v.stepTitle(s) + ", " + v.clockOn(s.At)
}

func (v *view) entry(s schedule.Step) entry {
	e := entry{at: v.at(s.At), step: s, kind: v.kind(s), text: sentence(s.Text),
		window: v.window(s.Window, s.At), quiet: v.quietAt(s.At)}
	if name := v.dish(s.Dish); s.Dish != "" && !strings.Contains(strings.ToLower(e.text), strings.ToLower(name)) {
		e.text = strings.TrimSpace(name + ": " + e.text)
	}
	if e.text == "" {
		e.text = capital(e.kind) + "."
	}
	if c, ok := v.changes[s.ID]; ok {
		e.change = sentence(c.Text)
		if e.change == "" {
			e.change = sentence(string(c.Kind))
		}
	}
	return e
}

// remarks are the lines between the steps; those outside the plan's span are left out.
func (v *view) remarks() []entry {
	if len(v.Steps) == 0 {
		return nil
	}
	first, last := v.Steps[0].At, v.Steps[len(v.Steps)-1].At
	var remarks []entry
	add := func(at time.Time, text string) {
		if !at.Before(first) && !at.After(last) {
			remarks = append(remarks, entry{at: v.at(at), remark: text})
		}
	}
	for _, q := range v.Quiet {
		add(q.From, "Quiet hours until "+v.clockBy(q.To, q.From)+": nobody tends anything.")
		add(q.To, "Quiet hours end.")
	}
	for _, j := range v.jumps(first, last) {
		add(j.at, j.text)
	}
	if !v.now.IsZero() {
		add(v.now, "Now: "+v.clock(v.now)+".")
	}
	return remarks
}
