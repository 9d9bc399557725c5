package belief

import (
	"math"

	"example.com/cookday/schedule/unit"
)

// Creep is a second plateau, near the target: the core rises less than half as fast as
// it should. What it does to the clock is an assumption, looked at on one log only.
type Creep struct {
	Slower     float64 // than the model, 1 to 4; 1 is no creep
	ForMinutes float64
	FromC, ToC float64
}

func (c Creep) On() bool { return c.Slower > 1 }

// Assumptions on a core that creeps.
const (
	creepLeast  = 90.0 // minutes
	quickShare  = 0.25 // of the whole cook, where no stall is: it is over in less
	quickLeast  = 15.0 // minutes
	creepMost   = 4.0
	creepSpread = 0.3
	creepBelowK = 30 / 1.8
	CreepChance = 0.8 // the most that is said of a time while it lasts
)

// creeping looks for it in the nodes.
func (b *Belief) creeping() Creep {
	out := Creep{Slower: 1}
	n := len(b.Nodes)
	if b.Journey.TenderS > 0 || n < 2 {
		return out
	}
	last, from, least := b.Nodes[n-1], b.Journey.TargetC-creepBelowK, creepLeast
	if b.Stalls {
		from = math.Max(unit.FToC(175), from)
	} else {
		least = math.Min(least, math.Max(quickShare*b.Whole, quickLeast))
	}
	for _, first := range b.Nodes[:n-1] {
		if first.CoreC <= from {
			continue
		}
		if last.Minute-first.Minute < least {
			return out
		}
		r, _ := b.usual.anchored(first.Minute, first.CoreC, false)
		r.through(last.Minute, false)
		usual := math.Min(r.sim.CoreC(), b.Journey.TargetC) - first.CoreC
		seen := last.CoreC - first.CoreC
		if usual > 0 && seen < usual/2 {
			out.Slower = math.Min(math.Max(usual/math.Max(seen, 0.5/1.8), 1), creepMost)
			out.ForMinutes, out.FromC, out.ToC = last.Minute-first.Minute, first.CoreC, last.CoreC
		}
		return out
	}
	return out
}
