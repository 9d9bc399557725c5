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

// topFor is the top vent that comes nearest from below with the bottom one so far open, and by how much it stays below;
// infinitely where all of them are too hot. With a top much wider than the bottom there is no fine control left.
func (s Start) topFor(levels func(Vents) float64, bottom float64) (best Vents, off float64) {
	best, off = Vents{leastTop, bottom}, math.Inf(1)
	for _, t := range topMarks() {
		if s.SteerBottom && t < leastTopWhere || t > max(2*bottom, leastTopWhere) {
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
		return s.Weather.AirC + rise
	}
}

// spread is that of the grate over what the grill may be.
func (s Start) spread(v Vents) Range {
	b := Begin{Seed: 1, Grill: s.Grill, Layout: s.Layout, Own: s.Own}
	d, h := dice{state: b.Seed}, s.Grill.Hearth(s.Layout, s.Section)
	set := s.Grill.Setting(s.Weather, v.Top, v.Bottom, 0)
	all, known := make([]guess, guesses), b.record()
	for i := range all {
		all[i].traits = b.drawTraits(&d, known)
		all[i].coals.RiseK, _ = h.Established(&all[i].traits, startBurnt, set)
	}
	low, _, high := quantiles(all, func(g *guess) float64 { return g.coals.RiseK })
	middle := s.levels()(v)
	return Range{min(s.Weather.AirC+low, middle), middle, max(s.Weather.AirC+high, middle)}
}
