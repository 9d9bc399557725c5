package steer

import (
	"math"

	"example.com/cookday/schedule/internal/fire"
)

// Start asks for the vents that a fire starts with.
type Start struct {
	Grill       fire.Grill
	Own         *Record
	Layout      fire.Layout
	Section     fire.Section
	Weather     fire.Weather
	LevelC      float64
	SteerBottom bool
	Night       bool // it burns while nobody watches
}

// startOverK is by how much the vents may aim above the level: a grate comes up five times faster than down.
const startOverK = 4 / 1.8

// startBurnt are the briquettes of ash on a fire that has grown (the figure of the fit).
const startBurnt = midBurnt

// startNearK is near enough to start from below: the fine control does the rest.
const startNearK = 20 / 1.8

// Vents are the marks under which the fire, once it has grown, comes near its level from below: the bottom vent at a
// quarter if that will do, for the top one is the fine control, narrower where that is too hot and wider where it is too
// cool. The range is what the grate then has on this grill, as sure as the grill is known.
func (s Start) Vents() (Vents, Range) {
	levels := s.levels()
	if s.SteerBottom {
		v := s.bottomFor(levels)
		return v, s.spread(v)
	}
	best, off := s.topFor(levels, 1./4)
	for _, b := range []float64{1. / 8, 1. / 16} {
		if math.IsInf(off, 1) {
			best, off = s.topFor(levels, b)
		}
	}
	for _, b := range []float64{1. / 2, 1} {
		if off > startNearK && !math.IsInf(off, 1) {
			if v, e := s.topFor(levels, b); e < off {
				best, off = v, e
			}
		}
	}
	return best, s.spread(best)
}

// Open is what the grate has on this grill with all vents open.
func (s Start) Open() Range { return s.spread(Vents{1, 1}) }

// Share is how many of ten such grills keep their grate between two heats under some vents, of the fire that has grown, as
// sure as the grill is known.
func (s Start) Share(v Vents, lowC, highC float64) float64 {
	in, all := 0, s.settled(v, true)
	for i := range all {
		if c := s.Weather.AirC + all[i].coals.RiseK; c >= lowC && c <= highC {
			in++
		}
	}
	return float64(in) / float64(len(all))
}

// Where the bottom vents are the fine control the top one stays open, and is closed only where the bottom ones at their least
// are too hot. They are opened no wider than is worth it, for nothing holds a fire back that has more air than it needs; and
// while nobody watches no wider than half, for reports tell of such fires that ran away (judgment).
const (
	widerWorthK = 10 / 1.8
	nightBottom = 1. / 2
)

// bottomFor are the marks that come near the level from below by the bottom vents.
func (s Start) bottomFor(levels func(Vents) float64) Vents {
	for _, top := range []float64{1, 1. / 2, leastTopWhere} {
		best, off := Vents{}, math.Inf(1)
		for _, b := range []float64{1. / 16, 1. / 8, 1. / 4, 1. / 3, 1. / 2, 3. / 4, 1} {
			if s.Night && b > nightBottom {
				break
			}
			v := Vents{top, b}
			if e := s.LevelC - levels(v); e >= -startOverK && e < off-widerWorthK {
				best, off = v, e
			}
		}
		if !math.IsInf(off, 1) {
			return best
		}
	}
	return Vents{leastTopWhere, 1. / 16}
}

// topFor is the top vent that comes nearest from below with the bottom one so far open, and by how much it stays below;
// infinitely where all of them are too hot. With a top much wider than the bottom there is no fine control left.
func (s Start) topFor(levels func(Vents) float64, bottom float64) (best Vents, off float64) {
	best, off = Vents{leastTop, bottom}, math.Inf(1)
	for _, t := range topMarks() {
		if t > max(2*bottom, leastTopWhere) {
			continue
		}
		if e := s.LevelC - levels(Vents{t, bottom}); e >= -startOverK && e < off {
			best, off = Vents{t, bottom}, e
		}
	}
	return best, off
}

// levels is where a fire of this grill stays under vents, by the middles of what is known of it.
func (s Start) levels() func(Vents) float64 {
	t, h := s.Own.Traits(s.Grill.Usual()), s.Grill.Hearth(s.Layout, s.Section)
	return func(v Vents) float64 {
		rise, _ := h.Established(&t, startBurnt, s.Grill.Setting(s.Weather, v.Top, v.Bottom, 0))
		return s.Weather.AirC + rise*s.reported(v)
	}
}

// reported is by how much such grills are reported to stay hotter under vents, of the rise that the fire's law gives; of one
// whose own figures were learned they are known.
func (s Start) reported(v Vents) float64 {
	if s.Own != nil {
		return 1
	}
	return s.Grill.ReportedRise(v.Bottom)
}

// spread is that of the grate over what the grill may be, its vents turned away from the wind.
func (s Start) spread(v Vents) Range {
	all := s.settled(v, false)
	low, _, high := quantiles(all, func(g *guess) float64 { return g.coals.RiseK })
	middle := s.levels()(v)
	return Range{min(s.Weather.AirC+low, middle), middle, max(s.Weather.AirC+high, middle)}
}

// settled are guesses of the grill whose fires have grown under some vents: with the wind on them as nobody knows it, or with
// the vents turned away from it.
func (s Start) settled(v Vents, blown bool) []guess {
	b := Begin{Seed: 1, Grill: s.Grill, Layout: s.Layout, Own: s.Own}
	d, h := dice{state: b.Seed}, s.Grill.Hearth(s.Layout, s.Section)
	set := s.Grill.Setting(s.Weather, v.Top, v.Bottom, 0)
	all, known := make([]guess, guesses), b.record()
	for i := range all {
		if all[i].traits = b.drawTraits(&d, known); !blown {
			all[i].traits.Blow = 0
		}
		all[i].coals.RiseK, _ = h.Established(&all[i].traits, startBurnt, set)
		all[i].coals.RiseK *= s.reported(v)
	}
	return all
}
