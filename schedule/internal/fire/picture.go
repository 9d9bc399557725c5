package fire

import "math"

// Picture is where the coals lie and where the lid's vent goes, metres from the grate's centre: x to the right, y away
// from the cook. Only charcoal grills have one.
type Picture struct {
	Grate      Shape
	Coals      Shape   // pile, basket, layer or heap; empty Form for a ring
	Fuse       []Point // the middle of a ring's fuse, one point a row step, the lit end first
	FuseWidthM float64
	TopVent    Point
	LidOff     bool
}

// Picture draws a fire as it was planned (the ring's length comes from the plan).
func (g Grill) Picture(f Fire, b Burn) (Picture, bool) {
	d := describe(f.Layout)
	if d == nil || g.Kind == OtherKind {
		return Picture{}, false
	}
	p := Picture{Grate: g.Grate(), LidOff: d.LidOff}
	across := p.Grate.RadiusM
	if g.Kind == Box {
		across = g.WidthM / 2
	}
	switch f.Layout {
	case Banked, TwoZone:
		p.Coals = g.coalsAtLeft(coalSideShare)
		p.TopVent = Point{XM: across / 2}
	case Ring:
		p.Fuse, p.FuseWidthM = g.fuse(b.Ring), b.Ring.WidthM
		p.TopVent = Point{YM: -across / 2} // the lit end is at the back
	default:
		p.Coals = g.coalsInMiddle(d.Zones[0].Share)
	}
	return p, true
}

func (g Grill) coalsAtLeft(share float64) Shape {
	if g.Kind == Box {
		return side(g.WidthM*coalGrateShare, g.DepthM*coalGrateShare, share, true)
	}
	return segment(g.DiameterM/2*coalGrateShare, share, true)
}

func (g Grill) coalsInMiddle(share float64) Shape {
	scale := math.Sqrt(share) * coalGrateShare
	if g.Kind == Box {
		return Shape{Form: Rectangle, WidthM: g.WidthM * scale, DepthM: g.DepthM * scale}
	}
	return Shape{Form: Disc, RadiusM: g.DiameterM / 2 * scale}
}

// fuse walks clockwise from the back, one point a row step.
func (g Grill) fuse(r RingLaid) []Point {
	if r.Steps == 0 {
		return nil
	}
	points := make([]Point, r.Steps+1)
	for i := range points {
		points[i] = g.alongEdge(r.ArcM*float64(i)/float64(r.Steps), r.WidthM)
	}
	return points
}

// alongEdge is the point so far clockwise from the back along the edge of the coal grate, half a fuse inside.
func (g Grill) alongEdge(arcM, widthM float64) Point {
	if g.Kind != Box {
		radius := (coalGrateShare*g.DiameterM - widthM) / 2
		sin, cos := math.Sincos(arcM / radius)
		return Point{XM: radius * sin, YM: radius * cos}
	}
	w, d := coalGrateShare*g.WidthM-widthM, coalGrateShare*g.DepthM-widthM
	corners := []Point{{0, d / 2}, {w / 2, d / 2}, {w / 2, -d / 2}, {-w / 2, -d / 2}, {-w / 2, d / 2}, {0, d / 2}}
	for i := 1; i < len(corners); i++ {
		a, b := corners[i-1], corners[i]
		length := math.Hypot(b.XM-a.XM, b.YM-a.YM)
		if arcM <= length || i == len(corners)-1 {
			t := min(arcM/length, 1)
			return Point{a.XM + t*(b.XM-a.XM), a.YM + t*(b.YM-a.YM)}
		}
		arcM -= length
	}
	return corners[0]
}
