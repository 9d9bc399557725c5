package heat

import "math"

// Outdoors is the weather as far as it acts on the meat on a covered grill.
// Wind and rain act on the fuel, not here: the grate is held at its level.
type Outdoors struct {
	AirC             float64 // degC; -40 to 55
	RelativeHumidity float64 // 0 to 1
	AltitudeM        float64 // m; -500 to 6000
	WaterPan         bool    // a full, hot water pan under the meat
}

// CalmDay is the day for which the model was fitted.
func CalmDay() Outdoors {
	return Outdoors{AirC: calmC, RelativeHumidity: calmHumidity}
}

const (
	calmC        = 18  // degC
	calmHumidity = 0.5 // assumption

	pitConvection = 7.8  // W/(m2 K) at 100 K over the air, fitted
	pitExponent   = 0.6  // assumption: draught grows with the fire; the fit is flat from 0.55 to 0.7
	lidDrop       = 0.05 // share of (grate - outside air) by which the lid is cooler, assumption
	waterPanPa    = 9000 // assumption; published pits with pans 8 to 12 kPa
	leastDraughtK = 10   // below that a fire has no draught to speak of
	leastCookerPa = 500
)

// Grate is a covered grill or smoker with the meat away from the coals, the air
// at grate height at a level in degC.
//
// The weather acts in three ways. Outside air cools the lid, whose temperature
// radiates on the meat; the coefficient of convection always takes the 18 degC
// at which it was fitted, because with the real air in it a colder day would
// cook faster, which is wrong. Outside vapour adds its difference from the calm
// day (18 degC, 50 %: 1.0 kPa) to the vapour pressure in the cooker, 4 kPa, or
// 9 kPa with a water pan: an assumption, as are those two. Altitude sets the air
// pressure and so the boiling point.
func Grate(levelC float64, o Outdoors) Surroundings {
	airC := clamp(o.AirC, -40, 55, calmC)
	s := Surroundings{
		AirC:           levelC,
		WallC:          levelC - lidDrop*math.Max(levelC-airC, 0),
		ConvectionWM2K: pitConvection * math.Pow(math.Max(levelC-calmC, leastDraughtK)/100, pitExponent),
		Emissivity:     cookerEmissivity,
		VapourPa:       cookerVapourPa,
		Cover:          1,
		PressurePa:     PressurePa(o.AltitudeM),
	}
	if o.WaterPan {
		s.VapourPa = waterPanPa
	}
	humidity := clamp(o.RelativeHumidity, 0, 1, calmHumidity)
	shift := humidity*SaturationPa(airC) - calmHumidity*SaturationPa(calmC)
	s.VapourPa = math.Max(s.VapourPa+shift, leastCookerPa)
	return s
}
