package check

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// holdGrace is how far the early end may overrun a hold before it must be said,
// minutes: half of what a modelled cooling is worth in an hour (assumption), and
// the rounding of both ends.
const holdGrace = 5 + wholeMinute

// hold: finished food waits no longer than the way of waiting allows, as planned
// and on a fast day, or a finding says so. What has no hold waits no longer than
// it keeps its quality.
func (c *checker) hold() {
	for _, b := range c.batches() {
		c.holdRules(&b)
		limit := b.holdLimit()
		early := minutesBetween(b.on(), b.dish.serve) - c.untilOff(&b).Early
		if c.found("hold-short", b.dish.plan.ID) || c.condemned(b.dish.plan.ID) {
			continue
		}
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) {
			// It came off when it came off: that is a fast or a slow day, not a plan.
			early = b.gap()
		} else if b.gap() > limit+wholeMinute {
			c.fault(b.path, "waits %.0f min as planned; its way of waiting is good for %.0f", b.gap(), limit)
		}
		if early > limit+holdGrace && !b.dish.timed() && !c.chilled() {
			c.fault(b.path, "waits %.0f min on a fast day; its way of waiting is good for %.0f, and no finding \"hold-short\" says so", early, limit)
		}
	}
}

// chilled says whether all that is cooked is chilled for another day: what is done
// early is chilled early and waits for nobody.
func (c *checker) chilled() bool { return c.plan.Ahead != nil && c.plan.Ahead.Plan == nil }

// advice is the hold that a batch is in, else the one chosen for its dish.
func (b *batchFacts) advice() (schedule.HoldAdvice, bool) {
	for _, s := range b.Stages {
		if s.Kind != schedule.StageHold {
			continue
		}
		for _, h := range b.dish.plan.Holds {
			if h.Method == s.Place {
				return h, true
			}
		}
		return schedule.HoldAdvice{}, false
	}
	for _, h := range b.dish.plan.Holds {
		if h.Chosen {
			return h, true
		}
	}
	return schedule.HoldAdvice{}, false
}

// holdLimit is how many minutes after the heat a batch may wait.
func (b *batchFacts) holdLimit() float64 {
	if h, ok := b.advice(); ok {
		return h.LimitMinutes
	}
	return b.dish.rest + math.Max(b.dish.cut.Rest.LongestMinutes-b.dish.cut.Rest.MinMinutes, 0)
}

// holdRules: the advice is allowed by the request and by the published rules; a
// hold by the clock is no longer than they print.
func (c *checker) holdRules(b *batchFacts) {
	d := b.dish
	for k, h := range d.plan.Holds {
		path := fmt.Sprintf("%s.holds[%d]", d.path, k)
		if len(d.ask.Hold) > 0 && !containsID(d.ask.Hold, h.Method) || h.Method == schedule.HoldNone {
			c.fault(path, "%q is no way of waiting that the request allows", h.Method)
		}
		rule := c.publishedHold(d, h.Method)
		if rule.Kind == safety.HoldNone {
			c.fault(path, "%s has no hold: %s", d.plan.Name, rule.Sentence)
		}
		if rule.Kind == safety.HoldByClock && h.LimitMinutes > rule.LimitMinutes+1e-6 {
			c.fault(path+".limit_minutes", "%.0f; the published clock is %.0f", h.LimitMinutes, rule.LimitMinutes)
		}
	}
	for k, s := range b.Stages {
		if _, ok := b.advice(); s.Kind == schedule.StageHold && !ok {
			c.fault(fmt.Sprintf("%s.stages[%d].place", b.path, k), "%q is not among the ways of waiting of %s", s.Place, d.plan.Name)
		}
	}
}

func (c *checker) publishedHold(d *dishFacts, method string) safety.HoldRule {
	air, oven := 21.1, 0.0 // 70 F, what stands for a day that is not described
	if a := c.facts.req.Weather.Air; a != nil {
		air = float64(*a)
	}
	if o := c.facts.req.Oven; o != nil && method == schedule.HoldOven {
		oven = float64(o.Hold)
	}
	small := d.cut.Style == cut.Small || d.timed()
	return safety.HoldFor(safety.Finished{CoreC: d.plan.TargetC, Small: small, Roast: d.cut.Style == cut.Roast, AirC: air, OvenC: oven})
}
