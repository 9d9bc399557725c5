package fire

import (
	"cmp"
	"math"
	"slices"
)

// Place is where a piece lies: its middle, and its turn from lying along x. Placed is false where none was found.
type Place struct {
	At      Point
	TurnRad float64
	Placed  bool
}

// Spot is a piece in its place.
type Spot struct {
	Piece Footprint
	Place Place
}

// The search is a picture's, not a proof: a grid of positions, a few turns, four orders. Where it fails the grate is
// tight, not impossible, because meat bends.
const (
	gridShare    = 0.12 // of the smallest piece's width
	gridLeastM   = 0.01
	ellipseSides = 12
)

// pitch is the distance between positions tried: a centimetre for patties, more
// for large pieces, whose place need not be as fine.
func pitch(pieces []Footprint) float64 {
	least := math.Inf(1)
	for _, f := range pieces {
		least = min(least, f.LengthM, f.WidthM)
	}
	if math.IsInf(least, 1) {
		return gridLeastM
	}
	return max(gridLeastM, gridShare*least)
}

// Arrange looks for places in the zone's true figure beside what already lies there; ok is false if a piece found none
// or is longer than the zone's longest chord. The same input always gives the same places, in the order of pieces.
func Arrange(z Zone, taken []Spot, pieces []Footprint) (places []Place, ok bool) {
	best, most := make([]Place, len(pieces)), -1
	hopeless := covered(taken, pieces) > z.AreaM2 // one try, for the picture
	for _, order := range orders {
		points := grid(z.Shape, pitch(pieces), order)
		for _, turns := range turnings {
			places, n := arrangeBy(z.Shape, taken, pieces, points, turns)
			if n == len(pieces) {
				return places, true
			}
			if n > most {
				best, most = places, n
			}
			if hopeless {
				return best, false
			}
		}
	}
	return best, false
}

func covered(taken []Spot, pieces []Footprint) float64 {
	sum := 0.0
	for _, t := range taken {
		sum += CoverM2(t.Piece)
	}
	for _, f := range pieces {
		sum += CoverM2(f)
	}
	return sum
}

// turnings are the turns tried for a long piece: across first, or away from the cook first.
var turnings = [][]float64{
	{0, math.Pi / 2, math.Pi / 4, 3 * math.Pi / 4},
	{math.Pi / 2, 0, math.Pi / 4, 3 * math.Pi / 4},
}

// ranking orders positions, lower first.
type ranking func(middle, p Point) (first, second float64)

// orders rank positions: row by row, column by column, from the edge inward, from the middle outward.
var orders = []ranking{
	func(_, p Point) (float64, float64) { return p.YM, p.XM },
	func(_, p Point) (float64, float64) { return p.XM, p.YM },
	func(m, p Point) (float64, float64) { return -away(m, p), math.Atan2(p.YM-m.YM, p.XM-m.XM) },
	func(m, p Point) (float64, float64) { return away(m, p), math.Atan2(p.YM-m.YM, p.XM-m.XM) },
}

func away(a, b Point) float64 { return math.Hypot(a.XM-b.XM, a.YM-b.YM) }

// arrangeBy places the largest piece first, each at the first position that is free.
func arrangeBy(s Shape, taken []Spot, pieces []Footprint, points []Point, turns []float64) ([]Place, int) {
	bodies := make([]body, 0, len(taken)+len(pieces))
	for _, t := range taken {
		if t.Place.Placed {
			bodies = append(bodies, newBody(t.Piece, t.Place))
		}
	}
	bySize := make([]int, len(pieces))
	for i := range bySize {
		bySize[i] = i
	}
	slices.SortStableFunc(bySize, func(a, b int) int { return cmp.Compare(CoverM2(pieces[b]), CoverM2(pieces[a])) })
	places, n := make([]Place, len(pieces)), 0
	for _, i := range bySize {
		if b, ok := firstFree(s, pieces[i], points, turns, bodies); ok {
			bodies, places[i] = append(bodies, b), b.place
			n++
		}
	}
	return places, n
}

func firstFree(s Shape, piece Footprint, points []Point, turns []float64, bodies []body) (body, bool) {
	if piece.Disc {
		turns = turns[:1]
	}
	if max(piece.LengthM, piece.WidthM) > s.LongestChordM() {
		return body{}, false
	}
	for _, turn := range turns {
		unit := newBody(piece, Place{TurnRad: turn, Placed: true})
		for _, p := range points {
			b := unit.at(p)
			if b.inside(s) && !b.overlapsAny(bodies) {
				b.outline = b.points()
				return b, true
			}
		}
	}
	return body{}, false
}

// grid lists the positions within a figure, ranked.
func grid(s Shape, stepM float64, order ranking) []Point {
	type ranked struct {
		at            Point
		first, second float64
	}
	lo, hi := s.bounds()
	middle := Point{(lo.XM + hi.XM) / 2, (lo.YM + hi.YM) / 2}
	var list []ranked
	nx, ny := int((hi.XM-lo.XM)/2/stepM), int((hi.YM-lo.YM)/2/stepM)
	for ix := -nx; ix <= nx; ix++ {
		for iy := -ny; iy <= ny; iy++ {
			p := Point{middle.XM + float64(ix)*stepM, middle.YM + float64(iy)*stepM}
			if s.Contains(p, 0) {
				first, second := order(middle, p)
				list = append(list, ranked{p, first, second})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(a.first, b.first), cmp.Compare(a.second, b.second))
	})
	points := make([]Point, len(list))
	for i, r := range list {
		points[i] = r.at
	}
	return points
}
