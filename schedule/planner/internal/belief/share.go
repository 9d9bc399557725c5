package belief

import (
	"math"
)

// prior is the density at x for a known grate error g.
func (b *Belief) prior(x, g float64) float64 {
	return skewed(x-b.spread.Median-b.spread.Grate*g, b.spread.Own(), b.spread.OwnSlow())
}

// skewed is a density, to a factor, whose median is 0: slow days go further than fast ones.
func skewed(off, fast, slow float64) float64 {
	sd := fast
	if off > 0 {
		sd = slow
	}
	return math.Exp(-off*off/(2*sd*sd)) / sd
}

// ShareGrate joins what all pieces say about the error of their common grate
// and gives each its chances. ratio is the standard deviation of that error as a
// share of what it is without a thermometer on the grate. It returns mean and
// standard deviation of the error, in standard deviations of an unmeasured one.
func ShareGrate(all []*Belief, ratio float64) (mean, sd float64) {
	gs, weight := make([]float64, grateCount), make([]float64, grateCount)
	evidence := make([][]float64, len(all))
	for k := range gs {
		z := grateReach * (2*float64(k)/(grateCount-1) - 1)
		gs[k], weight[k] = ratio*z, math.Exp(-z*z/2)
	}
	for d, b := range all {
		b.ratio = ratio
		evidence[d] = make([]float64, grateCount)
		for k, g := range gs {
			for i, x := range b.xs {
				evidence[d][k] += b.prior(x, g) * b.like[i]
			}
			weight[k] *= evidence[d][k]
		}
	}
	sum, square := 0.0, 0.0
	for k, w := range weight {
		sum, mean, square = sum+w, mean+w*gs[k], square+w*gs[k]*gs[k]
	}
	mean, square = mean/sum, square/sum
	sd = math.Sqrt(math.Max(square-mean*mean, 0))
	for d, b := range all {
		b.chance = make([]float64, len(b.xs))
		total := 0.0
		for i, x := range b.xs {
			for k, g := range gs {
				if evidence[d][k] > 0 {
					b.chance[i] += weight[k] / evidence[d][k] * b.prior(x, g) * b.like[i]
				}
			}
			total += b.chance[i]
		}
		for i := range b.chance {
			b.chance[i] /= total
		}
		b.grate, b.GrateS = mean, sd
		b.lookBack()
	}
	return mean, sd
}

// lookBack gives the chances of the pace up to the last reading, for which the
// grate's error counts as its mean and what is left of its spread.
func (b *Belief) lookBack() {
	if b.Drift == 0 {
		b.past = b.chance
		return
	}
	rest := b.Drift + b.spread.Grate*b.spread.Grate*b.GrateS*b.GrateS
	fast, slow := math.Sqrt(b.spread.Own()*b.spread.Own()+rest), math.Sqrt(b.spread.OwnSlow()*b.spread.OwnSlow()+rest)
	b.past = make([]float64, len(b.xs))
	total := 0.0
	for i, x := range b.xs {
		b.past[i] = b.sofar[i] * skewed(x-b.spread.Median-b.spread.Grate*b.grate, fast, slow)
		total += b.past[i]
	}
	for i := range b.past {
		b.past[i] /= total
	}
}
