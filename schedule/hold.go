package schedule

import (
	"math"
	"slices"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// longestHoldS bounds a simulated hold; a longer one is another day's cook.
const longestHoldS = 14 * 3600

// defaultOvenC is the air of a warm oven that the request does not set.
var defaultOvenC = celsius(170)

// holdOption is one way of waiting and how long it may last.
type holdOption struct {
	method  string
	minutes float64 // by the rule, from the take-off, at the pessimistic end
	vent    float64 // of them open before the box is shut, or before the oven
	rule    safety.HoldRule
}

// holdMethods are the ways a dish may wait, gentlest first. What travels goes in a box.
func (d *day) holdMethods(it *item) []string {
	switch {
	case slices.Contains(it.dish.Hold, HoldNone):
		return nil
	case len(it.dish.Hold) > 0:
		return it.dish.Hold
	case it.dish.Travel != nil:
		return []string{HoldBox}
	}
	var methods []string
	switch it.cut.Style {
	case cut.Tough:
		methods = []string{HoldTent, HoldBox}
	case cut.Roast, cut.Bird:
		methods = []string{HoldTent}
	default:
		return nil
	}
	if d.req.Oven != nil {
		methods = append(methods, HoldOven)
	}
	return methods
}

// longestOverGood is how many times the longest good rest of its cut a dish is held
// at the most: by then it would be within the rule and not worth eating (assumption).
const longestOverGood = 4

// holdOptions follows the finished piece through each way of waiting.
func (d *day) holdOptions(it *item, w way, pieces int) []holdOption {
	var out []holdOption
	small := it.cut.Style == cut.Small || it.cut.Style == cut.Timed
	for _, m := range d.holdMethods(it) {
		oven := 0.0
		if m == HoldOven {
			oven = d.ovenC()
		}
		rule := safety.HoldFor(w.pullC, small, it.cut.Style == cut.Roast, d.air.AirC, oven)
		o := holdOption{method: m, rule: rule, vent: leastVent(it, m)}
		switch rule.Kind {
		case safety.HoldByClock:
			o.minutes, o.vent = rule.LimitMinutes, 0
		case safety.HoldRoastOven:
			o.minutes, o.vent = longestHoldS/60, 0
		case safety.HoldOuterAbove:
			o.minutes = d.hotFor(w, m, pieces, o.vent)
		}
		if longest := it.cut.Rest.LongestMinutes * longestOverGood; longest > 0 {
			o.minutes = math.Min(o.minutes, longest)
		}
		if o.minutes > 0 {
			out = append(out, o)
		}
	}
	return out
}

// hotFor is how many minutes after the take-off the outer layer stays above the
// published line, at the pessimistic end.
func (d *day) hotFor(w way, method string, pieces int, vent float64) float64 {
	if w.state == nil {
		return 0
	}
	return d.memo.hold(d.holdKey(w, method, pieces, vent), func() float64 {
		s := *w.state
		return d.course(w, method, pieces, vent, poorEnd).untilOuterBelow(&s, safety.DangerHighC)
	})
}

func (d *day) ovenC() float64 {
	if d.req.Oven == nil {
		return 0
	}
	if d.req.Oven.Hold == 0 {
		return defaultOvenC
	}
	return float64(d.req.Oven.Hold)
}

// longestHold is the longest any way of waiting lasts, less the travel; 0 if
// the dish has no hold.
func (d *day) longestHold(b *batch, w way) float64 {
	longest := 0.0
	for _, o := range d.holdOptions(b.it, w, b.count) {
		longest = math.Max(longest, o.minutes)
	}
	return math.Max(longest-b.it.travelMinutes(), 0)
}

// travelMinutes is the time between leaving and eating.
func (it *item) travelMinutes() float64 {
	if it.dish.Travel == nil {
		return 0
	}
	return unitMinutes(*it.dish.Travel)
}

// setHold gives a batch its ways of waiting, and picks one that lasts so many minutes.
func (d *day) setHold(p *placed, needed float64) {
	p.options = d.holdOptions(p.it, p.way, p.count)
	p.hold, p.holdLong = chooseHold(p.options, needed)
}

// chooseHold picks the gentlest way that lasts the minutes needed, else the
// longest; ok says whether it lasts.
func chooseHold(options []holdOption, needed float64) (chosen int, ok bool) {
	chosen = -1
	for i, o := range options {
		if o.minutes >= needed {
			return i, true
		}
		if chosen < 0 || o.minutes > options[chosen].minutes {
			chosen = i
		}
	}
	return chosen, false
}
