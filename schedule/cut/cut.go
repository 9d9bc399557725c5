// Package cut is the catalogue: what a cut is made of, how large it is, where it
// cooks, when it is done and who says so. It knows nothing of heat transfer,
// grills or clocks, and holds no rule of food safety.
//
// The catalogue is three embedded tables, bodies.csv, kitchen.yaml and names.yaml, each
// with the meaning of its columns at its head. To add a cut, give it a row in the first
// two, and its other names in the third.
package cut

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// Version names the state of the tables; it changes with any figure in them.
const Version = "2026-12-02a"

// Style says how a cut becomes good to eat.
type Style string

// The styles.
const (
	Tough Style = "tough" // cooked past doneness until tender
	Roast Style = "roast" // large, taken off at a doneness
	Bird  Style = "bird"  // whole, half or flattened birds
	Small Style = "small" // minutes rather than hours
	Timed Style = "timed" // goes by the clock, no core temperature
)

// Cut is an entry of the catalogue. Temperatures are in degrees Celsius.
type Cut struct {
	Name     string // identifier, "brisket-flat"
	Title    string // one piece: "Brisket flat"
	Plural   string
	Also     []string // other names that cooks use
	Estimate bool     // dimensions and factors are an estimate that was never compared with a cook
	Style    Style
	Food     string // whose row of the published safety charts: beef, pork, veal, lamb, ham, ham-cooked, poultry, fish, ground, sausage, leftovers, vegetable, none
	Ground   bool   // ground or chopped meat, sausages too
	Poultry  bool

	Shape        Shape
	Composition  Composition
	WetFactor    float64 // share of the surface that can be wet, 0..1
	SupplyFactor float64 // share of the piece that can give off water, 0..1

	Doneness       []Doneness // from least to most done; empty for timed cuts
	TenderMinutes  [2]float64 // thin tough cuts: early and late total at 225-250 F until tender; zero where temperature decides
	TenderAboveC   float64    // the core is at least here while it grows tender; zero with TenderMinutes zero
	Timed          [3]float64 // minutes early, expected, late of timed cuts; zero otherwise
	Rest           Rest
	HoldCostTenths int // cost of a minute after the ideal rest, in tenths
	Wrap           Wrap
	WrapAllowed    bool
	Finish         string  // how it ends where nothing is asked: sear, or empty
	Places         []Place // where it cooks, best first
	Flips          int     // turns while it cooks over the coals
	Disc           bool    // small disc-like pieces, which leave gaps between each other
	Rack           bool    // covers its length times its width fully
	Spread         string  // whose scatter of times it has: brisket, tough, chuck, tough-thin, roast, lamb, bird, flat-bird, small, direct

	Prep []string // what was done to every piece: rolled, which skewered pieces count as

	ServingKg    float64 // raw weight a person as a main dish
	LossFraction float64 // of the raw weight, as drip, vapour and bone
	SmallestKg   float64 // that shops sell, of a cut that comes whole; 0: any that is plausible
	MinPieceKg   float64 // plausible weights of one piece
	MaxPieceKg   float64
	Typical      float64            // usual weight of one piece, kg
	usual        map[string]float64 // by the key of another name, where such pieces weigh something else, kg
	Look         string             // where to put the probe, or how to tell that it is done
	Sources      []string           // source keys; "model" and "estimate" are explained in bodies.csv
	Note         string
}

// Composition holds mass fractions of the raw piece. What is missing to 1 is carbohydrate.
type Composition struct{ Water, Protein, Fat, Ash float64 }

// Doneness is a named take-off temperature of the core.
type Doneness struct {
	Name    string
	CoreC   float64
	Default bool   // exactly one of a cut
	Text    string // how it looks or feels
}

// Rest holds minutes off the grate: at least, ideally, and the longest before
// quality suffers (which is no rule of food safety).
type Rest struct{ MinMinutes, IdealMinutes, LongestMinutes float64 }

// Wrap is the habit of cooks: With is "foil", "paper" or "none", FromC the core
// temperature from which on (0 for none).
type Wrap struct {
	With  string
	FromC float64
}

// Place is a way to put a cut on the grate.
type Place struct {
	Direct  bool      // over the coals
	Asked   bool      // only for a dish that is asked to lie there
	Band    string    // low (225-275 F), hot (325-400 F where a layout gives it) or sear (550 F and up)
	LevelsC []float64 // grate temperatures, the usual one first
}

// Shape is the box around a piece of ReferenceKg and the way it grows.
type Shape struct {
	ReferenceKg, ThicknessM, WidthM, LengthM float64

	Growth      [3]float64 // exponents of thickness, width and length over weight; they sum to 1
	LogSize     float64    // log of a factor on all three, fitted on roasting charts; zero it for the unfitted shape
	RadiusScale float64    // factor on half the thickness: 1.165 for whole birds, else 1

	FootprintScale float64 // factor on width and length for the room on the grate: what LogSize does is undone, or 1 and more
}

// Dimensions returns the box around a piece of massKg in metres, sorted upward, as a
// ruler has it. A thicknessM above zero, as measured by the cook, replaces the smallest.
func (c Cut) Dimensions(massKg, thicknessM float64) (t, w, l float64) {
	s := c.Shape
	d := []float64{s.ThicknessM, s.WidthM, s.LengthM}
	for i := range d {
		d[i] *= math.Pow(massKg/s.ReferenceKg, s.Growth[i]) * math.Exp(s.LogSize) / s.slows()
	}
	slices.Sort(d)
	if thicknessM > 0 {
		d[0] = thicknessM
		slices.Sort(d)
	}
	return d[0], d[1], d[2]
}

// HeatDimensions returns the box of plain meat that heats as slowly as a piece of that
// size: larger than the piece where skin and bone slow the heat, whether its thickness
// was measured or not.
func (c Cut) HeatDimensions(massKg, thicknessM float64) (t, w, l float64) {
	t, w, l = c.Dimensions(massKg, thicknessM)
	slows := c.Shape.slows()
	return t * slows, w * slows, l * slows
}

// slows is the part of the size factor that is no size.
func (s Shape) slows() float64 {
	if s.FootprintScale < 1 {
		return math.Exp(s.LogSize)
	}
	return 1
}

// Footprint returns the length and width in metres that a piece takes on the grate.
func (c Cut) Footprint(massKg, thicknessM float64) (l, w float64) {
	_, w, l = c.Dimensions(massKg, thicknessM)
	scale := c.Shape.FootprintScale * c.Shape.slows()
	return l * scale, w * scale
}

// DefaultDoneness returns the usual doneness; false for timed cuts.
func (c Cut) DefaultDoneness() (Doneness, bool) {
	i := slices.IndexFunc(c.Doneness, func(d Doneness) bool { return d.Default })
	if i < 0 {
		return Doneness{}, false
	}
	return c.Doneness[i], true
}

// FindDoneness returns the doneness of that name.
func (c Cut) FindDoneness(name string) (Doneness, bool) {
	i := slices.IndexFunc(c.Doneness, func(d Doneness) bool { return d.Name == name })
	if i < 0 {
		return Doneness{}, false
	}
	return c.Doneness[i], true
}

// InText is the title within a sentence.
func (c Cut) InText() string { return strings.ToLower(c.Title[:1]) + c.Title[1:] }

// Quick says whether a cut is small or goes by the clock: such food is counted rather than
// weighed, and is neither wrapped nor held for hours.
func (c Cut) Quick() bool { return c.Style == Small || c.Style == Timed }

// InPieces is how many pieces of the usual size weigh so much together, kg.
func (c Cut) InPieces(massKg float64) int { return int(math.Round(massKg / c.Typical)) }

// IsMain says whether a serving is reckoned of the cut: meat and fish.
func (c Cut) IsMain() bool { return c.Food != "vegetable" && c.Food != "none" }

// clone keeps the catalogue out of the caller's hands.
func (c Cut) clone() Cut {
	c.Also, c.Sources, c.Prep = slices.Clone(c.Also), slices.Clone(c.Sources), slices.Clone(c.Prep)
	c.Doneness, c.Places = slices.Clone(c.Doneness), slices.Clone(c.Places)
	for i := range c.Places {
		c.Places[i].LevelsC = slices.Clone(c.Places[i].LevelsC)
	}
	return c
}

// All returns every cut, sorted by name.
func All() []Cut {
	cuts := slices.Clone(catalogue())
	for i := range cuts {
		cuts[i] = cuts[i].clone()
	}
	return cuts
}

// Find returns the cut of that name.
func Find(name string) (Cut, bool) {
	cuts := catalogue()
	i, ok := slices.BinarySearchFunc(cuts, name, func(c Cut, name string) int { return cmp.Compare(c.Name, name) })
	if !ok {
		return Cut{}, false
	}
	return cuts[i].clone(), true
}
