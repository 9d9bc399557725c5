package day

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/spread"
)

// keptHot lengthens ways by the time that a published minimum wants to be held, as
// for injected and tenderised meat: it stays on the fire for it. A target well above
// the minimum has held it long before.
func (it *Item) keptHot(ways []Way) []Way {
	m := it.holdMinutes()
	if m == 0 {
		return ways
	}
	for i := range ways {
		w := &ways[i]
		last := &w.First
		if w.Stages() > 1 {
			last = &w.Second
		}
		*last = last.Plus(spread.Same(m))
		if w.InOven.Planned > 0 {
			w.InOven = w.InOven.Plus(spread.Same(m))
		}
	}
	return ways
}

// heldMarginK is from how far above the minimum the rise itself takes longer than
// the hold: 15 s is the longest that is then asked.
const heldMarginK = 5

// holdMinutes is how long the core stays at its minimum before it comes off.
func (it *Item) holdMinutes() float64 {
	if it.Verdict.MarginK >= heldMarginK {
		return 0
	}
	return it.Verdict.Minimum.HoldSeconds / 60
}

// HoldSentence says so at the take-off.
func (it *Item) HoldSentence(d *Day) string {
	switch m := it.holdMinutes(); {
	case m == 0:
		return ""
	case m < 1:
		return fmt.Sprintf(" It has been there for %.0f s by then.", m*60)
	default:
		return fmt.Sprintf(" It has been at %s or more for %s by then.", d.Core(it.Verdict.Minimum.CoreC), SpokenSpan(m))
	}
}

// SpokenSpan is a limit that may not be rounded, "4 min".
func SpokenSpan(m float64) string { return fmt.Sprintf("%.0f min", math.Ceil(m)) }

// finalFault refuses a peak after carry-over for food that must have its minimum on
// the fire: what a rest adds is no part of it.
func (it *Item) finalFault() []schedule.Fault {
	switch it.Category {
	case safety.Poultry, safety.Ground, safety.GroundPoultry, safety.Sausage, safety.Leftovers:
	default:
		if !it.Prep.Stuffed && !it.Prep.Injected && !it.Prep.Tenderised {
			return nil
		}
	}
	if !it.final {
		return nil
	}
	return []schedule.Fault{{Path: it.Path("target"), Sentence: "final counts on heat that comes after the fire, and " + it.Cut.InText() + " has its minimum on the fire; give the core temperature itself"}}
}
