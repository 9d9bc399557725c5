package fire

import "math"

// decay is e to the power of -x, for x of 0 and more, off by less than a billionth of itself: a live fire asks for some
// hundred thousand of them at each look, and the library's takes three times as long.
func decay(x float64) float64 {
	one := [1]float64{x}
	decays(one[:])
	return one[0]
}

// decays is decay of each, in place: of several side by side none waits for another.
func decays(all []float64) {
	for i, x := range all {
		if !(x < decayMost) {
			all[i] = 0
			continue
		}
		halvings := float64(int64(x*math.Log2E + 0.5))
		r := halvings*math.Ln2 - x // at most half of ln 2 either way
		tail := 1. / 120 * (1 + r*(1./6+r*(1./42+r/336)))
		all[i] = math.Float64frombits(uint64(1023-int(halvings))<<52) * (1 + r*(1+r*(1./2+r*(1./6+r*(1./24+r*tail)))))
	}
}

const decayMost = 600.0
