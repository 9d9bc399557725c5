package day

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// resolveFrozen decides which; a fault where it makes no sense.
func (it *Item) resolveFrozen() []schedule.Fault {
	if it.Dish.Start == nil || !it.Dish.Start.Frozen {
		return nil
	}
	if it.Cut.Style == cut.Timed {
		return []schedule.Fault{{Path: it.Path("start"), Sentence: it.Cut.Title + " goes by the clock, which does not know frozen; leave start out"}}
	}
	if it.Cut.Style == cut.Small && it.Dish.Finish == "" && !it.Prep.Brined && !it.Dish.ToSalt() {
		for _, s := range it.Spots() {
			it.FromFrozen = it.FromFrozen || safety.JudgeFrozen(s.LevelC).Kind != safety.Refused
		}
	}
	it.Thaws = !it.FromFrozen
	return nil
}

// frozenWays are the ways of a piece that goes on frozen: those of a thawed one on
// a grate that the rule allows, longer by the published factor.
func (d *Day) frozenWays(it *Item, l Lot, s Spot) []Way {
	if safety.JudgeFrozen(s.LevelC).Kind == safety.Refused {
		return nil
	}
	thawed := *it
	thawed.FromFrozen = false
	ways := d.WaysAt(&thawed, l, s)
	for i := range ways {
		w := &ways[i]
		w.First, w.Second, w.InOven = w.First.Times(safety.FrozenFactor), w.Second.Times(safety.FrozenFactor), w.InOven.Times(safety.FrozenFactor)
		w.Spread.Median += math.Log(safety.FrozenFactor)
	}
	return ways
}

func FrozenFinding(it *Item) schedule.Finding {
	return Finding("frozen-longer", it.Path("start"), it, fmt.Sprintf(
		"%s: on frozen, planned with the published factor of %g. The published figure is a least one: measure, and expect it late rather than early.", it.Dish.Name, safety.FrozenFactor))
}

// PutOnFrozen puts the one piece of an inquiry on frozen, large or small: there is
// no day before it to thaw it in. The published rule may refuse it.
func (it *Item) PutOnFrozen(levelC float64) error {
	if v := safety.JudgeFrozen(levelC); v.Kind == safety.Refused {
		return &schedule.InputError{Faults: []schedule.Fault{{Path: "start", Sentence: v.Sentence}}}
	}
	it.Thaws, it.FromFrozen = false, true
	return nil
}
