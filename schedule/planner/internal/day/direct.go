package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

const (
	longestDirectS = 3 * 3600
	// SearLagMinutes is how long a piece may wait between the smoke and the sear,
	// while the fire is changed.
	SearLagMinutes = 45
	// searRiseK is what a sear adds to the core: the piece comes off the indirect
	// side so much below its target (about 15 F, common practice, no source).
	searRiseK = 8
	// searFireC is the hot face over a heap of coals; the calibrated figure of 500 F
	// is for an even layer (assumption).
	searFireC = 315
)

// directFire is the fire under direct cooking in a band: with the lid on for an
// even layer, off for a sear.
func (d *Day) directFire(band string) heat.Fire {
	f := heat.DirectFire(band != schedule.BandSear).AtAltitude(d.Outdoors.AltitudeM)
	if band == schedule.BandSear {
		f.Hot.AirC, f.Hot.WallC = searFireC, searFireC
	}
	return f
}

// directWays cooks a lot over the coals, turned half-way.
func (d *Day) directWays(it *Item, l Lot, s Spot) []Way {
	body, fire := it.Body(l.MassKg), d.directFire(s.Band)
	w := Way{Kind: schedule.StageBare, Direct: true, LevelC: s.LevelC, Band: s.Band, PullC: it.TargetC, Flips: max(it.Cut.Flips, 1)}
	var slab heat.Slab
	if it.final {
		slab.Start(body, fire)
		slab.RunToTurnedOnce(it.TargetC, longestDirectS)
		w.PullC -= math.Max(slab.CarryOver(heat.Counter(RoomC)).CoreC-it.TargetC, 0)
	}
	slab.Start(body, fire)
	if _, status := slab.RunToTurnedOnce(w.PullC, longestDirectS); status != heat.Reached {
		return nil
	}
	w.ModelDone = slab.ElapsedS() / 60
	w.Spread = spreadOf(it.Cut, true, s.LevelC)
	w.Spread.Grate = grateShareDirect(body, fire, w.PullC)
	w.Spread = w.Spread.SlowestOf(l.Count)
	w.First = spread.Paces(d.Z, func(z float64) float64 { return w.ModelDone * w.Spread.Factor(z) })
	return []Way{w}
}

// grateShareDirect is what the shared error of the grate does to a cook over the
// coals: two runs without a turn, which feel it as one with a turn does.
func grateShareDirect(b heat.Body, f heat.Fire, pullC float64) float64 {
	at := func(dK float64) float64 {
		g := f
		g.Hot.AirC, g.Hot.WallC = g.Hot.AirC+dK, g.Hot.WallC+dK
		g.Top.AirC, g.Top.WallC = g.Top.AirC+dK, g.Top.WallC+dK
		var s heat.Slab
		s.Start(b, g)
		s.RunTo(pullC, 0, longestDirectS)
		return s.ElapsedS()
	}
	return math.Max(math.Log(at(-spread.GrateErrorK)/at(spread.GrateErrorK))/2, 0)
}

// searedWays smokes a lot beside the coals and finishes it over them.
func (d *Day) searedWays(it *Item, l Lot, s Spot) []Way {
	k := kitchen{d: d, it: it, body: it.Body(l.MassKg), in: heat.Grate(s.LevelC, d.Outdoors)}
	k.base = Way{Kind: schedule.StageBare, LevelC: s.LevelC, AirC: s.LevelC, Band: s.Band, PullC: it.TargetC - searRiseK, Sear: true}
	k.base.Spread = k.spread(l.Count)
	k.start()
	if k.sim.RunTo(k.base.PullC, LongestCookS) != heat.Reached {
		return nil
	}
	w := k.base
	w.ModelWrap, w.WrapC = k.minutes(), w.PullC
	var slab heat.Slab
	slab.StartFrom(k.body, &k.sim, d.directFire(SearBand(it)))
	slab.RunToTurnedOnce(it.TargetC, longestDirectS)
	sear := slab.ElapsedS() / 60
	w.ModelDone = w.ModelWrap + sear
	w.PullC = it.TargetC
	direct := spreadOf(it.Cut, true, s.LevelC)
	w.First = spread.Paces(d.Z, func(z float64) float64 { return w.ModelWrap * w.Spread.Factor(z) })
	w.Second = spread.Paces(d.Z, func(z float64) float64 { return math.Max(sear*direct.Factor(z), 1) })
	return []Way{k.keep(w)}
}

// SearBand is the fire a sear wants: a heap for what the cut sears on, else an
// even layer.
func SearBand(it *Item) string {
	for _, p := range it.Cut.Places {
		if p.Direct && p.Band == schedule.BandHot {
			return schedule.BandHot
		}
	}
	return schedule.BandSear
}

// SearSpot is where a sear happens: over an even layer, or over a heap.
func SearSpot(it *Item) Spot {
	if band := SearBand(it); band == schedule.BandSear {
		return Spot{Direct: true, Band: band, LevelC: unit.FToC(600)}
	}
	return Spot{Direct: true, Band: schedule.BandHot, LevelC: unit.FToC(375)}
}
