package fire

import (
	"math"
)

// Fuel is what burns.
type Fuel string

// The fuels that the law knows.
const (
	Briquettes Fuel = "briquettes"
	Lump       Fuel = "lump"
)

// Kind is the kind of cooker.
type Kind string

// Kettle is round, Box has a rectangular grate. Upright has its coals at the bottom and grates one above another, and
// OtherKind is described by its zones: it gets no charcoal advice.
const (
	Kettle    Kind = "kettle"
	Box       Kind = "box"
	Upright   Kind = "upright"
	OtherKind Kind = "other"
)

// Grill is one cooker. Kettle uses DiameterM, Box WidthM and DepthM, Upright either and Levels, OtherKind OtherZones.
type Grill struct {
	Kind           Kind
	DiameterM      float64 // nominal; the grate is an inch smaller
	WidthM, DepthM float64
	Fuel           Fuel    // empty means briquettes
	GaugeOffsetK   float64 // lid gauge less grate, at a 250 F grate in 70 F air
	WaterPan       bool
	Raised         bool        // Kettle and Box: a second grate stands over the side away from the coals
	Levels         int         // Upright: grates one above another
	Deep           bool        // a Kettle by its size whose coals lie deep under the grate: a drum; an Upright is so by itself
	OtherZones     []OtherZone // OtherKind only
}

// BurnsCharcoal says whether it does for all that is known.
func (g Grill) BurnsCharcoal() bool { return g.Kind != OtherKind }

// deep says whether the coals lie far under the grate, in a shell that leaks more and loses more (control.go).
func (g Grill) deep() bool { return g.Deep || g.Kind == Upright }

// Charcoal says whether the figures of charcoal are for this kind.
func (g Grill) Charcoal() bool { return g.BurnsCharcoal() }

// OtherZone is a part of a grate that its owner describes.
type OtherZone struct {
	Name       string
	AreaM2     float64
	MinC, MaxC float64
	Direct     bool // heat comes from straight below
}

// Fire is what a phase burns: a layout at a level.
type Fire struct {
	Layout Layout
	LevelC float64 // of the air beside the meat at grate height
}

// Zone is a part of the grate under a fire.
type Zone struct {
	Name    string
	Share   float64 // of the grate area
	AreaM2  float64
	LiftK   float64 // its heat above the fire's level
	SpreadK float64 // half the range of that lift
	Direct  bool
	Shape   Shape
	Above   []Grate // grates over it, from below; none over coals
}

// Grate is one of several grates of a zone.
type Grate struct {
	Name       string
	AreaM2     float64
	Shape      Shape
	MostThickM float64 // of a piece that goes on it; 0 for any
}

// sizes that a person may own; the burn law itself was compared between lawMinM and lawMaxM.
const (
	smallestM = 0.25
	largestM  = 1.00
	lawMinM   = 14 * inchM
	lawMaxM   = 27 * inchM
	inchM     = 0.0254
)

// RimM is how much smaller across than its name a round grate is: 21.5 in of a 22.5 in kettle, 25.4 of one of 26.75
// (makers' figures, from memory).
const RimM = inchM

// round says whether the grate is: an upright cooker is what its sizes say.
func (g Grill) round() bool { return g.Kind == Kettle || g.Kind == Upright && g.DiameterM > 0 }

// grateM is how far across the round grate is.
func (g Grill) grateM() float64 { return g.DiameterM - RimM }

// GrateAreaM2 is the area of the whole grate, where food lies.
func (g Grill) GrateAreaM2() float64 {
	if g.round() {
		return math.Pi / 4 * g.grateM() * g.grateM()
	}
	return g.nominalM2()
}

// nominalM2 is the area of the grill by its name, which is what the figures of charcoal were compared with.
func (g Grill) nominalM2() float64 {
	switch {
	case g.round():
		return math.Pi / 4 * g.DiameterM * g.DiameterM
	case g.Kind != OtherKind:
		return g.WidthM * g.DepthM
	}
	sum := 0.0
	for _, z := range g.OtherZones {
		sum += z.AreaM2
	}
	return sum
}

// equivalentM is the diameter of the round grill of the same area: how the burn law, made for kettles, takes a box
// (assumption).
func (g Grill) equivalentM() float64 { return math.Sqrt(4 / math.Pi * g.nominalM2()) }

// ReachM is the longest straight piece that lies on the grate along its middle; 0 where the outline is not known.
func (g Grill) ReachM() float64 {
	if g.Kind == OtherKind {
		return 0
	}
	whole := g.Grate()
	if whole.Form == Rectangle {
		return max(whole.WidthM, whole.DepthM)
	}
	return whole.LongestChordM()
}

// Grate is the outline of the whole grate; a grill of another kind is drawn as one row of its zones.
func (g Grill) Grate() Shape {
	switch {
	case g.round():
		return Shape{Form: Disc, RadiusM: g.grateM() / 2}
	case g.Kind != OtherKind:
		return Shape{Form: Rectangle, WidthM: g.WidthM, DepthM: g.DepthM}
	}
	width := 0.0
	for _, z := range g.OtherZones {
		width += z.AreaM2 / g.otherDepthM()
	}
	return Shape{Form: Rectangle, WidthM: width, DepthM: g.otherDepthM()}
}

// Zones are the parts of the grate under a fire, nil for a layout that this grill cannot burn.
func (g Grill) Zones(f Fire) []Zone {
	switch g.Kind {
	case OtherKind:
		return g.otherZones(f)
	case Upright:
		return g.uprightZones(f)
	}
	d := describe(f.Layout)
	if d == nil {
		return nil
	}
	zones := make([]Zone, len(d.Zones))
	for i, k := range d.Zones {
		zones[i] = Zone{
			Name: k.Name, Share: k.Share, AreaM2: k.Share * g.GrateAreaM2(), LiftK: k.LiftK(),
			SpreadK: (k.LiftMaxK - k.LiftMinK) / 2, Direct: k.Direct, Shape: g.zoneShape(f.Layout, k),
		}
		if g.Raised && !k.Direct {
			zones[i].Above = []Grate{g.raisedGrate(f.Layout)}
		}
	}
	return zones
}

// zoneShape gives a zone its true figure: coals at the left of a banked or two-zone fire, else all about the centre.
func (g Grill) zoneShape(l Layout, k ZoneKind) Shape {
	if l == Banked || l == TwoZone {
		if g.Kind == Box {
			return side(g.WidthM, g.DepthM, k.Share, k.Direct)
		}
		return segment(g.grateM()/2, k.Share, k.Direct)
	}
	scale := math.Sqrt(k.Share)
	if g.Kind == Box {
		return Shape{Form: Rectangle, WidthM: g.WidthM * scale, DepthM: g.DepthM * scale}
	}
	return Shape{Form: Disc, RadiusM: g.grateM() / 2 * scale}
}
