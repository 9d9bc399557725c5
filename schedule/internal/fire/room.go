package fire

import "math"

// Fill says how pieces of a kind lie together.
type Fill string

// The kinds that are neither discs nor racks. A whole bird fills a zone as a shoulder does.
const (
	FillBlock Fill = ""     // shoulders, roasts, whole birds
	FillFlat  Fill = "flat" // halves and flattened birds, which may touch
	FillFoil  Fill = "foil" // soft parcels, which may overlap as racks do (assumption)
	FillThin  Fill = "thin" // wings, drumsticks, sausages
)

// shares is how much of a zone pieces of a kind cover where they lie easily, and at the most. What is between is
// tight: allowed, and said. Set on what cooks report of their grates (testdata/room.csv).
type shares struct{ easy, most float64 }

func sharesOf(f Footprint) shares {
	switch {
	case f.Rack || f.Fill == FillFoil:
		return shares{0.70, 0.95}
	case f.Disc: // at the most 0.62 where reported practice was first put at 0.55: a maker tells 13 patties on 22 in, a shop 20 on 26
		return shares{0.40, 0.62}
	case f.Fill == FillFlat:
		return shares{0.58, 0.72}
	case f.Fill == FillThin:
		return shares{0.45, 0.60}
	}
	return shares{0.56, 0.68}
}

// alone is for one piece that has a zone for itself.
var alone = shares{0.60, 0.90}

// standingShare is what a rack that stands in an upright rack covers of what it covers flat.
const standingShare = 0.40

// Footprint is what a piece covers. Disc marks small round pieces (patties, chops, thighs), Rack a rectangle (racks
// of ribs); anything else is an ellipse. Standing is a rack on its edge.
type Footprint struct {
	LengthM, WidthM float64
	Disc, Rack      bool
	Fill            Fill
	Standing        bool
}

// CoverM2 is the grate that a piece covers, m2.
func CoverM2(f Footprint) float64 {
	area := f.LengthM * f.WidthM
	switch {
	case f.Standing:
		return area * standingShare
	case f.Rack:
		return area
	}
	return area * math.Pi / 4
}

// Needs is how much of a zone pieces need, m2: to lie easily, and at the least.
type Needs struct{ EasyM2, LeastM2 float64 }

// NeedsOf is what so many pieces need beside others: what pieces of several kinds need adds up.
func NeedsOf(f Footprint, n int) Needs {
	s, cover := sharesOf(f), CoverM2(f)*float64(n)
	return Needs{EasyM2: cover / s.easy, LeastM2: cover / s.most}
}

// NeedsAlone is what a piece needs that has the zone for itself.
func NeedsAlone(f Footprint) Needs {
	beside := NeedsOf(f, 1)
	return Needs{EasyM2: min(beside.EasyM2, CoverM2(f)/alone.easy), LeastM2: min(beside.LeastM2, CoverM2(f)/alone.most)}
}

// Plus adds what two loads need.
func (n Needs) Plus(o Needs) Needs { return Needs{n.EasyM2 + o.EasyM2, n.LeastM2 + o.LeastM2} }

// Times is what a load needs that covers so much less or more.
func (n Needs) Times(share float64) Needs { return Needs{n.EasyM2 * share, n.LeastM2 * share} }

// Room says how a load lies.
type Room int

// How a load lies, worst first.
const (
	TooMuch Room = iota
	Tight
	Easy
)

// In says how what needs so much lies on an area, m2.
func (n Needs) In(areaM2 float64) Room {
	const touch = 1e-9
	switch {
	case n.EasyM2 <= areaM2+touch:
		return Easy
	case n.LeastM2 <= areaM2+touch:
		return Tight
	}
	return TooMuch
}

// UsableM2 is how much of a zone pieces may cover at the most, m2: shoulders and roasts, or small discs.
func UsableM2(z Zone, disc bool) float64 { return sharesOf(Footprint{Disc: disc}).most * z.RoomM2() }
