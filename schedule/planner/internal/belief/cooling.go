package belief

import (
	"math"
	"sort"
)

// Held is a reading of a piece that is held: of its core, or just under its surface.
type Held struct {
	Minute, C float64 // from the take-off
	Outer     bool
}

// Warmth is what surrounds a piece that is held. A box loses to the room; an oven is as
// hot as it is set to, or as was read in it, within its standard deviation.
type Warmth struct{ AirC, SdK float64 }

// How fast a held piece loses what it is above the air about it, 1/h: five records of
// boxes have 0.051, 0.071, 0.088, 0.134 and 0.226 (cooldown.csv and holding_2.csv).
const (
	boxRate, rateSd   = 0.10, 0.45
	ratePoints        = 60
	rateReach         = 3.0
	warmthPoints      = 9
	warmthReach       = 2.0
	heldErrorK        = 3 / 1.8 // the place of the probe
	coreRisesMinutes  = 60.0    // a core may still rise for so long (assumption)
	longestHeldRate   = 1e-9
	minutesAnHour     = 60.0
	neverHeldsMinutes = LongestAhead
)

// Cooling is what readings say of how fast a piece cools that is held.
type Cooling struct {
	rate, airC, weight []float64
}

// NewCooling weighs every rate by what was read. A reading counts against the highest one
// before it, on the cold side always, on the warm side as long as a core cannot still
// rise. What is colder than foretold is never set aside: a colder reading never makes a
// hold last longer.
func NewCooling(w Warmth, all []Held) *Cooling {
	c := &Cooling{}
	airs, airWeight := []float64{w.AirC}, []float64{1}
	if w.SdK > 0 {
		airs, airWeight = nil, nil
		for i := range warmthPoints {
			z := warmthReach * (2*float64(i)/(warmthPoints-1) - 1)
			airs, airWeight = append(airs, w.AirC+z*w.SdK), append(airWeight, math.Exp(-z*z/2))
		}
	}
	for i := range ratePoints {
		z := rateReach * (2*float64(i)/(ratePoints-1) - 1)
		k := boxRate * math.Exp(rateSd*z)
		for j, air := range airs {
			c.rate, c.airC = append(c.rate, k), append(c.airC, air)
			c.weight = append(c.weight, airWeight[j]*math.Exp(-z*z/2-held(k, air, all)))
		}
	}
	sum := 0.0
	for _, x := range c.weight {
		sum += x
	}
	for i := range c.weight {
		c.weight[i] /= sum
	}
	return c
}

// held is how badly a rate fits the readings of both places.
func held(k, airC float64, all []Held) float64 {
	cost := 0.0
	for _, outer := range []bool{false, true} {
		var top Held
		any := false
		for _, r := range all {
			if r.Outer != outer {
				continue
			}
			if any {
				foretold := airC + (top.C-airC)*math.Exp(-k*(r.Minute-top.Minute)/minutesAnHour)
				off := (math.Min(r.C, top.C) - foretold) / heldErrorK
				if off < 0 || outer || r.Minute > coreRisesMinutes {
					cost += huber(off)
				}
			}
			if !any || r.C > top.C {
				top, any = r, true
			}
		}
	}
	return cost
}

// Until is the minute up to which a piece that was at a temperature at a minute stays
// above a limit with a probability.
func (c *Cooling) Until(from Held, limitC, probability float64) float64 {
	if from.C <= limitC {
		return from.Minute
	}
	type end struct{ minute, weight float64 }
	ends := make([]end, len(c.rate))
	for i, k := range c.rate {
		ends[i] = end{from.Minute + neverHeldsMinutes, c.weight[i]}
		if air := c.airC[i]; air < limitC {
			ends[i].minute = math.Min(ends[i].minute, from.Minute+minutesAnHour*math.Log((from.C-air)/(limitC-air))/math.Max(k, longestHeldRate))
		}
	}
	sort.Slice(ends, func(i, j int) bool { return ends[i].minute < ends[j].minute })
	sum := 0.0
	for _, e := range ends {
		if sum += e.weight; sum > 1-probability {
			return e.minute
		}
	}
	return ends[len(ends)-1].minute
}

// Rate is the middle of the rates, 1/h.
func (c *Cooling) Rate() float64 {
	sum := 0.0
	for i, k := range c.rate { // in order of the rate
		if sum += c.weight[i]; sum >= 0.5 {
			return k
		}
	}
	return c.rate[len(c.rate)-1]
}
