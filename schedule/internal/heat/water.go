package heat

import "math"

// The water of the surface. Heat makes protein shrink and expel water; it seeps
// to the surface with a delay, keeps it wet, evaporates and drips.
const (
	wetnessMost  = 1.0         // a wet surface is wet
	dryWetness   = 0.0118      // what evaporates through bark, fitted; not from the reservoir
	halfWater    = 0.335       // kg/m2 at which wetness is half its most, fitted
	initialWater = 0.5         // kg/m2 at the start, assumption; the fit is flat there
	supplyKgKg   = 0.322       // kg of expellable water per kg of raw meat of leanWater, fitted
	leanWater    = 0.70        // water share of lean meat
	seepS        = 1.6 * 3600  // delay, s; fitted
	dripPerS     = 0.25 / 3600 // assumption; gives humidity its sign

	// The share expelled is a logistic curve in the form of van der Sman's
	// water-holding curve; both fitted, the middle with a prior of 65 +- 2. Water leaves
	// the proteins from 50 to 85 degC and not in a step: that gives the early, low
	// plateau and the creep from 165 to 195 degF.
	expelMiddleC = 64.5
	expelWidthK  = 6.8
)

const (
	expelFirstC, expelStepK = 20.0, 0.25
	expelEntries            = 4*85 + 1 // to 105 degC
)

// expelTable holds the logistic curve, so that a step needs no exponentials for it.
var expelTable = func() (table [expelEntries]float64) {
	for i := range table {
		t := expelFirstC + expelStepK*float64(i)
		table[i] = 1 / (1 + math.Exp(-(t-expelMiddleC)/expelWidthK))
	}
	return table
}()

// expelled is the share of the expellable water that leaves at a temperature.
func expelled(tempC float64) float64 {
	x := (tempC - expelFirstC) / expelStepK
	if !(x > 0) {
		return expelTable[0]
	}
	i := int(x)
	if i >= expelEntries-1 {
		return expelTable[expelEntries-1]
	}
	return expelTable[i] + (x-float64(i))*(expelTable[i+1]-expelTable[i])
}

// wetness is the share of the surface's potential evaporation that water on it,
// in kg/m2, lets happen.
func wetness(water, wetFactor, cover float64) float64 {
	return cover * wetFactor * (wetnessMost*water/(water+halfWater) + dryWetness)
}

// balance solves c W + e W/(W + halfWater) = r for the water W in kg/m2 that is
// left at the end of a step: the positive root of a quadratic.
func balance(c, e, r float64) float64 {
	if r <= 0 {
		return 0
	}
	half := (c*halfWater + e - r) / 2
	root := math.Sqrt(half*half + c*r*halfWater)
	if half > 0 {
		return r * halfWater / (root + half)
	}
	return (root - half) / c
}
