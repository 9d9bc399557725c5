package day

import (
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// RoomC is the air of a kitchen or a shaded table.
const RoomC = 21.0

// longestHoldS bounds a simulated hold: nothing is held for as long.
const longestHoldS = 24 * 3600

// defaultOvenC is the air of a warm oven that the request does not set.
var defaultOvenC = unit.FToC(170)

// Waiting is a way of waiting as the model follows it.
type Waiting struct {
	Method string
	Pieces int     // that wait together
	Vent   float64 // minutes open before the box is shut, or before the oven
	Boxed  float64 // minutes in a box before the oven: what is done too early for a whole night in it
	OvenC  float64 // what the oven is set to, 0 elsewhere
}

// HoldOption is one way of waiting and how long it may last, in minutes from the
// take-off, at the pessimistic end.
type HoldOption struct {
	Waiting
	Minutes float64 // on the table by then
	Hot     float64 // the outer layer is above 140 F throughout until then; 0: not claimed
	Eaten   float64 // eaten or chilled by then
	Night   bool    // it may be in the oven through a night
	Read    bool    // by what was read of it while it was held
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
	case cut.Tough, cut.Bird:
		methods = []string{schedule.HoldTent, schedule.HoldBox}
	case cut.Roast:
		methods = []string{schedule.HoldTent}
	case cut.Small:
	default:
		return nil
	}
	if d.Req.Oven != nil {
		methods = append(methods, schedule.HoldOven)
	}
	return methods
}

// HoldOptions follows the finished piece through each way of waiting.
func (d *Day) HoldOptions(it *Item, w Way, l Lot) []HoldOption {
	var out []HoldOption
	for _, m := range d.holdMethods(it) {
		if o := d.HoldBy(it, w, l, m, d.firstVent(it, w, m)); o.Minutes > 0 {
			out = append(out, o)
		}
	}
	return out
}

// HoldBy is how long a lot may wait in one way, after so many minutes in the open: the
// published rule at the pessimistic end of the model, and the nights that it may not be
// left alone for.
func (d *Day) HoldBy(it *Item, w Way, l Lot, method string, vent float64) HoldOption {
	f := d.Finished(it, w, l.MassKg, method)
	o := HoldOption{Waiting: Waiting{Method: method, Pieces: l.Count, Vent: vent, OvenC: f.OvenC}, Rule: safety.HoldFor(f)}
	if o.Rule.Kind != safety.HoldOuterAbove {
		o.Vent = 0
	}
	rule := o.Rule
	if method == schedule.HoldOven {
		var limit float64
		if limit, o.Night = d.nightLimit(it, f); o.Night {
			o.Boxed = d.boxFirst(it, w, o.Waiting)
			rule.MostMinutes += o.Vent + o.Boxed // the end of what is practised is of the oven
		}
		rule.MostMinutes = math.Min(rule.MostMinutes, math.Max(limit, rule.LeastMinutes))
	}
	hot := 0.0
	if rule.Kind != safety.HoldRoastOven && rule.Kind != safety.HoldNone {
		hot = d.HotFor(w, o.Waiting)
	}
	c := rule.Clock(hot)
	o.Minutes, o.Hot, o.Eaten = c.Served, c.Hot, c.Eaten
	return o
}

// boxFirst is how many minutes a piece may wait in a box before it goes into the oven for
// a night, at the poor end: there it must still be hot just under the surface.
func (d *Day) boxFirst(it *Item, w Way, h Waiting) float64 {
	if w.State == nil || !slices.Contains(d.holdMethods(it), schedule.HoldBox) {
		return 0
	}
	h.Method, h.OvenC = schedule.HoldBox, 0
	return d.memo.hold(d.boxFirstKey(w, h), func() float64 {
		s := *w.State
		return boxedFor(d.Course(w, h, PoorEnd).untilOuterBelow(&s, safety.OvernightIntoC), h)
	})
}

// boxFirstKey is that of a wait in a box before the oven.
func (d *Day) boxFirstKey(w Way, h Waiting) holdKey {
	key := d.holdKey(w, h)
	key.waiting.Method = "box before " + schedule.HoldOven
	return key
}

// boxedFor are the minutes in the box, of those from the take-off.
func boxedFor(m float64, h Waiting) float64 {
	return math.Max(math.Floor((m-h.Vent)/boxStep)*boxStep, 0)
}

const boxStep = 15 // minutes, as a cook says it

// firstVent is the least minutes open before a box or an oven; none where it would cool too
// far in them, as a bare piece may.
func (d *Day) firstVent(it *Item, w Way, method string) float64 {
	least := leastVent(it, method)
	if least == 0 || w.State == nil {
		return least
	}
	outerC := d.memo.hold(d.holdKey(w, Waiting{Vent: least}), func() float64 {
		s := *w.State
		s.Change(Standing(w, d.indoorsC(), PoorEnd))
		s.RunFor(least * 60)
		return s.OuterC()
	})
	if outerC < VentOuterC {
		return 0
	}
	return least
}

// HotFor is how many minutes after the take-off the outer layer stays above the
// published line, at the pessimistic end.
func (d *Day) HotFor(w Way, h Waiting) float64 {
	if w.State == nil {
		return 0
	}
	return d.memo.hold(d.holdKey(w, h), func() float64 {
		s := *w.State
		if h.Method != schedule.HoldBox || d.Req.Oven == nil {
			return d.Course(w, h, PoorEnd).untilOuterBelow(&s, safety.DangerHighC)
		}
		into := heat.Passing{C: safety.OvernightIntoC} // on the way to the one it passes the other
		minutes := d.Course(w, h, PoorEnd).untilOuterBelowPast(&s, safety.DangerHighC, &into)
		if into.Passed {
			d.memo.hold(d.boxFirstKey(w, h), func() float64 { return boxedFor((into.AtS-w.State.ElapsedS())/60, h) })
		}
		return minutes
	})
}

// OvenC is what the warm oven of the request is set to.
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
