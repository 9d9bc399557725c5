package check

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// searWait is the longest a piece may wait between smoke and sear while the fire
// is changed, minutes (assumption).
const searWait = 20

// stages: each follows the one before it without a gap, cooking first, then rest,
// then hold, and nothing cooks after serving.
func (c *checker) stages() {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		for j, b := range d.plan.Batches {
			path := fmt.Sprintf("%s.batches[%d]", d.path, j)
			if b.Number != j+1 {
				c.fault(path+".number", "%d in place %d", b.Number, j+1)
			}
			if len(b.Stages) == 0 || !cooks(b.Stages[0].Kind) {
				c.fault(path+".stages", "the first stage must be one that cooks")
				continue
			}
			for k := range b.Stages {
				c.stage(fmt.Sprintf("%s.stages[%d]", path, k), d, b.Stages, k)
			}
		}
	}
}

func (c *checker) stage(path string, d *dishFacts, all []schedule.Stage, k int) {
	s := all[k]
	order := map[schedule.StageKind]int{schedule.StageBare: 1, schedule.StageWrapped: 2, schedule.StageSear: 3, schedule.StageRest: 4, schedule.StageHold: 5}
	if order[s.Kind] == 0 {
		c.fault(path+".kind", "%q is not known", s.Kind)
	}
	if s.To.Before(s.From) || cooks(s.Kind) && !s.To.After(s.From) {
		c.fault(path, "ends at %s, not after its beginning at %s", told(s.To), told(s.From))
	}
	if s.To.After(d.serve) {
		c.fault(path+".to", "%s goes on to %s, after the dish is served at %s", s.Kind, told(s.To), told(d.serve))
	}
	if k == 0 {
		return
	}
	before := all[k-1]
	if order[s.Kind] <= order[before.Kind] {
		c.fault(path+".kind", "%s cannot follow %s", s.Kind, before.Kind)
	}
	wait := minutesBetween(before.To, s.From)
	if wait < 0 || wait > 0 && s.Kind != schedule.StageSear || wait > searWait+wholeMinute {
		c.fault(path+".from", "%s, %.0f min after the stage before it ends at %s; stages follow at once (a sear within %d min)",
			told(s.From), wait, told(before.To), searWait)
	}
	if s.Kind == schedule.StageSear && c.plan.Revision == 0 && safety.SurfaceInside(d.category, d.prep) && before.CoreC < d.plan.MinimumC-coreRounding {
		c.fault(path+".kind", "sears what is at %.1f degC; its minimum of %.1f holds before a sear", before.CoreC, d.plan.MinimumC)
	}
}

// coreRounding allows for a core that has been to Fahrenheit and back, K.
const coreRounding = 0.05

// rest: at least the least rest of the dish, and the published one, lies between
// the heat and serving, and is a stage.
func (c *checker) rest() {
	for _, b := range c.batches() {
		need := b.dish.rest
		if need <= 0 {
			continue
		}
		if b.gap() < need-1e-6 {
			c.fault(b.path, "%.0f min from the heat at %s to serving at %s; the rest takes %.0f", b.gap(), told(b.off()), told(b.dish.serve), need)
		}
		rested := false
		for k, s := range b.Stages {
			if s.Kind != schedule.StageRest {
				continue
			}
			rested = true
			if has := minutesBetween(s.From, s.To); has < need-halfMinute {
				c.fault(fmt.Sprintf("%s.stages[%d]", b.path, k), "rests %.0f min; it takes %.0f", has, need)
			}
		}
		if !rested {
			c.fault(b.path+".stages", "there is no rest; it takes %.0f min", need)
		}
	}
}

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
