package day

import (
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// RoomC is the air of a kitchen or a shaded table.
const RoomC = 21.0

// longestHoldS bounds a simulated hold; a longer one is another day's cook.
const longestHoldS = 14 * 3600

// defaultOvenC is the air of a warm oven that the request does not set.
var defaultOvenC = unit.FToC(170)

// HoldOption is one way of waiting and how long it may last.
type HoldOption struct {
	Method  string
	Minutes float64 // by the rule, from the take-off, at the pessimistic end
	Vent    float64 // of them open before the box is shut, or before the oven
	Rule    safety.HoldRule
}

// holdMethods are the ways a dish may wait, gentlest first. What travels goes in a box.
func (d *Day) holdMethods(it *Item) []string {
	switch {
	case slices.Contains(it.Dish.Hold, schedule.HoldNone):
		return nil
	case len(it.Dish.Hold) > 0:
		return it.Dish.Hold
	case it.Dish.Travel != nil:
		return []string{schedule.HoldBox}
	}
	var methods []string
	switch it.Cut.Style {
	case cut.Tough:
		methods = []string{schedule.HoldTent}
		if !it.Prep.Stuffed {
			methods = append(methods, schedule.HoldBox)
		}
	case cut.Roast, cut.Bird:
		methods = []string{schedule.HoldTent}
	default:
		return nil
	}
	if d.Req.Oven != nil {
		methods = append(methods, schedule.HoldOven)
	}
	return methods
}

// longestOverGood is how many times the longest good rest of its cut a dish is held
// at the most: by then it would be within the rule and not worth eating (assumption).
const longestOverGood = 4

// HoldOptions follows the finished piece through each way of waiting.
func (d *Day) HoldOptions(it *Item, w Way, pieces int) []HoldOption {
	var out []HoldOption
	small := it.Cut.Style == cut.Small || it.Cut.Style == cut.Timed
	for _, m := range d.holdMethods(it) {
		oven := 0.0
		if m == schedule.HoldOven {
			oven = d.OvenC()
		}
		rule := safety.HoldFor(safety.Finished{CoreC: w.DoneC(it), Small: small, Roast: it.Cut.Style == cut.Roast, AirC: d.Air.AirC, OvenC: oven})
		o := HoldOption{Method: m, Rule: rule, Vent: leastVent(it, m)}
		switch rule.Kind {
		case safety.HoldByClock:
			o.Minutes, o.Vent = rule.LimitMinutes, 0
		case safety.HoldRoastOven:
			o.Minutes, o.Vent = longestHoldS/60, 0
		case safety.HoldOuterAbove:
			o.Minutes = d.HotFor(w, m, pieces, o.Vent)
		}
		if longest := it.Cut.Rest.LongestMinutes * longestOverGood; longest > 0 {
			o.Minutes = math.Min(o.Minutes, longest)
		}
		if o.Minutes > 0 {
			out = append(out, o)
		}
	}
	return out
}

// HotFor is how many minutes after the take-off the outer layer stays above the
// published line, at the pessimistic end.
func (d *Day) HotFor(w Way, method string, pieces int, vent float64) float64 {
	if w.State == nil {
		return 0
	}
	return d.memo.hold(d.holdKey(w, method, pieces, vent), func() float64 {
		s := *w.State
		return d.Course(w, method, pieces, vent, PoorEnd).untilOuterBelow(&s, safety.DangerHighC)
	})
}

func (d *Day) OvenC() float64 {
	if d.Req.Oven == nil {
		return 0
	}
	if d.Req.Oven.Hold == 0 {
		return defaultOvenC
	}
	return float64(d.Req.Oven.Hold)
}

// TravelMinutes is the time between leaving and eating.
func (it *Item) TravelMinutes() float64 {
	if it.Dish.Travel == nil {
		return 0
	}
	return instant.UnitMinutes(*it.Dish.Travel)
}
