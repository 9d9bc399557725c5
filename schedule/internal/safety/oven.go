package safety

import "example.com/cookday/schedule/unit"

// OvenKind is an oven as the Food Code's roast table tells them apart.
type OvenKind string

// The ovens. A covered grill is closest to StillDry.
const (
	StillDry   OvenKind = "still-dry"
	Convection OvenKind = "convection"
	Humid      OvenKind = "humid" // over 90 pct relative humidity for at least an hour
)

// OvenMinimum is the least oven temperature at which a whole meat roast may be cooked
// by the roast table (below 145 F, held for the table's time).
type OvenMinimum struct {
	OvenC  float64 // degC; 0: any (the table prints 250 F or less)
	Source string
}

// roastOvenSplitLb divides the table's two weight classes.
const roastOvenSplitLb = 10.0

// RoastOvenMinimum is the Food Code's table. An unknown oven counts as StillDry. The
// charts for households print no such table; FSIS asks for 325 F in an oven, and for
// 225 to 300 F in a smoker or covered grill (SmokerLowC, SmokerHighC).
func RoastOvenMinimum(massKg float64, oven OvenKind) OvenMinimum {
	m := OvenMinimum{Source: "fda_3_401_11B"}
	light := unit.Mass(massKg).Pounds() < roastOvenSplitLb-tableRounding
	switch {
	case oven == Humid:
	case !light:
		m.OvenC = celsius(250)
	case oven == Convection:
		m.OvenC = celsius(325)
	default:
		m.OvenC = celsius(350)
	}
	return m
}

// The air in a smoker or covered grill, 225-300 F (USDA FSIS, Smoking Meat and
// Poultry), and the lowest oven setting for raw meat and poultry, 325 F (USDA FSIS,
// general roasting advice), in degC.
const (
	SmokerLowC  = (225.0 - 32) * 5 / 9
	SmokerHighC = (300.0 - 32) * 5 / 9
	OvenLowC    = (325.0 - 32) * 5 / 9
)
