package check

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
)

// outline is a piece as it lies on the grate in a phase.
type outline struct {
	lying
	path  string
	piece *schedule.Piece
	part  int // of a piece that is cut in half
	phase int
	shape fire.Footprint
	at    fire.Point
	turn  float64
}

// bends is how much of its length and width a piece counts with where it meets
// others or the edge. Meat bends, and a place found for an ellipse drawn with
// twelve corners is 3.5 % too small at each end.
const bends = 0.96

// edgePoints is in how many points an outline is looked at: half a centimetre
// apart on the longest brisket.
const edgePoints = 180

// same says whether two outlines are of one part of one piece.
func (o outline) same(p outline) bool { return o.piece == p.piece && o.part == p.part }

// edge is the outline on the grate.
func (o outline) edge() []fire.Point {
	l, w := o.shape.LengthM/2*bends, o.shape.WidthM/2*bends
	sin, cos := math.Sincos(o.turn)
	out := make([]fire.Point, edgePoints)
	for i := range out {
		y, x := math.Sincos(2 * math.Pi * float64(i) / edgePoints)
		if o.shape.Rack { // the same ray, out to the rectangle
			far := math.Max(math.Abs(x), math.Abs(y))
			x, y = x/far, y/far
		}
		x, y = x*l, y*w
		out[i] = fire.Point{XM: o.at.XM + x*cos - y*sin, YM: o.at.YM + x*sin + y*cos}
	}
	return out
}

// inside says whether the piece lies on the grate.
func (o outline) inside(grate fire.Shape) bool {
	for _, p := range o.edge() {
		if !grate.Contains(p, 0) {
			return false
		}
	}
	return true
}

// meets says whether the edge of the other, or its middle, lies within this one.
func (o outline) meets(other outline) bool {
	l, w := o.shape.LengthM/2*bends, o.shape.WidthM/2*bends
	sin, cos := math.Sincos(o.turn)
	for _, p := range append(other.edge(), other.at) {
		dx, dy := p.XM-o.at.XM, p.YM-o.at.YM
		x, y := (dx*cos+dy*sin)/l, (dy*cos-dx*sin)/w
		if o.shape.Rack && math.Max(math.Abs(x), math.Abs(y)) < 1 || !o.shape.Rack && x*x+y*y < 1 {
			return true
		}
	}
	return false
}
