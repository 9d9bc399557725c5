package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
)

// atTable says whether a dish came to the table with an entry that says so: by its name, or
// with a whole meal. What the log has on the fire and not off is not part of a meal that
// something else was ready for, and what was not to be on yet of none.
func (v *Revision) atTable(e schedule.Entry, id string) bool {
	if e.Dish != "" {
		return e.Dish == id
	}
	if v.offBefore(id, e.At) {
		return true
	}
	by := e.At.Add(-v.soonest(id))
	return (v.onBefore(id, by) || v.onAsPlanned(id, by)) && !slices.ContainsFunc(v.log, func(o schedule.Entry) bool {
		return o.Dish != "" && o.Dish != id && v.offBefore(o.Dish, e.At)
	})
}

// meal is an entry that says that something was served, and a dish.
type meal struct {
	entry schedule.Entry
	dish  string
}

// allAtTable says whether all of a dish came to the table with an entry: what was not on in
// time for that keeps its hour.
func (v *Revision) allAtTable(e schedule.Entry, id string) bool {
	return v.atTable(e, id) && !slices.Contains(v.tooSoon, meal{e, id})
}

// tooSoonForMeals finds the meals that a dish, or some of it, was not on in time for, now that
// it is known when it went on, and says whether there are more of them than were known.
func (v *Revision) tooSoonForMeals() bool {
	known := len(v.tooSoon)
	for _, e := range v.log {
		for _, a := range v.batches {
			id := a.batch.It.Dish.ID
			if e.Kind == schedule.LogServed && v.allAtTable(e, id) && !a.eatableBy(e.At) {
				v.tooSoon = append(v.tooSoon, meal{e, id})
			}
		}
	}
	return len(v.tooSoon) > known
}

// eatableBy says whether a batch was on for long enough by an instant to be done and rested.
func (a *liveBatch) eatableBy(at time.Time) bool {
	return a.on.set && at.Sub(a.on.at) >= soonestOf(a.batch.It)
}

// soonest is how long a dish is on and rests before anybody can have eaten of it.
func (v *Revision) soonest(id string) time.Duration {
	for _, p := range v.placed {
		if p.It.Dish.ID == id {
			return soonestOf(p.It)
		}
	}
	return assemble.LeastLeft * time.Minute
}

func soonestOf(it *day.Item) time.Duration {
	return instant.Minutes(it.RestMinutes() + assemble.LeastLeft)
}

// onAsPlanned says whether the first plan has a dish on by an instant.
func (v *Revision) onAsPlanned(id string, at time.Time) bool {
	return slices.ContainsFunc(v.placed, func(p *arrange.Placed) bool { return p.It.Dish.ID == id && !v.base.At(p.On).After(at) })
}

// offBefore says whether the log has a dish off the fire, done, by an instant. What was not on by
// then is a slip of the pen.
func (v *Revision) offBefore(id string, at time.Time) bool {
	off, on := false, v.onAsPlanned(id, at)
	for _, e := range v.log {
		if e.Dish != id || e.At.After(at) {
			continue
		}
		switch e.Kind {
		case schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter, schedule.LogServed:
			off = on
		case schedule.LogOn, schedule.LogRestarted:
			off, on = false, true
		}
	}
	return off
}

// onBefore says whether the log has something of a dish on the fire by an instant.
func (v *Revision) onBefore(id string, at time.Time) bool {
	return slices.ContainsFunc(v.log, func(e schedule.Entry) bool {
		return e.Dish == id && !e.At.After(at) && (e.Kind == schedule.LogOn || e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest)
	})
}

// noteServed says until when what is left of a dish that was served may stand, and what
// becomes of it then: one clock runs from when it was last surely hot (usda_danger_zone).
func (v *Revision) noteServed(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	if a.condemned || v.shows(a) != shownDone || slices.ContainsFunc(a.verdict, func(f safety.Finding) bool { return f.Severity == safety.Danger }) {
		return
	}
	limit, from, name := safety.OutLimit(v.day.Air.AirC), v.coolsFrom(a, p), a.batch.It.Dish.Name
	by := from.Add(instant.Minutes(limit)).Truncate(time.Minute)
	text := fmt.Sprintf("%s: served at %s. What is left goes into the refrigerator by %s, cut small, in shallow dishes. Past that it is thrown away.", name, v.clock(a.served.at), v.clock(by))
	switch {
	case !by.After(v.now):
		text = fmt.Sprintf("%s: served at %s. Throw away what was not in the refrigerator by %s.", name, v.clock(a.served.at), v.clock(by))
	case a.served.at.Sub(from).Minutes() > limit/2:
		text = fmt.Sprintf("%s: served at %s, %s after it was last surely above 140 °F (60 °C). Eat it by %s, and keep nothing of what is left.", name, v.clock(a.served.at), v.span(a.served.at.Sub(from).Minutes()), v.clock(by))
	}
	if a.someUnread() && !v.mealPast(a) { // that it came to the table reads nothing
		text = v.unreadServed(a) + " " + text
	}
	add(about(a, schedule.Leftovers, text))
}

// unreadServed asks for the pieces or places of what is being eaten that nobody read.
func (v *Revision) unreadServed(a *liveBatch) string {
	least := v.day.Core(a.leastC())
	return fmt.Sprintf("%s: not all of it was read at %s before it was served. Measure what is not eaten yet, each piece in its thickest part, and log the coldest (coldest). Under %s, nobody eats it as it is: back on the heat, or into an oven at %s.",
		a.batch.It.Dish.Name, least, least, v.day.Grate(undoneOvenC))
}

// coolsFrom is when the clock of a piece began that was served: as it came off, or with the
// end of a hold that keeps it hot.
func (v *Revision) coolsFrom(a *liveBatch, p *arrange.Placed) time.Time {
	from := a.off.at
	if waits := a.waits(); len(waits) > 0 && waits[len(waits)-1].kind == schedule.LogCounter {
		return v.openSince(a)
	}
	if a.boxed.set && p.Hold >= 0 {
		from = a.off.at.Add(instant.Minutes(p.Options[p.Hold].Hot))
	}
	if g, ok := v.unplacedOf(a); ok && g.by == schedule.LogServed && g.minutes() > safety.OutLimit(v.day.Air.AirC) {
		from = g.from.Add(instant.Minutes(v.plannedHot(a))) // that it stood is asked
	}
	return instant.Earlier(from, a.served.at)
}

// allServed says whether all of a dish was served.
func (v *Revision) allServed(ids []string) bool {
	return len(ids) > 0 && !slices.ContainsFunc(v.batches, func(a *liveBatch) bool {
		return slices.Contains(ids, a.batch.It.Dish.ID) && !a.served.set
	})
}

// overAtTable are steps after a dish was served: what was to be done for it is done, and
// nobody looks at it any more.
func (v *Revision) overAtTable(steps []schedule.Step, l remainder) []schedule.Step {
	out := steps[:0]
	for _, s := range steps {
		if a := l.of(s.Dish, s.Batch); a != nil && a.served.set && !s.Done {
			if slices.Contains(onlyExpected, s.Kind) {
				continue
			}
			s.At = instant.Earlier(s.At, a.served.at)
			s.Window, s.Done = plans.FixedWindow(s.At), true
		}
		out = append(out, s)
	}
	return out
}
