package check

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// ovenUse is the oven at one temperature for a stretch of time.
type ovenUse struct {
	path, who string
	from, to  time.Time
	airC      float64
}

// sameOvenK is how far two settings of an oven may lie apart and be one, K: an oven holds
// no closer (assumption).
const sameOvenK = 3

// oneOven: an oven has one temperature at a time.
func (c *checker) oneOven() {
	all := c.ovenUses()
	for i, a := range all {
		for _, b := range all[:i] {
			apart := a.airC - b.airC
			if a.who != b.who && a.from.Before(b.to) && b.from.Before(a.to) && (apart > sameOvenK || apart < -sameOvenK) {
				c.fault(a.path, "the oven is at %.0f degC for %s from %s to %s, and at %.0f for %s from %s to %s", a.airC, a.who, told(a.from), told(a.to), b.airC, b.who, told(b.from), told(b.to))
			}
		}
	}
}

func (c *checker) ovenUses() []ovenUse {
	var all []ovenUse
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) || c.condemned(b.dish.plan.ID) {
			continue // where it waits by now, its cook has seen
		}
		for k, s := range b.Stages {
			if s.Place != schedule.PlaceOven || !s.To.After(s.From) {
				continue
			}
			u := ovenUse{fmt.Sprintf("%s.stages[%d]", b.path, k), b.dish.plan.Name, s.From, s.To, s.LevelC}
			if s.Kind == schedule.StageHold {
				u.airC = c.holdingC()
				if m, ok := b.Milestone(schedule.MilestoneRested); ok {
					u.from = instant.Earlier(u.from, m.Window.Expected)
				}
			}
			if cooks(s.Kind) || s.Kind == schedule.StageHold {
				all = append(all, u)
			}
		}
	}
	if a := c.plan.Ahead; a != nil {
		for i, d := range a.Dishes {
			if d.From != nil {
				all = append(all, ovenUse{fmt.Sprintf("ahead.dishes[%d]", i), d.Name, *d.From, d.From.Add(instant.Minutes(d.Minutes.Expected)), safety.OvenLowC})
			}
		}
	}
	return all
}

// holdingC is what the oven is at while something is held in it, degC.
func (c *checker) holdingC() float64 {
	if o := c.facts.req.Oven; o != nil && o.Hold != 0 {
		return float64(o.Hold)
	}
	return unit.FToC(170) // the setting that a request without one stands for
}
