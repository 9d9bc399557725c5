package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/spread"
)

// WaysAt simulates a lot in one place.
func (d *Day) WaysAt(it *Item, l Lot, s Spot) []Way {
	switch {
	case it.Cut.Style == cut.Timed:
		return []Way{d.timedWay(it, s)}
	case it.FromFrozen:
		return d.frozenWays(it, l, s)
	}
	return it.keptHot(d.simulated(it, l, s))
}

func (d *Day) simulated(it *Item, l Lot, s Spot) []Way {
	switch {
	case s.Direct:
		return d.directWays(it, l, s)
	case it.Dish.Finish != "":
		return d.searedWays(it, l, s)
	}
	return d.indirectWays(it, l, s.Band, s.LevelC)
}

// timedWay is a plain item that takes a time, not a temperature.
func (d *Day) timedWay(it *Item, s Spot) Way {
	t := it.Cut.Timed
	pace := timedPace(it, s)
	sd := math.Log(t[2]/t[1]) / spread.ZTenth
	w := Way{Kind: schedule.StageBare, Direct: s.Direct, LevelC: s.LevelC, AirC: s.LevelC, Band: s.Band, Spread: spread.Spread{S: sd}, Flips: it.Cut.Flips}
	w.First = spread.Paces(d.Z, func(z float64) float64 { return pace * t[1] * w.Spread.Factor(z) })
	return w
}

// timedPace is how the minutes of the catalogue go with the heat: they are those of the first
// heat that a cut likes in such a place, and pass as minutes over the coals do with how hot it
// is (a form of common practice, no source).
func timedPace(it *Item, s Spot) float64 {
	for _, p := range it.Cut.Places {
		if p.Direct == s.Direct {
			return directPace(s.LevelC) / directPace(p.LevelsC[0])
		}
	}
	return 1
}

// CurvePoints is how many samples a predicted curve has, about.
const CurvePoints = 40

// LongestCookS bounds one simulated cook; nothing that takes longer than the
// horizon can be planned.
const LongestCookS = 48 * 3600

// indirectWays simulates the ways of cooking a lot beside the coals at one
// level: bare, wrapped at the habit's or the asked temperature, and, where
// there are quiet hours, wrapped later than that because nobody is up. It
// returns no way if the core never arrives there.
func (d *Day) indirectWays(it *Item, l Lot, band string, levelC float64) []Way {
	k := kitchen{d: d, it: it, body: it.Body(l.MassKg), count: l.Count}
	k.base = Way{Kind: schedule.StageBare, LevelC: levelC, Band: band, PullC: it.TargetC}
	if it.final {
		k.in = heat.Grate(actualC(levelC, it.Cut.Style), d.Outdoors)
		k.start()
		k.base.PullC, _ = k.sim.PullForPeak(it.TargetC, heat.Counter(RoomC), LongestCookS)
	}
	k.setTenderClock()
	wraps, bare := it.Wraps()
	var ways []Way
	if bare {
		ways = k.bare(ways)
	}
	for _, w := range wraps {
		if w.After != nil && k.tenderS == 0 {
			ways = k.clocked(ways, w)
			continue
		}
		ways = k.wrapped(ways, w)
		ways = k.waiting(ways, w)
	}
	return ways
}

// Unhabitual is the cost of cooking bare what is usually wrapped, or hotter or
// cooler than usual: enough to decide between near-equals (assumption).
const Unhabitual = 60

func (k *kitchen) bare(ways []Way) []Way {
	if !k.aim(nil, k.count) {
		return ways
	}
	k.start()
	if !k.finish(&k.sim) {
		return ways
	}
	w := k.base
	w.PullC, w.ModelDone = k.sim.CoreC(), k.minutes()
	w.First = spread.Paces(k.d.Z, func(z float64) float64 { return w.ModelDone * w.Spread.Factor(z) })
	if wraps, _ := k.it.Wraps(); len(wraps) > 0 {
		w.Cost += Unhabitual
	}
	return append(ways, k.keep(w))
}

func (k *kitchen) wrapped(ways []Way, wrap schedule.Wrap) []Way {
	if !k.aim(&wrap, k.count) {
		return ways
	}
	k.start()
	if !k.toWrap(&k.sim, wrap) {
		return ways
	}
	if k.over(&k.sim) { // done before it would have been wrapped
		return k.bare(ways)
	}
	w := k.base
	w.With, w.WrapC, w.ModelWrap = wrap.With, k.sim.CoreC(), k.minutes()
	w.InOven = k.ovenFinish(w)
	k.sim.Change(Covered(k.in, wrap.With))
	if !k.finish(&k.sim) {
		return ways
	}
	w.PullC, w.ModelDone = k.sim.CoreC(), k.minutes()
	w.Fixed = wrap.After != nil
	w.First = spread.Paces(k.d.Z, func(z float64) float64 {
		if w.Fixed {
			return w.ModelWrap
		}
		return w.ModelWrap * w.Spread.Factor(z)
	})
	w.Second = spread.Paces(k.d.Z, func(z float64) float64 {
		return math.Max((w.ModelDone-w.ModelWrap)*w.Spread.Factor(z), 1)
	})
	return append(ways, k.keep(w))
}

// ovenFinish is the second stage in the kitchen oven at the grate's level, where
// there is one: it frees the grate. The air of an oven is steadier than a fire's,
// but the spread stays that of the cut.
func (k *kitchen) ovenFinish(w Way) spread.Pace {
	if !k.d.ovenFinishes() {
		return spread.Pace{}
	}
	s := k.sim
	s.Change(heat.Oven(k.base.LevelC).AtAltitude(k.d.Outdoors.AltitudeM).InFoil())
	if !k.finish(&s) {
		return spread.Pace{}
	}
	rest := s.ElapsedS()/60 - w.ModelWrap
	return spread.Paces(k.d.Z, func(z float64) float64 { return math.Max(rest*w.Spread.Factor(z), 1) })
}

// ovenFinishes says whether the kitchen oven is there to cook in.
func (d *Day) ovenFinishes() bool { return d.Req.Oven != nil && !d.warms }

func (k *kitchen) keep(w Way) Way {
	end := k.sim
	w.State = &end
	return w
}
