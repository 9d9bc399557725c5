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

// Kettle is round, Box has a rectangular grate, OtherKind is described by its zones and gets no charcoal advice.
const (
	Kettle    Kind = "kettle"
	Box       Kind = "box"
	OtherKind Kind = "other"
)

// Grill is one cooker with one grate. Kettle uses DiameterM, Box WidthM and DepthM, OtherKind OtherZones.
type Grill struct {
	Kind           Kind
	DiameterM      float64 // nominal, taken as the grate's
	WidthM, DepthM float64
	Fuel           Fuel    // empty means briquettes
	GaugeOffsetK   float64 // lid gauge less grate, at a 250 F grate in 70 F air
	WaterPan       bool
	OtherZones     []OtherZone // OtherKind only
}

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
}

// sizes that a person may own; the burn law itself was compared between lawMinM and lawMaxM.
const (
	smallestM = 0.25
	largestM  = 1.00
	lawMinM   = 14 * inchM
	lawMaxM   = 27 * inchM
	inchM     = 0.0254
)

// GrateAreaM2 is the area of the whole grate.
func (g Grill) GrateAreaM2() float64 {
	switch g.Kind {
	case Kettle:
		return math.Pi / 4 * g.DiameterM * g.DiameterM
	case Box:
		return g.WidthM * g.DepthM
	}
	sum := 0.0
	for _, z := range g.OtherZones {
		sum += z.AreaM2
	}
	return sum
}

// equivalentM is the diameter of the round grate of the same area: how the burn law, made for kettles, takes a box
// (assumption).
func (g Grill) equivalentM() float64 { return math.Sqrt(4 / math.Pi * g.GrateAreaM2()) }

// Grate is the outline of the whole grate; a grill of another kind is drawn as one row of its zones.
func (g Grill) Grate() Shape {
	switch g.Kind {
	case Kettle:
		return Shape{Form: Disc, RadiusM: g.DiameterM / 2}
	case Box:
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
	if g.Kind == OtherKind {
		return g.otherZones(f)
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
	}
	return zones
}

// zoneShape gives a zone its true figure: coals at the left of a banked or two-zone fire, else all about the centre.
func (g Grill) zoneShape(l Layout, k ZoneKind) Shape {
	if l == Banked || l == TwoZone {
		if g.Kind == Box {
			return side(g.WidthM, g.DepthM, k.Share, k.Direct)
		}
		return segment(g.DiameterM/2, k.Share, k.Direct)
	}
	scale := math.Sqrt(k.Share)
	if g.Kind == Box {
		return Shape{Form: Rectangle, WidthM: g.WidthM * scale, DepthM: g.DepthM * scale}
	}
	return Shape{Form: Disc, RadiusM: g.DiameterM / 2 * scale}
}

// otherZones puts the described zones side by side; each follows the level as far as its own range allows.
func (g Grill) otherZones(f Fire) []Zone {
	if f.Layout != Other {
		return nil
	}
	whole, zones := g.Grate(), make([]Zone, len(g.OtherZones))
	x := -whole.WidthM / 2
	for i, z := range g.OtherZones {
		width := z.AreaM2 / whole.DepthM
		zones[i] = Zone{
			Name: z.Name, Share: z.AreaM2 / g.GrateAreaM2(), AreaM2: z.AreaM2, Direct: z.Direct,
			LiftK: min(max(f.LevelC, z.MinC), z.MaxC) - f.LevelC,
			Shape: Shape{Form: Rectangle, Centre: Point{XM: x + width/2}, WidthM: width, DepthM: whole.DepthM},
		}
		x += width
	}
	return zones
}

// otherDepthM draws an undescribed grate three wide to two deep (assumption, for the picture only).
func (g Grill) otherDepthM() float64 { return math.Sqrt(g.GrateAreaM2() * 2 / 3) }
