package schedule

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
)

const (
	longestDirectS = 3 * 3600
	// searLagMinutes is how long a piece may wait between the smoke and the sear,
	// while the fire is changed.
	searLagMinutes = 45
	// searRiseK is what a sear adds to the core: the piece comes off the indirect
	// side so much below its target (about 15 F, common practice, no source).
	searRiseK = 8
	// searFireC is the hot face over a heap of coals; the calibrated figure of 500 F
	// is for an even layer (assumption).
	searFireC = 315
)

// directFire is the fire under direct cooking in a band: with the lid on for an
// even layer, off for a sear.
func (d *day) directFire(band string) heat.Fire {
	f := heat.DirectFire(band != bandSear).AtAltitude(d.outdoors.AltitudeM)
	if band == bandSear {
		f.Hot.AirC, f.Hot.WallC = searFireC, searFireC
	}
	return f
}

// directWays cooks a lot over the coals, turned half-way.
func (d *day) directWays(it *item, l lot, s spot) []way {
	body, fire := it.body(l.massKg), d.directFire(s.band)
	w := way{kind: StageBare, direct: true, levelC: s.levelC, band: s.band, pullC: it.targetC, flips: max(it.cut.Flips, 1)}
	var slab heat.Slab
	if it.final {
		slab.Start(body, fire)
		slab.RunToTurnedOnce(it.targetC, longestDirectS)
		w.pullC -= math.Max(slab.CarryOver(heat.Counter(roomC)).CoreC-it.targetC, 0)
	}
	slab.Start(body, fire)
	if _, status := slab.RunToTurnedOnce(w.pullC, longestDirectS); status != heat.Reached {
		return nil
	}
	w.modelDone = slab.ElapsedS() / 60
	w.spread = spreadOf(it.cut, true, s.levelC)
	w.spread.Grate = grateShareDirect(body, fire, w.pullC)
	w.spread = w.spread.slowestOf(l.count)
	w.first = paces(d.z, func(z float64) float64 { return w.modelDone * w.spread.factor(z) })
	return []way{w}
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
	return math.Max(math.Log(at(-grateErrorK)/at(grateErrorK))/2, 0)
}

// searedWays smokes a lot beside the coals and finishes it over them.
func (d *day) searedWays(it *item, l lot, s spot) []way {
	k := kitchen{d: d, it: it, body: it.body(l.massKg), in: heat.Grate(s.levelC, d.outdoors)}
	k.base = way{kind: StageBare, levelC: s.levelC, airC: s.levelC, band: s.band, pullC: it.targetC - searRiseK, sear: true}
	k.base.spread = k.spread(l.count)
	k.start()
	if k.sim.RunTo(k.base.pullC, longestCookS) != heat.Reached {
		return nil
	}
	w := k.base
	w.modelWrap, w.wrapC = k.minutes(), w.pullC
	var slab heat.Slab
	slab.StartFrom(k.body, &k.sim, d.directFire(searBand(it)))
	slab.RunToTurnedOnce(it.targetC, longestDirectS)
	sear := slab.ElapsedS() / 60
	w.modelDone = w.modelWrap + sear
	w.pullC = it.targetC
	direct := spreadOf(it.cut, true, s.levelC)
	w.first = paces(d.z, func(z float64) float64 { return w.modelWrap * w.spread.factor(z) })
	w.second = paces(d.z, func(z float64) float64 { return math.Max(sear*direct.factor(z), 1) })
	return []way{k.keep(w)}
}

// searBand is the fire a sear wants: a heap for what the cut sears on, else an
// even layer.
func searBand(it *item) string {
	for _, p := range it.cut.Places {
		if p.Direct && p.Band == bandHot {
			return bandHot
		}
	}
	return bandSear
}

// searSpot is where a sear happens: over an even layer, or over a heap.
func searSpot(it *item) spot {
	if band := searBand(it); band == bandSear {
		return spot{direct: true, band: band, levelC: celsius(600)}
	}
	return spot{direct: true, band: bandHot, levelC: celsius(375)}
}
