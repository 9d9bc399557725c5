package check

import (
	"fmt"
	"math"
	"strings"

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
		limit := c.holdLimit(&b)
		early := minutesBetween(b.on(), b.dish.serve) - c.untilOff(&b).Early
		if c.found("hold-short", b.dish.plan.ID) || c.found(schedule.Leftovers, b.dish.plan.ID) || c.found(schedule.StandsOpen, b.dish.plan.ID) || c.condemned(b.dish.plan.ID) || c.unshown(b.dish.plan.ID) || c.reheated(b.dish.plan.ID) {
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

// reheated says whether a revision has a dish eaten at once, reheated after its hold had failed, and
// the log shows that: its coldest place at what reheating asks, after the oven.
func (c *checker) reheated(dish string) bool {
	hot := false
	for _, e := range c.plan.Log {
		hot = hot || e.Dish == dish && e.Kind == schedule.LogColdest && e.C >= safety.ReheatMinimum().CoreC-shownSlackK
	}
	return hot && c.found(schedule.HoldRead, dish)
}

// goodUntil: where a way of waiting ends before the food is eaten, as things are expected, the
// step that begins it says so.
func (c *checker) goodUntil() {
	for _, b := range c.batches() {
		c.holdTold(&b)
	}
}

func (c *checker) holdTold(b *batchFacts) {
	off, ok := b.Milestone(schedule.MilestoneTakeOff)
	h, held := b.advice()
	if !ok || !held || c.plan.Revision > 0 || c.chilled() || !off.Window.Expected.Before(b.dish.serve) {
		return
	}
	short := minutesBetween(off.Window.Expected, b.dish.serve) > c.holdLimit(b)+wholeMinute
	for i, s := range c.plan.Steps {
		if s.Dish != b.dish.plan.ID || s.Batch != b.Number || s.Kind != schedule.StepBox && s.Kind != schedule.StepToOven && s.Kind != schedule.StepHold {
			continue
		}
		if short && !strings.Contains(s.Text, safety.BeforeEaten) {
			c.fault(fmt.Sprintf("steps[%d].text", i), "%q is good for %.0f min and eaten %.0f min after it is off; it does not say that", h.Method, c.holdLimit(b), minutesBetween(off.Window.Expected, b.dish.serve))
		}
	}
}

// chilled says whether all that is cooked is chilled for another day: what is done
// early is chilled early and waits for nobody. The plan of the day before alone says so by
// its cautions.
func (c *checker) chilled() bool {
	if c.plan.Ahead == nil {
		return c.cautioned("chill-fast")
	}
	return c.plan.Ahead.Plan == nil
}

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

// holdLimit is how many minutes after the heat a batch may wait: what the plan says, and
// no longer than the table has for a piece of that batch.
func (c *checker) holdLimit(b *batchFacts) float64 {
	if h, ok := b.advice(); ok {
		return math.Min(h.LimitMinutes, c.holdRule(b, h).Clock(math.Inf(1)).Served)
	}
	stands := b.dish.rest + math.Max(b.dish.cut.Rest.LongestMinutes-b.dish.cut.Rest.MinMinutes, 0)
	if c.chilled() {
		return stands
	}
	return math.Max(math.Min(stands, c.openLimit()), b.dish.rest)
}

// openLimit is how many minutes after the heat food is on the table that nothing keeps hot.
func (c *checker) openLimit() float64 {
	return safety.HoldFor(safety.Finished{Piece: safety.Joint, Place: safety.InOpen, AirC: c.airC()}).Clock(0).Served
}

// holdRules: the advice is allowed by the request and by the published rules, and its
// limits are what those print.
func (c *checker) holdRules(b *batchFacts) {
	d := b.dish
	for k, h := range d.plan.Holds {
		path := fmt.Sprintf("%s.holds[%d]", d.path, k)
		if len(d.ask.Hold) > 0 && !containsID(d.ask.Hold, h.Method) || h.Method == schedule.HoldNone {
			c.fault(path, "%q is no way of waiting that the request allows", h.Method)
		}
		if b.Number == 1 { // the advice is for the first batch
			c.holdClock(path, b, h)
		}
	}
	for k, s := range b.Stages {
		if _, ok := b.advice(); s.Kind == schedule.StageHold && !ok {
			c.fault(fmt.Sprintf("%s.stages[%d].place", b.path, k), "%q is not among the ways of waiting of %s", s.Place, d.plan.Name)
		}
	}
}

// holdClock: one clock, which begins where the outer layer has fallen to 140 F or, in the
// open, with the take-off.
func (c *checker) holdClock(path string, b *batchFacts, h schedule.HoldAdvice) {
	f, rule := c.finished(b, h), c.holdRule(b, h)
	if rule.Kind == safety.HoldNone {
		c.fault(path, "%s has no hold: %s", b.dish.plan.Name, rule.Sentence())
		return
	}
	if most := rule.Clock(h.HotMinutes).Served; h.LimitMinutes > most+0.1 {
		c.fault(path+".limit_minutes", "%.0f; with %.0f min above 140 °F it is %.0f", h.LimitMinutes, h.HotMinutes, most)
	}
	if has := h.EatenMinutes - h.LimitMinutes; math.Abs(has-rule.EatMinutes) > 0.1 {
		c.fault(path+".eaten_minutes", "%.0f after it is on the table; the clock leaves %.0f", has, rule.EatMinutes)
	}
	if h.Method == schedule.HoldOven && math.Abs(h.OvenC-f.OvenC) > sameC {
		c.fault(path+".oven_c", "%.1f; for %s the oven is set to %.1f", h.OvenC, b.dish.plan.Name, f.OvenC)
	}
}

// holdRule is the published rule of a batch. What is held through a night has its longest
// time in the oven: it stands open before, and may be in a box first where there is one.
func (c *checker) holdRule(b *batchFacts, h schedule.HoldAdvice) safety.HoldRule {
	f := c.finished(b, h)
	rule := safety.HoldFor(f)
	if ask := b.dish.ask.Hold; f.Place == safety.InOven && safety.Overnight(f, 0, false) {
		rule.MostMinutes += h.VentMinutes
		if len(ask) == 0 || containsID(ask, schedule.HoldBox) {
			rule.MostMinutes += h.BoxMinutes
		}
	}
	return rule
}

// finished is a piece of a batch as the rules of holding take it.
func (c *checker) finished(b *batchFacts, h schedule.HoldAdvice) safety.Finished {
	d := b.dish
	f := safety.Finished{
		Piece: d.holdPiece(b.heaviest()), Category: d.category, Prep: d.prep, CoreC: d.plan.TargetC, AirC: c.airC(), BoxAirC: math.Min(roomC, c.nightC()),
		Frail: c.facts.frail, RestMin: d.rest,
		Place: map[string]safety.HoldPlace{schedule.HoldBox: safety.InBox, schedule.HoldOven: safety.InOven, schedule.HoldGrill: safety.OnFire}[h.Method],
	}
	if f.Place == "" {
		f.Place = safety.InOpen
	}
	if o := c.facts.req.Oven; o != nil && f.Place == safety.InOven {
		f.OvenC = safety.OvenSettingC(f.Piece, float64(o.Hold))
		f.ByRoast = b.cooking[0].LevelC >= safety.RoastLevelC(b.heaviest())-0.5 // 250 F may stand as 121.1 degC
	}
	return f
}

// roomC is the warmest that a box stands in, 70 F.
const roomC = 21.0

// airC and nightC are the air by day, 70 F where it is not described, and by night.
func (c *checker) airC() float64 {
	if a := c.facts.req.Weather.Air; a != nil {
		return float64(*a)
	}
	return 21.1
}

func (c *checker) nightC() float64 {
	if n := c.facts.req.Weather.Night; n != nil {
		return math.Min(float64(*n), c.airC())
	}
	return c.airC()
}

// heaviest is the mass of its heaviest piece: in a batch they are alike.
func (b *batchFacts) heaviest() float64 {
	most := 0.0
	for _, p := range b.Pieces {
		most = math.Max(most, p.MassKg)
	}
	return most
}

// holdPiece is the row of the table of holds.
func (d *dishFacts) holdPiece(massKg float64) safety.Piece {
	switch d.cut.Style {
	case cut.Tough:
		if d.cut.Rack {
			return safety.Ribs
		}
		return safety.Shoulder
	case cut.Roast:
		return safety.Joint
	case cut.Bird:
		if strings.HasPrefix(d.cut.Name, "turkey") && massKg > 4.535 { // 10 lb
			return safety.Turkey
		}
		return safety.Bird
	}
	return safety.Portion
}
