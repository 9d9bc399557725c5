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
	t := newTable(z.Shape, pitch(pieces))
	tried := turnings
	if !slices.ContainsFunc(pieces, func(f Footprint) bool { return !f.Disc }) {
		tried = turnings[:1] // a disc is the same however it is turned
	}
	for _, o := range orders {
		points := t.inOrder(o)
		for _, turns := range tried {
			places, n := t.arrangeBy(taken, pieces, points, turns)
			if n > most {
				best, most = places, n
			}
			if n == len(pieces) || hopeless || n == len(pieces)-t.homeless(pieces) {
				return best, n == len(pieces)
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

// arrangeBy places the largest piece first, each at the first position that is free.
func (t *table) arrangeBy(taken []Spot, pieces []Footprint, points []int32, turns []float64) ([]Place, int) {
	bodies := make([]body, 0, len(taken)+len(pieces))
	for _, s := range taken {
		if s.Place.Placed {
			bodies = append(bodies, newBody(s.Piece, s.Place))
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
			look = search{piece: pieces[i], turns: turnsOf(pieces[i], turns)}
		}
		if b, ok := look.firstFree(t, points, bodies); ok {
			bodies, places[i] = append(bodies, b), b.place
			n++
		}
	}
	return places, n
}

// turnsOf leaves a disc as it is.
func turnsOf(f Footprint, turns []float64) []float64 {
	if f.Disc {
		return turns[:1]
	}
	return turns
}

// search looks for places for like pieces, one after another: a place that was not
// free for one is not free for the next.
type search struct {
	piece       Footprint
	turns       []float64
	turn, point int // so many are done with
}

func (l *search) firstFree(t *table, points []int32, bodies []body) (body, bool) {
	if max(l.piece.LengthM, l.piece.WidthM) > t.shape.LongestChordM() {
		return body{}, false
	}
	for ; l.turn < len(l.turns); l.turn, l.point = l.turn+1, 0 {
		fit := t.fitOf(l.piece, l.turns[l.turn])
		for l.point < len(points) {
			i := points[l.point]
			l.point++
			if !t.fits(fit, i) {
				continue
			}
			if !fit.unit.overlapsAny(bodies, t.points[i]) {
				return fit.unit.at(t.points[i]), true
			}
		}
	}
	return body{}, false
}
