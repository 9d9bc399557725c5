package heat

import "math"

const (
	seaLevelPa   = 101325
	kelvinOffset = 273.15

	// Antoine constants of water for 1 to 100 degC, mmHg (from memory). Against
	// the ASHRAE tables the error is under 0.6 % from 10 to 100 degC.
	antoineA, antoineB, antoineC = 8.07131, 1730.63, 233.426
	paPerMMHg                    = 133.322
)

// SaturationPa returns the vapour pressure in Pa of water at a temperature in
// degC by the Antoine equation, meant for 0 to 110 degC and held outside
// -60 to 220 degC.
func SaturationPa(tempC float64) float64 {
	p, _ := saturation(tempC)
	return p
}

// saturation also returns the slope in Pa/K.
func saturation(tempC float64) (pressurePa, slopePaK float64) {
	t := antoineC + min(max(tempC, -60), 220)
	p := paPerMMHg * math.Exp(math.Ln10*(antoineA-antoineB/t))
	return p, p * math.Ln10 * antoineB / (t * t)
}

// saturatedC is the inverse of SaturationPa: the dew point in degC of a vapour
// pressure in Pa.
func saturatedC(pressurePa float64) float64 {
	return antoineB/(antoineA-math.Log10(pressurePa/paPerMMHg)) - antoineC
}

// latentJKg returns the heat of evaporation of water, J/kg, good to about 1 %
// from 0 to 120 degC (from memory).
func latentJKg(tempC float64) float64 { return latentAtZero - latentSlope*tempC }

const latentAtZero, latentSlope = 2.501e6, 2361

// PressurePa returns the pressure in Pa of the standard atmosphere at an
// altitude in m, held between -500 and 6000 m.
func PressurePa(altitudeM float64) float64 {
	z := clamp(altitudeM, -500, 6000, 0)
	return seaLevelPa * math.Pow(1-2.2558e-5*z, 5.2559)
}

// BoilingC returns the boiling point of water in degC at an altitude in m.
func BoilingC(altitudeM float64) float64 { return saturatedC(PressurePa(altitudeM)) }
