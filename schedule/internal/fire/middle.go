package fire

import "math"

// waysToward are the shares of the way to the middle that are tried.
var waysToward = []float64{1, 0.75, 0.5, 0.25}

// Toward is how far what lies in a zone can be moved as one toward its middle: pieces that are found place after place,
// from an edge on, then lie where a cook would put them. None of them leaves the zone.
func Toward(z Zone, spots []Spot) Point {
	bodies := make([]body, 0, len(spots))
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, s := range spots {
		if !s.Place.Placed {
			continue
		}
		b := newBody(s.Piece, s.Place)
		for _, q := range b.outline {
			lo = Point{math.Min(lo.XM, q.XM), math.Min(lo.YM, q.YM)}
			hi = Point{math.Max(hi.XM, q.XM), math.Max(hi.YM, q.YM)}
		}
		bodies = append(bodies, b)
	}
	if len(bodies) == 0 {
		return Point{}
	}
	from, to := z.Shape.bounds()
	way := Point{(from.XM + to.XM - lo.XM - hi.XM) / 2, (from.YM + to.YM - lo.YM - hi.YM) / 2}
	for _, share := range waysToward {
		by := Point{way.XM * share, way.YM * share}
		if stay(bodies, &z.Shape, by) {
			return by
		}
	}
	return Point{}
}

// stay says whether bodies are within a figure when they are moved.
func stay(bodies []body, s *Shape, by Point) bool {
	for i := range bodies {
		b := &bodies[i]
		if !b.inside(s, Point{b.place.At.XM + by.XM, b.place.At.YM + by.YM}) {
			return false
		}
	}
	return true
}
