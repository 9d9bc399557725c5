package fire

import (
	"math"
)

// The burn law: what the fire must give is what shell and flue lose,
//
//	W = lossWPerK (D / 22.5 in)^(2/3) (grate - air) weather pan,
//
// and the fuel is W over its heating value. lossWPerK is the law's one free constant: it makes a 22.5 in kettle at
// 250 F in 70 F calm air burn 10.6 briquettes an hour (common practice, no source). That lumps shell, flue and unburnt
// gas together. The exponent 2/3 is practice too, between 14 and 27 in.
const (
	referenceM       = 22.5 * inchM
	referencePerHour = 10.6
	referenceRiseK   = (250 - 70) / 1.8
	sizeExponent     = 2.0 / 3

	// The mean of two weighings, 25.6 g (2014) and 24.1 g (2015).
	briquetteKg = 0.0249
	// 7,000-9,000 Btu/lb on a hobby page (weak); the middle.
	briquetteJPerKg = 18.6e6
	// 6,500 kcal/kg (OLADE); other figures run from 23.3 (hobby page) to 29.5 MJ/kg (IPCC default).
	lumpJPerKg = 27.2e6

	lossWPerK = referencePerHour * briquetteKg * briquetteJPerKg / 3600 / referenceRiseK
	// A grate hardly above the air still has live coals in it.
	leastRiseK = 5
	// Above 450 F or with the lid off the law does not hold (common practice).
	lawMaxC = (450.0 - 32) / 1.8
)

// HeatW is the heat a lidded grill must be given to stay at a level, W.
func (g Grill) HeatW(levelC float64, w Weather) float64 {
	size := math.Pow(g.equivalentM()/referenceM, sizeExponent)
	heat := lossWPerK * size * max(levelC-w.AirC, leastRiseK) * w.factor()
	if g.deep() {
		heat *= deepForm
	}
	if g.WaterPan {
		heat *= waterPanFactor
	}
	return heat
}

// RateKgPerHour is the fuel burnt an hour, kg, in the middle of a range of a factor two either way. It is 0 for a
// grill of another kind.
func (g Grill) RateKgPerHour(levelC float64, w Weather) float64 {
	if !g.Charcoal() {
		return 0
	}
	return g.HeatW(levelC, w) * 3600 / g.jPerKg()
}

func (g Grill) jPerKg() float64 {
	if g.Fuel == Lump {
		return lumpJPerKg
	}
	return briquetteJPerKg
}

// A six-quart chimney takes 5-6 lb of briquettes or 2-4 lb of lump (consumer test as quoted, weak); the middles. They
// also give the bulk densities: about 440 and 240 kg/m3.
const (
	poundKg          = 0.45359237
	chimneyM3        = 6 * 0.000946353
	chimneyBriquette = 5.5 * poundKg
	chimneyLump      = 3 * poundKg
)

func (g Grill) chimneyKg() float64 {
	if g.Fuel == Lump {
		return chimneyLump
	}
	return chimneyBriquette
}

// ChimneyCoals is how many coals a full chimney holds; of lump so many briquettes as give
// the same heat.
func (g Grill) ChimneyCoals() int { return int(math.Round(g.chimneyKg() / g.pieceKg())) }

func (g Grill) bulkKgM3() float64 { return g.chimneyKg() / chimneyM3 }

// Amount is a quantity of fuel.
type Amount struct {
	MassKg       float64
	Count        int     // whole briquettes; 0 for lump, which is weighed
	ChimneyFills float64 // of a six-quart chimney
}

// amount rounds up to whole briquettes, so that a longer list never asks for less.
func (g Grill) amount(kg float64) Amount {
	a := Amount{MassKg: kg, ChimneyFills: kg / g.chimneyKg()}
	if g.Fuel != Lump {
		a.Count = int(math.Ceil(kg/briquetteKg - 1e-9))
	}
	return a
}

func ceilInt(x float64) int { return int(math.Ceil(x - 1e-9)) }
