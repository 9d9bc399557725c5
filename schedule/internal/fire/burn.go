package fire

import "math"

// Real fires burn between half and twice what the law says; lay 1.3 times and buy 1.5 times the expected amount
// (common practice of allowing for wet fuel, wind and open lids; the factors are assumptions).
const (
	rangeFactor = 2
	layFactor   = 1.3
	buyFactor   = 1.5
	leastLaid   = 30 // briquettes to start even a small grill (general advice, weak)
)

// Need is what a phase asks of its fire.
type Need struct {
	Slices   []Slice // weather from the instant the fire is ready to the end of the phase
	First    bool    // the grill is cold: its warm-up burns fuel too
	Untended []Span  // nobody adds fuel then
}

// Span is a stretch of the phase, minutes from the instant the fire is ready.
type Span struct{ FromMinute, ToMinute float64 }

// Burn is the fuel of one phase.
type Burn struct {
	Minutes             float64
	Expected, Low, High Amount // needed in all: the law, half of it, twice of it
	Lay                 Amount // at the start, the lit ones among them
	Light               Amount // of those, lit first
	Added               Amount // all top-ups together
	Buy                 Amount // for the whole phase
	WoodChunks          int    // fist-sized, one of them on the lit coals; common practice
	Holder              Holder
	Ring                RingLaid // rows and length; zero for other holders
	LastsMinutes        float64  // what is laid lasts so long untended: expected
	SureMinutes         float64  // the same with the margin that was laid on top
	EarliestOutMinutes  float64  // the same if the fire is as hungry as the range allows
	TopUps              []TopUp
	Shortfalls          []Shortfall
	Notes               []Note
	LeftKg              float64 // expected to be left at the end
}

// Holder is what keeps the coals together.
type Holder string

// The holders.
const (
	InPile   Holder = "pile"
	InBasket Holder = "basket"
	InRing   Holder = "ring"
	InLayer  Holder = "layer" // a bed of lit coals
)

// Note is a code for something that the owner should know about this fire.
type Note string

// The notes.
const (
	NoCharcoal     Note = "no-charcoal-advice"   // a grill of another kind
	SizeOutsideLaw Note = "size-outside-law"     // smaller than 14 or larger than 27 in: the law is stretched
	LevelOutside   Note = "level-outside-layout" // the layout is not made for this level
	RingRunsCool   Note = "ring-runs-cool"       // even the thickest fuse gives too little: bank the coals
	LumpUneven     Note = "lump-fuse-uneven"     // irregular pieces burn a fuse unevenly
	NeedsBasket    Note = "needs-basket"         // more than a loose pile holds
	ThinAir        Note = "thin-air"             // vents a little wider (assumption); the amounts are unchanged
	FillsNotLaw    Note = "chimney-fills"        // counted in chimney fills, not by the law
)

// Plan says what a phase needs: how much to lay, light, add and buy. Longer, hotter, colder and windier never need
// less. A need without slices, an unknown layout or a grill of another kind gives a Burn of notes only.
func (g Grill) Plan(f Fire, n Need) Burn {
	m := g.newMeter(f, n)
	b := Burn{Minutes: m.minutes, Notes: g.notes(f, n)}
	d := g.describe(f.Layout)
	if !g.Charcoal() || d == nil || len(n.Slices) == 0 {
		return b
	}
	spans := merge(n.Untended)
	switch {
	case d.LidOff || f.LevelC > lawMaxC:
		g.planFills(&b, m, spans)
	case d.LitTopUps:
		g.planBed(&b, m, spans)
	default:
		g.planSlow(&b, f, m, n.Slices, spans)
	}
	b.WoodChunks = chunks(f, m.minutes)
	return b
}

// LongestMinutes is how long a layout burns untended in one weather from the instant it is ready, filled to its limit
// and with the margin kept: what a remedy compares. It is 0 for a grill of another kind.
func (g Grill) LongestMinutes(f Fire, w Weather) float64 {
	const week = 7 * 24 * 60
	n := Need{Slices: []Slice{{Minutes: week, Weather: w}}, First: true}
	return g.Plan(f, n).SureMinutes
}

// settle fills in everything that follows from the expected kilograms and the top-ups.
func (g Grill) settle(b *Burn, expectedKg, layKg, lightKg float64) {
	b.Expected = g.amount(expectedKg)
	b.Low, b.High = g.amount(expectedKg/rangeFactor), g.amount(expectedKg*rangeFactor)
	b.Lay, b.Light = g.amount(layKg), g.amount(min(lightKg, layKg))
	added := 0.0
	for _, t := range b.TopUps {
		added += t.Add.MassKg
	}
	b.Added = g.amount(added)
	b.Buy = g.amount(max(buyFactor*expectedKg, layKg+added))
	b.LeftKg = max(layKg+added-expectedKg, 0)
}

func (g Grill) notes(f Fire, n Need) []Note {
	if !g.Charcoal() {
		return []Note{NoCharcoal}
	}
	var notes []Note
	if size := g.equivalentM(); size < lawMinM || size > lawMaxM {
		notes = append(notes, SizeOutsideLaw)
	}
	if d := g.describe(f.Layout); d != nil && !d.Holds(f.LevelC) {
		notes = append(notes, LevelOutside)
	}
	for _, s := range n.Slices {
		if s.Weather.AltitudeM > thinAirM {
			return append(notes, ThinAir)
		}
	}
	return notes
}

// chunks of wood: two for a short smoke, one more for every three hours up to four, none over a searing fire (common
// practice is a handful; the steps are an assumption).
func chunks(f Fire, minutes float64) int {
	if Band(f.LevelC) == "sear" {
		return 0
	}
	return min(2+int(math.Floor(max(minutes, 0)/180)), 4)
}
