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
	tried := turnings
	if !slices.ContainsFunc(pieces, func(f Footprint) bool { return !f.Disc }) {
		tried = turnings[:1] // a disc is the same however it is turned
	}
	for _, order := range orders {
		points := grid(z.Shape, pitch(pieces), order)
		for _, turns := range tried {
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

// order is the order in which positions are tried.
type order struct {
	rows bool    // as they come: row by row, else column by column
	rank ranking // lower first; nil for as they come
}

// ranking gives the two figures by which positions are ordered.
type ranking func(middle, p Point) (first, second float64)

// orders: row by row, column by column, from the edge inward, from the middle outward.
var orders = []order{
	{rows: true},
	{},
	{rank: func(m, p Point) (float64, float64) { return -away(m, p), math.Atan2(p.YM-m.YM, p.XM-m.XM) }},
	{rank: func(m, p Point) (float64, float64) { return away(m, p), math.Atan2(p.YM-m.YM, p.XM-m.XM) }},
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
	var look search
	for _, i := range bySize {
		if look.turns == nil || look.piece != pieces[i] {
			look = search{piece: pieces[i], turns: turns}
			if look.piece.Disc {
				look.turns = turns[:1]
			}
		}
		if b, ok := look.firstFree(s, points, bodies); ok {
			bodies, places[i] = append(bodies, b), b.place
			n++
		}
	}
	return places, n
}

// search looks for places for like pieces, one after another: a place that was not
// free for one is not free for the next.
type search struct {
	piece Footprint
	turns []float64
	turn  int // turns and points that are done with
	point int
	unit  body // the piece in this turn
}

func (l *search) firstFree(s Shape, points []Point, bodies []body) (body, bool) {
	if max(l.piece.LengthM, l.piece.WidthM) > s.LongestChordM() {
		return body{}, false
	}
	for ; l.turn < len(l.turns); l.turn, l.point = l.turn+1, 0 {
		if l.point == 0 {
			l.unit = newBody(l.piece, Place{TurnRad: l.turns[l.turn], Placed: true})
		}
		for l.point < len(points) {
			b := l.unit.at(points[l.point])
			l.point++
			if b.inside(s) && !b.overlapsAny(bodies) {
				b.outline = b.points()
				return b, true
			}
		}
	}
	return body{}, false
}

// grid lists the positions within a figure in an order.
func grid(s Shape, stepM float64, o order) []Point {
	lo, hi := s.bounds()
	middle := Point{(lo.XM + hi.XM) / 2, (lo.YM + hi.YM) / 2}
	nx, ny := int((hi.XM-lo.XM)/2/stepM), int((hi.YM-lo.YM)/2/stepM)
	points := make([]Point, 0, (2*nx+1)*(2*ny+1))
	add := func(ix, iy int) {
		p := Point{middle.XM + float64(ix)*stepM, middle.YM + float64(iy)*stepM}
		if s.Contains(p, 0) {
			points = append(points, p)
		}
	}
	if o.rows {
		for iy := -ny; iy <= ny; iy++ {
			for ix := -nx; ix <= nx; ix++ {
				add(ix, iy)
			}
		}
		return points
	}
	for ix := -nx; ix <= nx; ix++ {
		for iy := -ny; iy <= ny; iy++ {
			add(ix, iy)
		}
	}
	if o.rank != nil {
		sortBy(points, middle, o.rank)
	}
	return points
}

func sortBy(points []Point, middle Point, rank ranking) {
	type ranked struct {
		at            Point
		first, second float64
	}
	list := make([]ranked, len(points))
	for i, p := range points {
		first, second := rank(middle, p)
		list[i] = ranked{p, first, second}
	}
	slices.SortStableFunc(list, func(a, b ranked) int {
		return cmp.Or(cmp.Compare(a.first, b.first), cmp.Compare(a.second, b.second))
	})
	for i, r := range list {
		points[i] = r.at
	}
}
