package heat

import (
	"fmt"
	"math"
)

// Body is a piece of meat as the model sees it.
type Body struct {
	ThicknessM, WidthM, LengthM float64 // m, in any order; 0.002 to 3 each
	RadiusScale                 float64 // 1; whole birds 1.165 (cavity and legs; fitted together with the water under skin); 0.5 to 2
	Water, Protein, Fat, Ash    float64 // mass shares; need not add up exactly
	WetFactor                   float64 // share of the surface that can be wet: 1 lean, 0.8 fat cap, 0.3 skin; 0 to 1
	SupplyFactor                float64 // share of the mass that can give water: 1, with bones about 0.8; 0 to 2
	StartC                      float64 // degC throughout, thawed; -30 to 60
}

const (
	// RefrigeratorC is the usual start temperature, 40 degF.
	RefrigeratorC = 4.4

	referenceConductivity = 0.45 // W/(m K), in the Biot number of the shape formula
	shapeSurfaceC         = 70   // surface temperature at which radiation enters that formula
)

// field is one number of a struct with the range in which it makes sense.
type field struct {
	name        string
	value       float64
	least, most float64
	unit        string
}

func check(fields []field) error {
	for _, f := range fields {
		if !(f.value >= f.least && f.value <= f.most) {
			return fmt.Errorf("%s is %g%s, want %g to %g%s", f.name, f.value, f.unit, f.least, f.most, f.unit)
		}
	}
	return nil
}

// Check says what is wrong with b: the field, its value and its range. A body
// that passes can be simulated without any of its values being changed.
func (b Body) Check() error {
	err := check([]field{
		{name: "thickness", value: b.ThicknessM, least: 0.002, most: 3, unit: " m"},
		{name: "width", value: b.WidthM, least: 0.002, most: 3, unit: " m"},
		{name: "length", value: b.LengthM, least: 0.002, most: 3, unit: " m"},
		{name: "radius scale", value: b.RadiusScale, least: 0.5, most: 2},
		{name: "water share", value: b.Water, least: 0, most: 1},
		{name: "protein share", value: b.Protein, least: 0, most: 1},
		{name: "fat share", value: b.Fat, least: 0, most: 1},
		{name: "ash share", value: b.Ash, least: 0, most: 1},
		{name: "wet factor", value: b.WetFactor, least: 0, most: 1},
		{name: "supply factor", value: b.SupplyFactor, least: 0, most: 2},
		{name: "start temperature", value: b.StartC, least: -30, most: 60, unit: " degC"},
	})
	if err != nil {
		return err
	}
	if sum := b.Water + b.Protein + b.Fat + b.Ash; sum < 0.9 || sum > 1.1 {
		return fmt.Errorf("shares of water, protein, fat and ash add up to %g, want 0.9 to 1.1", sum)
	}
	return nil
}

// clamp keeps v within its limits; a NaN becomes the fallback.
func clamp(v, least, most, fallback float64) float64 {
	if math.IsNaN(v) {
		return fallback
	}
	return math.Min(math.Max(v, least), most)
}

// sound gives b back, or panics with what is wrong with it. A body is made once, from
// a catalogue, and looked at there: one that is not sound here is a fault of the program.
func (b Body) sound() Body {
	if err := b.Check(); err != nil {
		panic("heat: a body that cannot be: " + err.Error())
	}
	return b
}

// sorted returns the three dimensions in m, smallest first.
func (b Body) sorted() (small, middle, large float64) {
	small, middle, large = b.ThicknessM, b.WidthM, b.LengthM
	if small > middle {
		small, middle = middle, small
	}
	if middle > large {
		middle, large = large, middle
	}
	if small > middle {
		small, middle = middle, small
	}
	return small, middle, large
}

// Radius returns half the smallest dimension in m, scaled.
func (b Body) Radius() float64 {
	small, _, _ := b.sorted()
	return small / 2 * b.RadiusScale
}

// Dimensionality returns E, the number of directions heat comes from: 1 for a
// wide slab, 2 for a long cylinder, 3 for a sphere, and values in between for
// real pieces under a total surface coefficient in W/(m2 K). It is the
// ellipsoid formula of Cleland and Earle (ASHRAE Refrigeration, chapter 20; from memory).
// Meat lies between that ellipsoid, which is 14 to 28 % faster than a sharp-edged
// brick, and the brick; the fitted surface coefficients belong to this formula.
func (b Body) Dimensionality(totalWM2K float64) float64 {
	small, middle, large := b.sorted()
	biot := math.Max(totalWM2K*small/2/referenceConductivity, 1e-3)
	side := func(ratio float64) float64 {
		return (1 + 2/biot) / (ratio*ratio + 2*ratio/biot)
	}
	return clamp(1+side(middle/small)+side(large/small), 1, 3, 1)
}
