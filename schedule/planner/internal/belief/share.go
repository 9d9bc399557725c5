package belief

import "math"

// The grid over the error of the common grate.
const (
	grateCount = 15
	grateReach = 3.0
)

// ShareGrate joins what all pieces say about the error of their common grate, and works
// out what is left of each. ratio is the standard deviation of that error as a share of
// what it is without a thermometer on the grate. It returns mean and standard deviation
// of the error, in standard deviations of an unmeasured one; positive is cooler.
func ShareGrate(all []*Belief, ratio float64) (mean, sd float64) {
	zs, weight := make([]float64, grateCount), make([]float64, grateCount)
	sum := 0.0
	for k := range zs {
		z := grateReach * (2*float64(k)/(grateCount-1) - 1)
		zs[k], weight[k] = ratio*z, math.Exp(-z*z/2)
		for _, b := range all {
			weight[k] *= b.evidence(zs[k])
		}
		sum += weight[k]
	}
	square := 0.0
	for k := range weight {
		weight[k] /= sum
		mean, square = mean+weight[k]*zs[k], square+weight[k]*zs[k]*zs[k]
	}
	sd = math.Sqrt(math.Max(square-mean*mean, 0))
	for _, b := range all {
		b.GrateS, b.zs, b.weight = sd, zs, weight
		b.Rest = b.product(zs, weight)
	}
	return mean, sd
}

// evidence is the likelihood of a grate error by the pace that brought the piece to its
// newest reading. A piece moves another by this and by nothing else.
func (b *Belief) evidence(z float64) float64 {
	if len(b.Nodes) == 0 || b.slope == 0 {
		return 1
	}
	sd := seenS
	if b.Stalls { // whatever its core: a colder one must not count for more
		sd = seenStallS
	}
	off := (b.pace - b.lag - b.Spread.Median - b.slope*z) / sd
	return math.Exp(-huber(off))
}

// product is what both clocks say together, over the errors of the grate.
func (b *Belief) product(zs, weight []float64) Rest {
	if len(b.Nodes) > 0 && b.clockA.rest == 0 {
		return nil
	}
	rest := b.with(b.clockA, zs, weight)
	if b.clockA0.rest > 0 {
		rest = rest.NoSooner(b.with(b.clockA0, zs, weight))
	}
	return rest
}

func (b *Belief) with(a clock, zs, weight []float64) Rest {
	now := b.Journey.Now
	s := side{wholeShare * b.Spread.Own(), wholeShare * b.Spread.OwnSlow()}
	out, part := make([]float64, restPoints), make([]float64, restPoints)
	lnWhole, lnA := math.Log(b.Whole), math.Log(a.rest)+a.bias
	var lnT, lnR [restPoints]float64
	for i, rest := range restGrid {
		lnT[i] = math.Log(now + rest)
		lnR[i] = math.Log(now + rest - a.minute)
	}
	for k, z := range zs {
		sum := 0.0
		for i := range part {
			cost := s.cost(lnT[i] - lnWhole - b.slope*z)
			if a.rest > 0 {
				cost += a.spread.cost(lnR[i] - lnA - b.slope*z)
			}
			part[i] = math.Exp(-cost) * restGrid[i] / (now + restGrid[i])
			sum += part[i]
		}
		if sum > 0 {
			for i, p := range part {
				out[i] += weight[k] * p / sum
			}
		}
	}
	return restOf(out)
}
