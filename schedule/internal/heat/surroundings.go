package heat

import (
	"math"
)

// Surroundings is all that a body feels of the world.
type Surroundings struct {
	AirC           float64 // degC beside the meat; -40 to 600
	WallC          float64 // degC of what radiates on it; -40 to 600
	ConvectionWM2K float64 // W/(m2 K); 0 to 400
	Emissivity     float64 // of meat or wrapping; 0 to 1
	VapourPa       float64 // vapour pressure of the air; 0 to 50000, held at saturation of the air
	Cover          float64 // share of the evaporation a wrapping lets through; 0 to 1
	CoverM2KW      float64 // resistance of the wrapping, m2 K/W; 0 to 1
	PressurePa     float64 // of the atmosphere; 0 means sea level, else 45000 to 108000
}

const (
	ovenConvection   = 8.5  // W/(m2 K), fitted to government charts; with radiation about 18.5
	cookerEmissivity = 0.85 // assumption: meat and dull metal
	cookerVapourPa   = 4000 // assumption: moist cooking air

	restEmissivity, tentEmissivity = 0.9, 0.5
	restConvection, tentConvection = 7, 5 // W/(m2 K), natural convection (from memory)
	roomVapourPa                   = 1200 // half-dry room at 21 degC

	foilEmissivity = 0.25 // clean foil 0.1, a greasy smoked parcel more; chosen on a wrapped demonstration
	paperCover     = 0.35 // guess, three logs
	wrapM2KW       = 0.01 // still air under paper, and under foil at rest, m2 K/W
	// foilM2KW is about 3 mm of still air under the foil of a piece that cooks: between
	// what a demonstration wants alone (0.05) and logs after the wrap (0.15 or more).
	foilM2KW = 0.085
)

// Oven is a domestic oven without a fan, air and walls at one temperature in degC.
func Oven(airC float64) Surroundings {
	return Surroundings{
		AirC: airC, WallC: airC, ConvectionWM2K: ovenConvection, Emissivity: cookerEmissivity,
		VapourPa: cookerVapourPa, Cover: 1, PressurePa: seaLevelPa,
	}
}

// InFoil is s for a piece that cooks wrapped in foil: no evaporation, little radiation,
// and still air under it.
func (s Surroundings) InFoil() Surroundings {
	s.Emissivity, s.Cover, s.CoverM2KW = foilEmissivity, 0, foilM2KW
	return s
}

// atRest is s for a piece that is held in its foil, which lies closer then: nothing
// may make a hold look longer than it is.
func (s Surroundings) atRest() Surroundings {
	s = s.InFoil()
	s.CoverM2KW = wrapM2KW
	return s
}

// InPaper is s for a piece wrapped in butcher paper. How much vapour paper lets
// through is a guess.
func (s Surroundings) InPaper() Surroundings {
	s.Cover, s.CoverM2KW = paperCover, wrapM2KW
	return s
}

// AtAltitude is s under the air pressure of an altitude in m.
func (s Surroundings) AtAltitude(altitudeM float64) Surroundings {
	s.PressurePa = PressurePa(altitudeM)
	return s
}

// Counter is rest in a room, bare, at a temperature in degC.
func Counter(roomC float64) Surroundings {
	return Surroundings{
		AirC: roomC, WallC: roomC, ConvectionWM2K: restConvection, Emissivity: restEmissivity,
		VapourPa: roomVapourPa, Cover: 1, PressurePa: seaLevelPa,
	}
}

// Tented is rest in a room under loose foil, at a temperature in degC.
func Tented(roomC float64) Surroundings {
	s := Counter(roomC)
	s.ConvectionWM2K, s.Emissivity = tentConvection, tentEmissivity
	return s
}

// Coefficients of an insulated box in W/(m2 K), from its outside to the wrapped
// piece. Records of boxed pieces lie between good and poor.
const (
	BoxVeryGoodWM2K = 2.0
	BoxGoodWM2K     = 3.0
	BoxWM2K         = 4.0 // default
	BoxPoorWM2K     = 5.0
)

// Boxed is a wrapped piece in an insulated box whose outside has a temperature
// in degC; the coefficient is one of the Box constants.
func Boxed(outsideC, coefficientWM2K float64) Surroundings {
	return Surroundings{
		AirC: outsideC, WallC: outsideC, ConvectionWM2K: coefficientWM2K,
		VapourPa: roomVapourPa, PressurePa: seaLevelPa,
	}
}

// WarmOven is a wrapped piece in an oven at a temperature in degC.
func WarmOven(airC float64) Surroundings { return Oven(airC).atRest() }

func (s Surroundings) bounded() Surroundings {
	s.AirC = clamp(s.AirC, -40, 600, 20)
	s.WallC = clamp(s.WallC, -40, 600, s.AirC)
	s.ConvectionWM2K = clamp(s.ConvectionWM2K, 0, 400, ovenConvection)
	s.Emissivity = clamp(s.Emissivity, 0, 1, cookerEmissivity)
	s.VapourPa = clamp(s.VapourPa, 0, math.Min(50000, SaturationPa(s.AirC)), cookerVapourPa)
	s.Cover = clamp(s.Cover, 0, 1, 1)
	s.CoverM2KW = clamp(s.CoverM2KW, 0, 1, 0)
	if s.PressurePa == 0 {
		s.PressurePa = seaLevelPa
	}
	s.PressurePa = clamp(s.PressurePa, 45000, 108000, seaLevelPa)
	return s
}

const stefanBoltzmann = 5.670374e-8 // W/(m2 K4)

// shapeWM2K is the total coefficient that enters the shape formula.
func (s Surroundings) shapeWM2K() float64 {
	mean := (s.AirC+shapeSurfaceC)/2 + kelvinOffset
	return s.ConvectionWM2K + 4*s.Emissivity*stefanBoltzmann*math.Pow(mean, 3)
}
