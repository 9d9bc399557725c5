package check

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
)

// searWait is the longest a piece may wait between smoke and sear while the fire
// is changed, minutes (assumption).
const searWait = 20

// stages: each follows the one before it without a gap, cooking first, then rest,
// then hold, and nothing cooks after serving. Batches are numbered as they go on.
func (c *checker) stages() {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		var on time.Time // of the batch before
		for j, b := range d.plan.Batches {
			path := fmt.Sprintf("%s.batches[%d]", d.path, j)
			if b.Number != j+1 {
				c.fault(path+".number", "%d in place %d", b.Number, j+1)
			}
			if len(b.Stages) == 0 || !cooks(b.Stages[0].Kind) {
				c.fault(path+".stages", "the first stage must be one that cooks")
				continue
			}
			if j > 0 && c.plan.Revision == 0 && b.Stages[0].From.Before(on) { // on the day one may overtake another
				c.fault(path+".number", "%d goes on before %d", j+1, j)
			}
			on = b.Stages[0].From
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

// searStand is the longest that a piece is expected to stand off the heat before its sear,
// minutes (judgment): it is below its minimum.
const searStand = 30

// seared: a piece comes off the slow side no sooner before its sear than it may stand there.
func (c *checker) seared() {
	if c.plan.Revision > 0 {
		return
	}
	for _, b := range c.batches() {
		var off time.Time
		for i, s := range c.plan.Steps {
			if s.Dish != b.dish.plan.ID || s.Batch != b.Number {
				continue
			}
			switch {
			case s.Kind == schedule.StepTakeOff && off.IsZero():
				off = s.At
			case s.Kind == schedule.StepSear && !off.IsZero() && minutesBetween(off, s.At) > searStand+wholeMinute:
				c.fault(fmt.Sprintf("steps[%d].at", i), "seared at %s; it is expected off the slow side at %s, %.0f min before that", told(s.At), told(off), minutesBetween(off, s.At))
			}
		}
	}
}

// codeFireOut is the finding of a piece over a dead fire.
const codeFireOut = string(safety.FireOut)

// servedByLog says whether a log has a dish on the table: by its name, or with the meal at the
// hour at which the plan has it served.
func (c *checker) servedByLog(d *dishFacts) bool {
	return slices.ContainsFunc(c.plan.Log, func(e schedule.Entry) bool {
		return e.Kind == schedule.LogServed && (e.Dish == d.plan.ID || e.Dish == "" && (c.found(schedule.Leftovers, d.plan.ID) || d.serve.Equal(e.At.Truncate(time.Minute))))
	})
}

// coreRounding allows for a core that has been to Fahrenheit and back, K.
const coreRounding = 0.05

// rest: at least the least rest of the dish, and the published one, lies between
// the heat and serving, and is a stage.
func (c *checker) rest() {
	for _, b := range c.batches() {
		need := b.dish.rest
		thrown := c.condemned(b.dish.plan.ID) && b.dish.plan.Chance == 0
		if need <= 0 || thrown || c.servedByLog(b.dish) { // it was served when it was served
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
