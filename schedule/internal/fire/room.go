package fire

import "math"

// A zone takes pieces up to three quarters of its area, small discs up to 0.55, because round things leave gaps and a
// cook turns them (assumptions: they give five 11 cm patties on 0.40 of a 22 in grate and twelve on 0.85).
const (
	roomShare     = 0.75
	roomDiscShare = 0.55
)

// Footprint is what a piece covers. Disc marks small round pieces (patties, chops, thighs), Rack a rectangle (racks
// of ribs); anything else is an ellipse.
type Footprint struct {
	LengthM, WidthM float64
	Disc, Rack      bool
}

// CoverM2 is the grate that a piece covers, m2.
func CoverM2(f Footprint) float64 {
	area := f.LengthM * f.WidthM
	if f.Rack {
		return area
	}
	return area * math.Pi / 4
}

// UsableM2 is how much of a zone pieces may cover, m2.
func UsableM2(z Zone, disc bool) float64 {
	if disc {
		return roomDiscShare * z.AreaM2
	}
	return roomShare * z.AreaM2
}
