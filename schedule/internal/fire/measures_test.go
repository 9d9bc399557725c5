package fire

import (
	"math"
)

// LongestChordM is the longest piece that lies straight in the zone.
func (z Zone) LongestChordM() float64 { return z.Shape.LongestChordM() }

// AreaM2 is the area of the figure.
func (s Shape) AreaM2() float64 {
	switch s.Form {
	case Disc:
		return math.Pi * s.RadiusM * s.RadiusM
	case Segment:
		half := math.Acos(s.depthCut() / s.RadiusM)
		return s.RadiusM * s.RadiusM * (half - math.Sin(half)*math.Cos(half))
	}
	return s.WidthM * s.DepthM
}

// RatePerHour is the same in briquettes an hour; for lump it is the number of briquettes that give the same heat.
func (g Grill) RatePerHour(levelC float64, w Weather) float64 {
	if g.Kind == OtherKind {
		return 0
	}
	return g.HeatW(levelC, w) * 3600 / briquetteJPerKg / briquetteKg
}
