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
	left := b.Quantile(probability) - from
	if left <= 0 || b.wayEnds <= from {
		return math.Max(coreC, b.Journey.TargetC)
	}
	first := b.leftAt(b.fromS)
	foretold := first * (1 - (minute-from)/left)
	if len(b.Nodes) > 0 {
		return b.at(foretold)
	}
	// A piece that nobody read and that is not done is no further than what is left of it says.
	now := b.Journey.Now
	half := b.Quantile(0.5)
	late := math.Sqrt((half - now) / (first * (1 - now/half)))
	if minute < now {
		late = 1 + (late-1)*minute/now
	}
	return b.at(math.Min(first, foretold*late))
}

// leftAt is what clock A says, corrected, of a piece on its way to the end, at the model's
// seconds.
func (b *Belief) leftAt(modelS float64) float64 {
	minute := b.way.at + (modelS-b.way.atS)/60*b.way.f
	core := Sample(b.way.curve, b.Journey.Body.StartC, b.way.sim.CoreC(), modelS)
	return (b.wayEnds - minute) * math.Exp(b.biasAt(core, minute, &b.way, b.wayEnds))
}

// at is the core on the way to the end where clock A, corrected, says that so many minutes
// are left: the piece that is read there is where it was foretold.
func (b *Belief) at(left float64) float64 {
	if left <= 0 {
		return b.way.sim.CoreC()
	}
	low, high := b.fromS, b.way.sim.ElapsedS()
	for range 40 {
		if mid := (low + high) / 2; b.leftAt(mid) > left {
			low = mid
		} else {
			high = mid
		}
	}
	return Sample(b.way.curve, b.Journey.Body.StartC, b.way.sim.CoreC(), low)
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
	atWrap := (b.wayEnds - b.way.wrap) * math.Exp(biasWrapped)
	return end - (end-from)*math.Min(1, atWrap/b.leftAt(b.fromS))
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
