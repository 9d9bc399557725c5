package check

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
)

// afterTheHeat are the steps that wait for their piece to be off.
var afterTheHeat = []schedule.StepKind{schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepCheckOven, schedule.StepHold, schedule.StepSlice}

// order: nothing of a dish is rested, packed, cut up or served before it is expected
// off, and nothing is cut up or served before it is expected rested.
func (c *checker) order() {
	for _, b := range c.batches() {
		id := b.dish.plan.ID
		if c.condemned(id) || c.neverDone(&b) {
			c.unserved(&b)
			continue
		}
		off, hasOff := b.Milestone(schedule.MilestoneTakeOff)
		rested, hasRested := b.Milestone(schedule.MilestoneRested)
		c.putAwayUncut(&b)
		if !hasOff || !hasRested || c.done(schedule.StepTakeOff, id, b.Number, 0) {
			continue // the rule milestones wants them; what is off is off
		}
		for i, s := range c.plan.Steps {
			if s.Dish != id || s.Batch != b.Number || !slices.Contains(afterTheHeat, s.Kind) {
				continue
			}
			path := fmt.Sprintf("steps[%d].at", i)
			switch {
			case s.At.Before(off.Window.Expected.Add(-time.Minute)):
				c.fault(path, "%s at %s; it is expected off at %s", s.Kind, told(s.At), told(off.Window.Expected))
			case s.Kind == schedule.StepSlice && s.At.Before(rested.Window.Expected.Add(-time.Minute)):
				c.fault(path, "cut up at %s; it is expected rested at %s", told(s.At), told(rested.Window.Expected))
			}
		}
		if b.dish.serve.Before(rested.Window.Expected.Add(-time.Minute)) {
			c.fault(b.dish.path+".serve_at", "served at %s; it is expected off at %s and rested at %s", told(b.dish.serve), told(off.Window.Expected), told(rested.Window.Expected))
		}
	}
}

// restsUntilCut says whether a batch is expected off so near to its meal that it is cut up as
// soon as it has rested, or stood open: nobody puts it away for that.
func (c *checker) restsUntilCut(b *batchFacts) bool {
	off, ok := b.Milestone(schedule.MilestoneTakeOff)
	h, _ := b.advice()
	cut := c.cutUp(b)
	return ok && !cut.IsZero() && !off.Window.Expected.Add(instant.Minutes(max(h.VentMinutes, b.dish.rest)+1)).Before(cut)
}

// cutUp is when a batch is cut up; zero for never.
func (c *checker) cutUp(b *batchFacts) (at time.Time) {
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepSlice && s.Dish == b.dish.plan.ID && s.Batch == b.Number {
			at = s.At
		}
	}
	return at
}

// putAwayUncut: nothing is put away to wait as it is cut up, or after that.
func (c *checker) putAwayUncut(b *batchFacts) {
	waits := []schedule.StepKind{schedule.StepBox, schedule.StepToOven, schedule.StepHold}
	cut := c.cutUp(b)
	for i, s := range c.plan.Steps {
		if s.Dish == b.dish.plan.ID && s.Batch == b.Number && !s.Done && !cut.IsZero() && slices.Contains(waits, s.Kind) && !s.At.Before(cut) {
			c.fault(fmt.Sprintf("steps[%d].at", i), "%s at %s; it is cut up at %s", s.Kind, told(s.At), told(cut))
		}
	}
}

// neverDone says whether a revision says that a piece does not get done as things stand,
// and its own window says so too.
func (c *checker) neverDone(b *batchFacts) bool {
	m, ok := b.Milestone(schedule.MilestoneTakeOff)
	return ok && c.plan.RevisedAt != nil && c.found(schedule.NeverDone, b.dish.plan.ID) && m.Window.Expected.Sub(*c.plan.RevisedAt) > 23*time.Hour
}

// unserved: what does not come to the table has no steps that bring it there.
func (c *checker) unserved(b *batchFacts) {
	for i, s := range c.plan.Steps {
		if s.Dish == b.dish.plan.ID && s.Batch == b.Number && !s.Done && slices.Contains(afterTheHeat, s.Kind) {
			c.fault(fmt.Sprintf("steps[%d]", i), "%s of %s, which is not brought to the table", s.Kind, s.Dish)
		}
	}
}

// stillOn are the words of a step that is done only if food is on the fire still.
const stillOn = "still on"

// tended: a fire is looked at and fed while food is expected over it, and fed if it becomes
// the next one. Later steps say
// that they are for food that is still on, and none comes after all of it is off.
func (c *checker) tended() {
	for k, ph := range c.plan.Phases {
		expected, latest := c.lastOver(k + 1)
		becomes := k+1 < len(c.plan.Phases) && !c.plan.Phases[k+1].Relit // fed for the next fire
		for i, s := range c.plan.Steps {
			if s.Done || s.Phase != ph.Number || s.Kind != schedule.StepCheckFire && s.Kind != schedule.StepRefuel {
				continue
			}
			path := fmt.Sprintf("steps[%d]", i)
			switch {
			case becomes && s.Kind == schedule.StepRefuel && !s.At.After(ph.To):
			case s.At.After(latest):
				c.fault(path+".at", "%s at %s; nothing is over that fire after %s", s.Kind, told(s.At), told(latest))
			case s.At.After(expected.Add(time.Minute)) && !strings.Contains(s.Text, stillOn):
				c.fault(path+".text", "%s at %s; all is expected off at %s, and it does not say that it is for food that is %s", s.Kind, told(s.At), told(expected), stillOn)
			}
		}
	}
}

// lastOver is when the last food of a phase is expected off its fire, and when it is off
// as planned.
func (c *checker) lastOver(phase int) (expected, latest time.Time) {
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) {
			continue
		}
		if at, ok := c.leaves(&b); ok && phase == c.burnsAt(at) {
			expected, latest = instant.Later(expected, at), instant.Later(latest, at)
		}
		for k, s := range b.cooking {
			if s.Place != schedule.PlaceGrate || phase < s.Phase || phase > s.PhaseTo {
				continue
			}
			end := s.To
			if k == len(b.cooking)-1 {
				if m, ok := b.Milestone(schedule.MilestoneTakeOff); ok {
					end = m.Window.Expected
				}
			} else if m, ok := b.Milestone(schedule.MilestoneWrap); ok {
				end = m.Window.Expected
			}
			latest = instant.Later(latest, s.To)
			expected = instant.Later(expected, end)
			latest = instant.Later(latest, end)
		}
	}
	return expected, latest
}
