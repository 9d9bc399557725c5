package spread

import "math"

// LongestShare is how much longer than expected a cook takes at the most because its
// grate is cool: nobody looks at a standing core for longer without mending the fire
// (assumption).
const LongestShare = 1.6

// A normal error of the grate at five points (Gauss and Hermite's rule): where, in
// standard deviations, and how much each counts. The outer points' minutes follow from
// the inner ones by nodeOuter.
const (
	NodeSD    = 1.3556
	nodeOuter = 2.1075 // 2.8570 / 1.3556
)

var nodeWeights = [5]float64{0.011257, 0.222076, 0.533333, 0.222076, 0.011257}

// Mix is the spread of a cook whose own factor is log-normal with standard deviation
// own and median 1, mixed over the error of its grate in closed form. slow and fast are
// its minutes on a grate NodeSD standard deviations cooler and hotter, as shares of
// those on the grate as it is; slow is infinite where it never gets there.
func Mix(own, slow, fast float64) Spread {
	longest := math.Log(LongestShare)
	l := [5]float64{1: math.Min(math.Max(math.Log(slow), 0), longest), 3: math.Min(math.Log(fast), 0)}
	l[0], l[4] = math.Min(nodeOuter*l[1], longest), nodeOuter*l[3]
	q10, q50, q90 := mixedQuantile(own, l, 0.1), mixedQuantile(own, l, 0.5), mixedQuantile(own, l, 0.9)
	s := Spread{Median: q50, S: (q50 - q10) / ZTenth}
	s.Late = math.Max((q90-q50)/ZTenth-s.S, 0)
	s.Grate = math.Min(math.Sqrt(math.Max(s.S*s.S-own*own, 0)), 0.95*s.S)
	return s
}

// Between is the spread with these tenth, half and nine-tenths quantiles of the logarithm.
// Where fast days go further than slow ones it is as wide on both sides as in the mean.
func Between(q10, q50, q90 float64) Spread {
	const least = 0.005
	early, late := (q50-q10)/ZTenth, (q90-q50)/ZTenth
	if late < early {
		early = (early + late) / 2
		late = early
	}
	early = math.Max(early, least)
	return Spread{Median: q50, S: early, Late: math.Max(late-early, 0)}
}

// mixedQuantile is the logarithm that the mixed factor stays below with a probability.
func mixedQuantile(own float64, centres [5]float64, probability float64) float64 {
	const closeEnough = 1e-7
	low, high := centres[4]-6*own, centres[0]+6*own
	for high-low > closeEnough {
		mid := (low + high) / 2
		below := 0.0
		for k, c := range centres {
			below += nodeWeights[k] * NormalCDF((mid-c)/own)
		}
		if below < probability {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
