package steer

import (
	"math"

	"example.com/cookday/schedule/internal/fire"
)

// Figure is what is known of one trait: its middle, of the usual grill's, and the spread of its logarithm.
type Figure struct {
	Middle float64
	Spread float64
}

func (f Figure) drawn(d *dice) float64 { return f.Middle * d.factor(f.Spread) }

// Record is what was learned of one grill, trait by trait.
type Record struct {
	Cooks   int
	Figures map[string]Figure
}

type traitKey struct {
	key    string
	of     func(*fire.Traits) *float64
	spread float64 // between grills
	least  float64 // share of it that is always left; 0 stands for leastSure
	widen  float64 // from one cook to the next
}

// traitKeys are what is learned, in the order in which dice are thrown for it. How far a grill changes from one cook to
// the next is an assumption.
var traitKeys = []traitKey{
	{"gain", func(t *fire.Traits) *float64 { return &t.Gain }, gainSpread, 0, 0.08},
	{"leak", func(t *fire.Traits) *float64 { return &t.Leak }, leakSpread, 0, 0.20},
	{"bed", func(t *fire.Traits) *float64 { return &t.Bed }, bedSpread, 0, 0.06},
	{"ratio", func(t *fire.Traits) *float64 { return &t.Ratio }, ratioSpread, 0, 0.06},
	{"lit-heat", func(t *fire.Traits) *float64 { return &t.LitK }, litSpread, 0, 0.08},
	{"catching", func(t *fire.Traits) *float64 { return &t.Spread }, catchSpread, 0, 0.15},
	{"warming", func(t *fire.Traits) *float64 { return &t.UpMinutes }, tauSpread, 0, 0.06},
	{"cooling", func(t *fire.Traits) *float64 { return &t.DownMinutes }, tauSpread, 0, 0.06},
	{"full", func(t *fire.Traits) *float64 { return &t.Full }, fullSpread, 0, 0.05},
	{"ash", func(t *fire.Traits) *float64 { return &t.AshHold }, ashSpread, 0, 0.20},
	{"gauge", func(t *fire.Traits) *float64 { return &t.GaugeRatio }, gaugeSpread, 0.25, 0.03},
}

// usualRecord is what is known before the first cook.
func usualRecord(b *Begin) map[string]Figure {
	r := map[string]Figure{}
	for _, k := range traitKeys {
		r[k.key] = Figure{Middle: 1, Spread: k.spread}
	}
	if b.VentsUnsure {
		r["leak"] = Figure{Middle: 1, Spread: leakUnsure}
	}
	return r
}

// widened is the record for the next cook: what was learned, a little less sure, and never less sure than before the
// first one.
func (r *Record) widened(usual map[string]Figure) map[string]Figure {
	out := map[string]Figure{}
	for _, k := range traitKeys {
		f, known := r.Figures[k.key]
		if !known || !(f.Middle > 0) || f.Spread < 0 {
			f = usual[k.key]
		}
		out[k.key] = Figure{Middle: f.Middle, Spread: min(math.Hypot(f.Spread, k.widen), usual[k.key].Spread)}
	}
	return out
}
