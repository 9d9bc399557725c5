package remedy

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"github.com/rickb777/date/clock"
)

// nightChanges get up earlier, go to bed later, get up once, or give quiet hours up.
func (m *mender) nightChanges(r schedule.Request, t assemble.Trouble) []change {
	var out []change
	for i, q := range r.Quiet {
		if q.ForSleep() {
			out = append(out, shorterNights(r, i)...)
			continue
		}
		quiet := slices.Delete(slices.Clone(r.Quiet), i, i+1)
		out = append(out, quietChange(quiet, "no-quiet", fmt.Sprintf("Be there between %s and %s after all.", say.TimeOfDay(r.Units, q.From), say.TimeOfDay(r.Units, q.To)), "someone tends the fire then", 22))
	}
	if slices.ContainsFunc(r.Quiet, schedule.Quiet.ForSleep) {
		if c, ok := m.wakeChange(r, t); ok {
			out = append(out, c)
		}
		out = append(out, quietChange(nil, "no-quiet", "Give up the quiet hours.", "someone tends the fire overnight", 60))
	}
	return out
}

// shorterNights get up earlier or go to bed later.
func shorterNights(r schedule.Request, i int) []change {
	var out []change
	length := (r.Quiet[i].To - r.Quiet[i].From).Mod24().DurationSinceMidnight()
	for k, m := range []int{30, 60, 120} {
		by := time.Duration(m) * time.Minute
		if by >= length {
			break
		}
		up, late := slices.Clone(r.Quiet), slices.Clone(r.Quiet)
		up[i].To = up[i].To.AddDuration(-by).Mod24()
		late[i].From = late[i].From.AddDuration(by).Mod24()
		price := r.Units.About(by) + " less sleep"
		out = append(out,
			quietChange(up, "up-earlier", fmt.Sprintf("Get up at %s.", say.TimeOfDay(r.Units, up[i].To)), price, 14+10*k),
			quietChange(late, "to-bed-later", fmt.Sprintf("Go to bed at %s.", say.TimeOfDay(r.Units, late[i].From)), price, 15+10*k))
	}
	return out
}

func quietChange(quiet []schedule.Quiet, code, text, price string, pain int) change {
	if quiet == nil {
		quiet = []schedule.Quiet{}
	}
	return change{
		code: code, text: text, price: price, pain: pain,
		edits: []schedule.Edit{schedule.NewEdit("quiet", quiet)},
	}
}

// wakeMinutes is how long somebody is up who gets up once (assumption), and wakeMargin
// how long before the first thing to do.
const (
	wakeMinutes = 45
	wakeMargin  = 5
)

// wakeChange gets up once in the night: for what the clash would have done then if
// nobody slept, where that is within one short while.
func (m *mender) wakeChange(r schedule.Request, t assemble.Trouble) (change, bool) {
	free, _ := lift(plans.Keep(r, t.Dishes), arrange.RuleQuiet)
	p, ok := m.whole(free, remedyBudget)
	if !ok || !p.Feasible {
		return change{}, false
	}
	loc, err := r.Location()
	if err != nil {
		return change{}, false
	}
	d := day.Day{Req: r, Loc: loc, End: p.ServeAt}
	var first, last time.Time
	for _, s := range p.Steps {
		if s.Attended && s.Window.Early.Equal(s.Window.Late) && d.InQuiet(s.At) {
			if first.IsZero() {
				first = s.At
			}
			last = s.At.Add(instant.Minutes(s.Minutes))
		}
	}
	if first.IsZero() || last.Sub(first) > wakeMinutes*time.Minute {
		return change{}, false
	}
	from := day.ClockOf(first.Add(-wakeMargin * time.Minute).Truncate(wakeMargin * time.Minute).In(loc)).Time
	to := day.ClockOf(last.Add((2*wakeMargin - 1) * time.Minute).Truncate(wakeMargin * time.Minute).In(loc)).Time
	for i, q := range r.Quiet {
		if q.ForSleep() && inClock(q, from) && inClock(q, to) {
			quiet := slices.Insert(slices.Clone(r.Quiet), i+1, schedule.Quiet{From: to, To: q.To})
			quiet[i].To = from
			return quietChange(quiet, "wake", fmt.Sprintf("Get up once, from %s to %s.", say.TimeOfDay(r.Units, from), say.TimeOfDay(r.Units, to)), "a broken night", 25), true
		}
	}
	return change{}, false
}

// inClock says whether a time of day lies within quiet hours, not at their ends.
func inClock(q schedule.Quiet, c clock.Clock) bool {
	if q.From < q.To {
		return q.From < c && c < q.To
	}
	return c > q.From || c < q.To
}

// earlierChanges begin before the earliest instant: by so much as the clash needs,
// or, where that is in quiet hours, the evening before.
func (m *mender) earlierChanges(r schedule.Request, t assemble.Trouble) []change {
	free, _ := lift(plans.Keep(r, t.Dishes), arrange.RuleEarliest)
	p, ok := m.whole(liftAll(free, t.Idle), remedyBudget)
	if !ok || !p.Feasible || p.LightAt == nil {
		return nil
	}
	loc, err := r.Location()
	if err != nil {
		return nil
	}
	d := day.Day{Req: r, Loc: loc, End: p.ServeAt}
	at := p.LightAt.Truncate(instant.Quarter).In(loc)
	if !d.InQuiet(at) {
		return earlierChange(r, t, at, 17)
	}
	eve := at
	for d.InQuiet(eve) {
		eve = eve.Add(-instant.Quarter)
	}
	return append(earlierChange(r, t, eve.Add(-eveHours*time.Hour), 18), earlierChange(r, t, at, 24)...)
}

// eveHours are enough before bed to light a fire and to see it settle (assumption).
const eveHours = 3

// earlierChange sets what is the earliest instant for the dishes of a clash.
func earlierChange(r schedule.Request, t assemble.Trouble, from time.Time, pain int) []change {
	at := day.ClockOf(from)
	c := change{code: "earlier", text: fmt.Sprintf("Begin at %s.", r.Units.ClockOn(from)), price: "an earlier start", pain: pain}
	if r.Earliest != nil {
		c.edits = append(c.edits, schedule.NewEdit("earliest", at))
	}
	for i, dish := range r.Dishes {
		if dish.Earliest != nil && slices.Contains(t.Dishes, dish.ID) {
			c.edits = append(c.edits, schedule.NewEdit(strict.ItemPath("dishes", i)+".earliest", at))
		}
	}
	if len(c.edits) == 0 {
		return nil
	}
	return []change{c}
}
