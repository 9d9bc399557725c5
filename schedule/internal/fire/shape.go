package fire

import (
	"math"
)

// Point is a place on the grate in metres from its centre; x to the right, y away from the cook.
type Point struct{ XM, YM float64 }

// Form is the kind of a plane figure.
type Form string

// The forms that zones and coals take. All are convex.
const (
	Disc      Form = "disc"
	Segment   Form = "segment" // part of a disc to one side of a straight cut
	Rectangle Form = "rectangle"
)

// Shape is a convex plane figure. A Disc has CentreM and RadiusM. A Segment is the part of the disc about the grate's
// centre with x >= CutM (or x <= CutM if Left). A Rectangle has CentreM, WidthM (along x) and DepthM.
type Shape struct {
	Form           Form
	Centre         Point
	RadiusM        float64
	CutM           float64
	Left           bool
	WidthM, DepthM float64
}

// depthCut is the cut's signed distance from the centre toward the middle of the segment.
func (s *Shape) depthCut() float64 {
	if s.Left {
		return -s.CutM
	}
	return s.CutM
}

// LongestChordM is the longest straight piece that lies within the figure.
func (s Shape) LongestChordM() float64 {
	switch s.Form {
	case Disc:
		return 2 * s.RadiusM
	case Segment:
		if d := s.depthCut(); d > 0 {
			return 2 * math.Sqrt(s.RadiusM*s.RadiusM-d*d)
		}
		return 2 * s.RadiusM
	}
	return math.Hypot(s.WidthM, s.DepthM)
}

// Contains says whether the disc of the given radius about p lies in the figure (radius 0: the point).
func (s *Shape) Contains(p Point, radiusM float64) bool {
	const touch = 1e-9
	x, y := p.XM-s.Centre.XM, p.YM-s.Centre.YM
	switch s.Form {
	case Disc:
		room := s.RadiusM + touch - radiusM
		return room >= 0 && x*x+y*y <= room*room
	case Segment:
		if s.Left {
			x = -x
		}
		room := s.RadiusM + touch - radiusM
		return x-radiusM >= s.depthCut()-touch && room >= 0 && x*x+y*y <= room*room
	}
	return math.Abs(x)+radiusM <= s.WidthM/2+touch && math.Abs(y)+radiusM <= s.DepthM/2+touch
}

// bounds is the smallest upright rectangle about the figure.
func (s Shape) bounds() (lo, hi Point) {
	w, d := s.WidthM/2, s.DepthM/2
	if s.Form != Rectangle {
		w, d = s.RadiusM, s.RadiusM
	}
	lo = Point{s.Centre.XM - w, s.Centre.YM - d}
	hi = Point{s.Centre.XM + w, s.Centre.YM + d}
	if s.Form == Segment {
		if s.Left {
			hi.XM = s.CutM
		} else {
			lo.XM = s.CutM
		}
		half := s.LongestChordM() / 2
		lo.YM, hi.YM = -half, half
	}
	return lo, hi
}

// segment is the part of a disc that holds the given share (0..1) of its area, at the left or the right.
func segment(radiusM, share float64, left bool) Shape {
	lo, hi := 0.0, math.Pi
	for range 60 { // half-angle t with t - sin t cos t = pi share, increasing in t
		t := (lo + hi) / 2
		if t-math.Sin(t)*math.Cos(t) < math.Pi*share {
			lo = t
		} else {
			hi = t
		}
	}
	cut := radiusM * math.Cos((lo+hi)/2)
	if left {
		cut = -cut
	}
	return Shape{Form: Segment, RadiusM: radiusM, CutM: cut, Left: left}
}

// side is the given share of a rectangle, at the left or the right.
func side(widthM, depthM, share float64, left bool) Shape {
	x := widthM * (1 - share) / 2
	if left {
		x = -x
	}
	return Shape{Form: Rectangle, Centre: Point{XM: x}, WidthM: widthM * share, DepthM: depthM}
}
