package check

import (
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
)

// nearOff is how long before it came off a reading still tells how a piece came off, as a
// revision takes it (assumption).
const nearOff = 10 * time.Minute

// undone: what came off, was read then or since, and never at what it must have shown is not
// carved, promised or put away as it is: it goes back into heat, or away.
func (c *checker) undone() {
	if c.plan.Revision == 0 {
		return
	}
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if len(d.plan.Batches) != 1 || len(d.plan.Batches[0].Stages) == 0 || !c.done(schedule.StepTakeOff, d.plan.ID, 1, 0) || c.condemned(d.plan.ID) && !c.found(schedule.OffUndone, d.plan.ID) {
			continue
		}
		if on := d.plan.Batches[0].Stages[0].From; !c.offUndone(d, on) {
			continue
		}
		if d.plan.Chance > 0 && !c.served(d.plan.ID) {
			c.fault(d.path+".chance", "%.3f, and it came off below what it must have shown", d.plan.Chance)
		}
		if c.found(schedule.Leftovers, d.plan.ID) {
			c.fault(d.path, "a finding puts it away as it is, and it was never read at its minimum")
		}
		for _, s := range c.plan.Steps {
			if s.Dish == d.plan.ID && s.Kind == schedule.StepSlice && !s.Done {
				c.fault(d.path, "is cut up at %s, and was never read at its minimum", told(s.At))
			}
		}
	}
}

// wishSlackK is how far a whole piece may come off below what the cook asked of it, where that
// is below its published minimum: it rises by as much, and a wish is no limit (5 F; common
// practice, no source).
const wishSlackK = 5 / 1.8

// searSlackK is the same of a piece that is seared: it comes off the coals by so much below what
// was asked, and rests to it (12 F; assumption, a rib roast asked for at 132 F is to read 121 F).
const searSlackK = 12 / 1.8

// offUndone says whether the log has a dish that went on at an instant off the heat, and read
// below its minimum.
func (c *checker) offUndone(d *dishFacts, on time.Time) bool {
	if d.plan.MinimumC == 0 || d.plan.TargetC == 0 {
		return false
	}
	least := math.Min(d.plan.TargetC, d.plan.MinimumC) - sameC
	if least < d.plan.MinimumC-2*sameC && !safety.SurfaceInside(d.category, d.prep) {
		if least -= wishSlackK; d.ask.Finish != "" {
			least -= searSlackK - wishSlackK
		}
	}
	var off, last time.Time
	read := false
	for _, e := range c.plan.Log {
		if e.At.Before(on) || e.Dish != d.plan.ID && !(e.Dish == "" && e.Kind == schedule.LogServed) {
			continue
		}
		switch e.Kind {
		case schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter:
			if e.Value != "" && e.Kind == schedule.LogPulled {
				return false // one piece of several: of which a reading is is not judged
			}
			if off.IsZero() && e.At.After(on) { // nothing is off the minute it goes on
				off = e.At
			}
		case schedule.LogRestarted, schedule.LogOn:
			off = time.Time{}
		case schedule.LogCore, schedule.LogColdest:
			if e.C >= least {
				return false
			}
			last, read = e.At, true
		}
	}
	if d.ask.Finish != "" { // a sear takes it further
		return read && !off.IsZero() && last.After(off)
	}
	return read && !off.IsZero() && !last.Before(off.Add(-nearOff))
}

// served says whether the log has a dish at the table, by its name or with the meal.
func (c *checker) served(id string) bool {
	for _, e := range c.plan.Log {
		if e.Kind == schedule.LogServed && (e.Dish == id || e.Dish == "") {
			return true
		}
	}
	return false
}
