package safety

// The air in a smoker or covered grill, 225-300 F (USDA FSIS, Smoking Meat and
// Poultry), and the lowest oven setting for raw meat and poultry, 325 F (USDA FSIS,
// general roasting advice), in degC.
const (
	SmokerLowC  = (225.0 - 32) * 5 / 9
	SmokerHighC = (300.0 - 32) * 5 / 9
	OvenLowC    = (325.0 - 32) * 5 / 9
)
