package schedule

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
)

// longestHoldS bounds a simulated hold; a longer one is another day's cook.
const longestHoldS = 14 * 3600

// defaultOvenC is the air of a warm oven that the request does not set.
var defaultOvenC = celsius(170)

// holdOption is one way of waiting and how long it may last.
type holdOption struct {
	method  string
	minutes float64 // by the rule, from the take-off
	rule    safety.HoldRule
}

// holdMethods are the ways a dish may wait, gentlest first.
func (d *day) holdMethods(it *item) []string {
	if len(it.dish.Hold) > 0 {
		return it.dish.Hold
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
		o := holdOption{method: m, rule: rule}
		switch rule.Kind {
		case safety.HoldByClock:
			o.minutes = rule.LimitMinutes
		case safety.HoldRoastOven:
			o.minutes = longestHoldS / 60
		case safety.HoldOuterAbove:
			o.minutes = d.hotFor(w, m, rule.LimitC, pieces)
		}
		if o.minutes > 0 {
			out = append(out, o)
		}
	}
	return out
}

// hotFor is how many minutes the outer layer stays above limitC.
func (d *day) hotFor(w way, method string, limitC float64, pieces int) float64 {
	if !w.held {
		return 0
	}
	s := w.state
	start := s.ElapsedS()
	s.Change(d.holdIn(method, pieces))
	s.RunUntilOuterBelow(limitC, longestHoldS)
	return (s.ElapsedS() - start) / 60
}

// holdIn is what surrounds a waiting piece.
func (d *day) holdIn(method string, pieces int) heat.Surroundings {
	air := math.Min(roomC, d.night.AirC)
	switch method {
	case HoldBox:
		if pieces > 1 { // they keep each other warm (assumption)
			return heat.Boxed(air, heat.BoxGoodWM2K)
		}
		return heat.Boxed(air, heat.BoxWM2K)
	case HoldOven:
		return heat.WarmOven(d.ovenC())
	case HoldGrill:
		return heat.WarmOven(dyingGrillC)
	case HoldCounter:
		return heat.Counter(air)
	}
	return heat.Tented(air)
}

// dyingGrillC is the air over a fire whose vents are all but shut (assumption).
var dyingGrillC = celsius(150)

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
	if b.it.dish.Travel != nil {
		longest -= unitMinutes(*b.it.dish.Travel)
	}
	return math.Max(longest, 0)
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
