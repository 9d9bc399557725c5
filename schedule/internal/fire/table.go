package fire

import (
	"cmp"
	"math"
	"slices"
)

// table is the positions within a figure, column by column, and what is known of
// them: what fits where is the same for every order in which places are tried.
type table struct {
	shape  Shape
	middle Point
	points []Point
	row    []int32 // of each position, from 0
	rows   int
	known  []*fit
}

// fit says where a piece in one turn lies within the figure.
type fit struct {
	piece Footprint
	turn  float64
	unit  body
	at    []answer // of each position
}

type answer byte

const (
	unasked answer = iota
	inside
	outside
)

func newTable(s Shape, stepM float64) *table {
	lo, hi := s.bounds()
	t := &table{shape: s, middle: Point{(lo.XM + hi.XM) / 2, (lo.YM + hi.YM) / 2}}
	nx, ny := int((hi.XM-lo.XM)/2/stepM), int((hi.YM-lo.YM)/2/stepM)
	t.rows = 2*ny + 1
	most := (2*nx + 1) * t.rows
	t.points, t.row = make([]Point, 0, most), make([]int32, 0, most)
	for ix := -nx; ix <= nx; ix++ {
		for iy := -ny; iy <= ny; iy++ {
			p := Point{t.middle.XM + float64(ix)*stepM, t.middle.YM + float64(iy)*stepM}
			if s.Contains(p, 0) {
				t.points, t.row = append(t.points, p), append(t.row, int32(iy+ny))
			}
		}
	}
	return t
}

// inOrder are the positions in an order, ties as they come.
func (t *table) inOrder(o order) []int32 {
	if o.rows {
		return t.byRows()
	}
	list := make([]int32, len(t.points))
	for i := range list {
		list[i] = int32(i)
	}
	if o.rank == nil {
		return list
	}
	type key struct{ first, second float64 }
	keys := make([]key, len(t.points))
	for i, p := range t.points {
		keys[i].first, keys[i].second = o.rank(t.middle, p)
	}
	slices.SortFunc(list, func(a, b int32) int {
		return cmp.Or(cmp.Compare(keys[a].first, keys[b].first), cmp.Compare(keys[a].second, keys[b].second), cmp.Compare(a, b))
	})
	return list
}

// byRows counts how many positions lie in the rows before.
func (t *table) byRows() []int32 {
	next := make([]int, t.rows+1)
	for _, r := range t.row {
		next[r+1]++
	}
	for r := range t.rows {
		next[r+1] += next[r]
	}
	list := make([]int32, len(t.points))
	for i, r := range t.row {
		list[next[r]] = int32(i)
		next[r]++
	}
	return list
}

// fitOf is where a piece in a turn fits, so far as that was asked.
func (t *table) fitOf(piece Footprint, turn float64) *fit {
	for _, f := range t.known {
		if f.piece == piece && f.turn == turn {
			return f
		}
	}
	f := &fit{piece: piece, turn: turn, unit: newBody(piece, Place{TurnRad: turn, Placed: true}), at: make([]answer, len(t.points))}
	t.known = append(t.known, f)
	return f
}

func (t *table) fits(f *fit, i int32) bool {
	if f.at[i] == unasked {
		f.at[i] = outside
		if f.unit.inside(&t.shape, t.points[i]) {
			f.at[i] = inside
		}
	}
	return f.at[i] == inside
}

// homeless is how many of the pieces lie nowhere within the figure, so that no order helps them.
func (t *table) homeless(pieces []Footprint) int {
	n := 0
	for _, p := range pieces {
		if !t.hasPlace(p) {
			n++
		}
	}
	return n
}

func (t *table) hasPlace(p Footprint) bool {
	if max(p.LengthM, p.WidthM) > t.shape.LongestChordM() {
		return false
	}
	for _, turn := range turnsOf(p, turnings[0]) {
		f := t.fitOf(p, turn)
		for i := range t.points {
			if t.fits(f, int32(i)) {
				return true
			}
		}
	}
	return false
}

// away is how far two points are apart, m.
func away(a, b Point) float64 { return math.Hypot(a.XM-b.XM, a.YM-b.YM) }
