package fire

import "math"

// body is a piece in a place: a disc, or a convex outline about its middle.
type body struct {
	place   Place
	radiusM float64 // of the circle about it
	innerM  float64 // of a circle within it
	disc    bool
	about   []Point // outline relative to the middle
	outline []Point // outline on the grate
}

func newBody(f Footprint, p Place) body {
	b := body{place: p, disc: f.Disc, radiusM: max(f.LengthM, f.WidthM) / 2}
	b.innerM = min(f.LengthM, f.WidthM) / 2 * math.Cos(math.Pi/ellipseSides)
	sin, cos := math.Sincos(p.TurnRad)
	corner := func(x, y float64) { b.about = append(b.about, Point{x*cos - y*sin, x*sin + y*cos}) }
	l, w := f.LengthM/2, f.WidthM/2
	if f.Rack {
		b.radiusM = math.Hypot(l, w)
		corner(l, w)
		corner(-l, w)
		corner(-l, -w)
		corner(l, -w)
	} else {
		for i := range ellipseSides {
			s, c := math.Sincos(2 * math.Pi * float64(i) / ellipseSides)
			corner(l*c, w*s)
		}
	}
	b.outline = b.points()
	return b
}

func (b body) at(p Point) body {
	b.place.At = p
	b.outline = nil
	return b
}

func (b body) points() []Point {
	out := make([]Point, len(b.about))
	for i, p := range b.about {
		out[i] = Point{p.XM + b.place.At.XM, p.YM + b.place.At.YM}
	}
	return out
}

func (b body) inside(s Shape) bool {
	if b.disc {
		return s.Contains(b.place.At, b.radiusM)
	}
	for _, p := range b.about { // the figures are convex
		if !s.Contains(Point{p.XM + b.place.At.XM, p.YM + b.place.At.YM}, 0) {
			return false
		}
	}
	return true
}

func (b body) overlapsAny(bodies []body) bool {
	for _, o := range bodies {
		apartM := away(b.place.At, o.place.At)
		if apartM >= b.radiusM+o.radiusM-1e-9 {
			continue
		}
		if b.disc && o.disc || apartM < b.innerM+o.innerM-1e-9 {
			return true
		}
		if b.outline == nil {
			b.outline = b.points()
		}
		if !apart(b.outline, o.outline) && !apart(o.outline, b.outline) {
			return true
		}
	}
	return false
}

// apart says whether an edge of the convex outline a, drawn counter-clockwise, has all of b on its outer side.
func apart(a, b []Point) bool {
	for i, p := range a {
		q := a[(i+1)%len(a)]
		nx, ny := q.YM-p.YM, p.XM-q.XM
		outer := true
		for _, r := range b {
			if (r.XM-p.XM)*nx+(r.YM-p.YM)*ny < -1e-12 {
				outer = false
				break
			}
		}
		if outer {
			return true
		}
	}
	return false
}
