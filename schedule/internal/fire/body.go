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

// at is the piece with its middle elsewhere.
func (b *body) at(p Point) body {
	out := *b
	out.place.At = p
	out.outline = out.points()
	return out
}

func (b *body) points() []Point { return b.pointsAt(b.place.At, make([]Point, 0, len(b.about))) }

// pointsAt is the outline with the middle at p, in the room given.
func (b *body) pointsAt(p Point, room []Point) []Point {
	for _, q := range b.about {
		room = append(room, Point{q.XM + p.XM, q.YM + p.YM})
	}
	return room
}

// inside says whether the piece would lie within a figure with its middle at p.
func (b *body) inside(s *Shape, p Point) bool {
	if b.disc {
		return s.Contains(p, b.radiusM)
	}
	for _, q := range b.about { // the figures are convex
		if !s.Contains(Point{q.XM + p.XM, q.YM + p.YM}, 0) {
			return false
		}
	}
	return true
}

// overlapsAny says whether the piece would lie on another with its middle at p.
func (b *body) overlapsAny(bodies []body, p Point) bool {
	var room [ellipseSides]Point
	var outline []Point
	for i := range bodies {
		o := &bodies[i]
		x, y := p.XM-o.place.At.XM, p.YM-o.place.At.YM
		apart2 := x*x + y*y
		if far := b.radiusM + o.radiusM - 1e-9; apart2 >= far*far {
			continue
		}
		if near := b.innerM + o.innerM - 1e-9; b.disc && o.disc || apart2 < near*near {
			return true
		}
		if outline == nil {
			outline = b.pointsAt(p, room[:0])
		}
		if !apart(outline, o.outline) && !apart(o.outline, outline) {
			return true
		}
	}
	return false
}

// apart says whether an edge of the convex outline a, drawn counter-clockwise, has all of b on its outer side.
func apart(a, b []Point) bool {
	p := a[len(a)-1]
	for _, q := range a {
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
		p = q
	}
	return false
}
