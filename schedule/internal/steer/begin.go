package steer

import "example.com/cookday/schedule/internal/fire"

// Begin is how a fire began and what is known of its grill.
type Begin struct {
	Seed    uint64
	Grill   fire.Grill
	Layout  fire.Layout
	Section fire.Section                      // of a ring; nil for the usual one
	Weather func(minute float64) fire.Weather // until the cook says otherwise
	Own     *Record                           // of this grill; nil if nothing was learned yet

	// Of a fire whose pour is known: lit coals poured on unlit ones at PourMinute. Of one that is met in mid cook only
	// Unlit counts, which lie there.
	MidCook    bool
	PourMinute float64
	Lit, Unlit float64
	LitUnsure  float64 // spread (sd of the logarithm) of Lit; 0 for counted coals

	Top, Bottom float64 // vents at the start
	VentsUnsure bool    // nobody said so: the leaks may be anything
}

// Spreads of what differs from grill to grill and from fire to fire, as the standard deviation of the logarithm
// (assumptions; the fit allowed 0.20 for the gain and 0.80 for the leak).
const (
	gainSpread  = 0.25
	leakSpread  = 0.7
	leakUnsure  = 1.0 // vents not told
	bedSpread   = 0.2
	ratioSpread = 0.3
	litSpread   = 0.2
	catchSpread = 0.35
	tauSpread   = 0.25
	fullSpread  = 0.15
	ashSpread   = 0.6
	gaugeSpread = 0.2 // 13 pairs of lid and grate had 0.26, readings' own errors in it
	blowSpread  = 0.7
	marksSpread = 0.2 // of the power by which a vent's marks are not what they let through
	coldSpread  = 0.6 // of what cold food takes: its weight is a guess, and so is what a kilogram takes

	countSpread = 0.1  // of counted coals: no two are lit alike
	midSpread   = 0.5  // of the lit coals of a fire met in mid cook, a factor of 1.65
	midBurnt    = 15.0 // briquettes, of such a fire
	burntSpread = 0.5
	midRise     = 0.2 // of its grate, about where the fire would keep it
)

const guesses = 120

// draw makes one guess of a grill of which so much is known, and of its fire. A fire that is met in mid cook has grown as far as its air lets it, more or
// less, and the grate is where such a fire keeps it, more or less: its first reading then teaches both.
func (b *Begin) draw(d *dice, known map[string]Figure, h *fire.Hearth, s fire.Setting) guess {
	g := guess{traits: b.drawTraits(d, known), cold: d.factor(coldSpread)}
	g.top.power, g.bottom.power = d.factor(marksSpread), d.factor(marksSpread)
	s.Top, s.Bottom = g.top.lets(s.Top), g.bottom.lets(s.Bottom)
	if !b.MidCook {
		g.coals = fire.Coals{Lit: b.Lit * d.factor(max(b.LitUnsure, countSpread)), Unlit: b.Unlit * d.factor(countSpread)}
		return g
	}
	burnt := midBurnt * d.factor(burntSpread)
	rise, lit := h.Established(&g.traits, burnt, s)
	g.coals = fire.Coals{RiseK: rise, Lit: lit * d.factor(midSpread), Unlit: b.Unlit * d.factor(countSpread), Burnt: burnt}
	g.coals.RiseK = h.Steady(&g.traits, g.coals, s) * d.factor(midRise)
	return g
}

// record is what is known of the grill before its fire.
func (b *Begin) record() map[string]Figure {
	usual := usualRecord(b)
	if b.Own == nil {
		return usual
	}
	return b.Own.widened(usual)
}

func (b *Begin) drawTraits(d *dice, known map[string]Figure) fire.Traits {
	t := b.Grill.Usual()
	for _, k := range traitKeys {
		*k.of(&t) *= known[k.key].drawn(d)
	}
	t.Blow = min(max(blowSpread*d.normal(), -1), 1)
	return t
}
