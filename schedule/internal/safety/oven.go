package safety

// The air in a smoker or covered grill, 225-300 F (USDA FSIS, Smoking Meat and
// Poultry), and the lowest oven setting for raw meat and poultry, 325 F (USDA FSIS,
// general roasting advice), in degC.
const (
	SmokerLowC  = (225.0 - 32) * 5 / 9
	SmokerHighC = (300.0 - 32) * 5 / 9
	OvenLowC    = (325.0 - 32) * 5 / 9
	// OvenWholeC is the coolest oven for a whole joint from the hot grill that is below its minimum, 250 F (judgment).
	OvenWholeC = (250.0 - 32) * 5 / 9
)

// RawOvenC is the coolest oven for meat from the hot grill that is below its minimum, degC: 325 F for what may be dangerous inside,
// 250 F for another joint.
func RawOvenC(c Category, p Prep) float64 {
	if SurfaceInside(c, p) {
		return OvenLowC
	}
	return OvenWholeC
}
