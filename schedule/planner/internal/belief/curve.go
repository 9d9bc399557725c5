package belief

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// misses is what the way to the newest node is off by at each node before it.
func (b *Belief) misses() []float64 {
	out := make([]float64, len(b.Nodes))
	for i, n := range b.Nodes[:len(b.Nodes)-1] {
		out[i] = n.CoreC - b.gone(n.Minute)
	}
	return out
}

// gone is the core at a minute before the newest node, as the way to it has it.
func (b *Belief) gone(minute float64) float64 {
	return Sample(b.way.curve, b.Journey.Body.StartC, b.way.sim.CoreC(), minute/math.Exp(b.pace)*60)
}

// CoreC is the core at a minute from the put-on: as it was read, and from the newest
// reading on as it will go if the piece is done at the quantile of a probability.
func (b *Belief) CoreC(minute, probability float64) float64 {
	from, coreC := 0.0, b.Journey.Body.StartC
	if n := len(b.Nodes); n > 0 {
		last := b.Nodes[n-1]
		if from, coreC = last.Minute, last.CoreC; minute <= from {
			return b.read(minute)
		}
		if b.Rest == nil {
			return coreC
		}
	}
	left, way := b.Quantile(probability)-from, b.wayEnds-from
	if left <= 0 || way <= 0 {
		return math.Max(coreC, b.Journey.TargetC)
	}
	modelS := b.way.atS + (minute-from)*way/left/b.way.f*60
	core := Sample(b.way.curve, b.Journey.Body.StartC, b.way.sim.CoreC(), modelS)
	if shownS := float64(len(b.way.curve.Points)-1) * b.way.curve.EveryS; modelS > shownS {
		return b.way.sim.CoreC()
	}
	return core
}

// read is the core at a minute up to the newest node: through all of them.
func (b *Belief) read(minute float64) float64 {
	core, at, miss := b.gone(minute), 0.0, 0.0
	for i, n := range b.Nodes {
		if minute <= n.Minute {
			if n.Minute > at {
				core += miss + (minute-at)/(n.Minute-at)*(b.toReads[i]-miss)
			}
			return core
		}
		at, miss = n.Minute, b.toReads[i]
	}
	return core
}

// Wraps says whether the piece comes to a wrap that is still planned.
func (b *Belief) Wraps() bool { return !math.IsNaN(b.way.wrap) }

// WrapAt is the minute of a wrap that is still to come, at the quantile of a probability;
// that of the end where there is none.
func (b *Belief) WrapAt(probability float64) float64 {
	end := b.Quantile(probability)
	if math.IsNaN(b.way.wrap) {
		return end
	}
	from := 0.0
	if n := len(b.Nodes); n > 0 {
		from = b.Nodes[n-1].Minute
	}
	if b.wayEnds <= from {
		return end
	}
	return from + (b.way.wrap-from)*(end-from)/(b.wayEnds-from)
}

// OutOfReach says that the piece does not come to its target in what surrounds it.
func (b *Belief) OutOfReach() bool { return b.Rest != nil && b.Journey.endless(b.wayEnds) }

// End is the piece as it comes off, at the model's own pace; nil if it never gets there.
func (b *Belief) End() *heat.Sim {
	if b.Journey.endless(b.wayEnds) {
		return nil
	}
	return &b.way.sim
}
