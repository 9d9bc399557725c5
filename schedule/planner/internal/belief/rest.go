package belief

import "math"

// The grid of what is left: minutes from now, evenly in the logarithm.
const (
	restPoints   = 600
	leastRest    = 1.0
	longestShown = LongestAhead
)

var restStep = math.Log(longestShown/leastRest) / (restPoints - 1)

var restGrid = func() (out [restPoints]float64) {
	for i := range out {
		out[i] = leastRest * math.Exp(restStep*float64(i))
	}
	return out
}()

// Rest is what is believed of the minutes that a piece still takes: the chance that it is
// done by each point of the grid. Nil is done.
type Rest []float64

// restOf sums a density over the grid.
func restOf(density []float64) Rest {
	out := make(Rest, len(density))
	sum := 0.0
	for i, p := range density {
		sum += p
		out[i] = sum
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// Quantile is the minutes from now that are not exceeded with a probability.
func (r Rest) Quantile(probability float64) float64 {
	if r == nil {
		return 0
	}
	before := 0.0
	for i, p := range r {
		if p >= probability {
			share := 1.0
			if p > before {
				share = (probability - before) / (p - before)
			}
			return leastRest * math.Exp(restStep*(float64(i)+share-1))
		}
		before = p
	}
	return longestShown
}

// Chance is the probability that the piece is done within some minutes from now.
func (r Rest) Chance(minutes float64) float64 {
	if r == nil {
		return 1
	}
	x := math.Log(minutes/leastRest)/restStep + 1
	switch {
	case !(minutes > 0) || x <= 0:
		return 0
	case x >= restPoints:
		return 1
	}
	i := int(x)
	low, high := 0.0, r[min(i, restPoints-1)]
	if i > 0 {
		low = r[i-1]
	}
	return low + (x-float64(i))*(high-low)
}

// NoSooner is the later of two at each probability.
func (r Rest) NoSooner(than Rest) Rest {
	switch {
	case than == nil:
		return r
	case r == nil:
		return than
	}
	out := make(Rest, len(r))
	for i := range r {
		out[i] = math.Min(r[i], than[i])
	}
	return out
}

// Mixed is what is believed where one of two holds, the first with a chance.
func (r Rest) Mixed(other Rest, chance float64) Rest {
	out := make(Rest, restPoints)
	at := func(r Rest, i int) float64 {
		if r == nil {
			return 1
		}
		return r[i]
	}
	for i := range out {
		out[i] = chance*at(r, i) + (1-chance)*at(other, i)
	}
	return out
}
