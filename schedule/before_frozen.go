package schedule

import (
	"fmt"
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// A dish that starts frozen is either thawed, and cooks from the refrigerator, or
// cooks from frozen: small pieces may on a grate hot enough for the published
// rule. Large pieces are thawed on any fire, because nothing is measured of how
// their time spreads from frozen.

// resolveFrozen decides which; a fault where it makes no sense.
func (it *item) resolveFrozen() []Fault {
	if it.dish.Start == nil || !it.dish.Start.Frozen {
		return nil
	}
	if it.cut.Style == cut.Timed {
		return []Fault{{Path: it.path("start"), Sentence: it.cut.Title + " goes by the clock, which does not know frozen; leave start out"}}
	}
	if it.cut.Style == cut.Small && it.dish.Finish == "" && !it.prep.Brined {
		for _, s := range it.spots() {
			it.fromFrozen = it.fromFrozen || safety.JudgeFrozen(s.levelC).Kind != safety.Refused
		}
	}
	it.thaws = !it.fromFrozen
	return nil
}

// frozenWays are the ways of a piece that goes on frozen: those of a thawed one on
// a grate that the rule allows, longer by the published factor.
func (d *day) frozenWays(it *item, l lot, s spot) []way {
	if safety.JudgeFrozen(s.levelC).Kind == safety.Refused {
		return nil
	}
	thawed := *it
	thawed.fromFrozen = false
	ways := d.waysAt(&thawed, l, s)
	for i := range ways {
		w := &ways[i]
		w.first, w.second, w.inOven = w.first.times(safety.FrozenFactor), w.second.times(safety.FrozenFactor), w.inOven.times(safety.FrozenFactor)
		w.spread.Median += math.Log(safety.FrozenFactor)
	}
	return ways
}

func (p pace) times(f float64) pace {
	return pace{p.early * f, p.expected * f, p.late * f, p.planned * f}
}

func frozenFinding(it *item) Finding {
	return finding("frozen-longer", it.path("start"), it, fmt.Sprintf(
		"%s: on frozen, planned with the published factor of %g. The published figure is a least one: measure, and expect it late rather than early.", it.dish.Name, safety.FrozenFactor))
}

// frozenOutlook puts the one piece of an inquiry on frozen, large or small: there is
// no day before it to thaw it in. The published rule may refuse it.
func (d *day) frozenOutlook(it *item, levelC float64) error {
	if !it.thaws && !it.fromFrozen {
		return nil
	}
	if v := safety.JudgeFrozen(levelC); v.Kind == safety.Refused {
		return inquiryFault("start", v.Sentence)
	}
	it.thaws, it.fromFrozen = false, true
	d.find(frozenFinding(it))
	return nil
}
