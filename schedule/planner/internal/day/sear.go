package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// SearLagMinutes is how long a piece may wait between the smoke and the sear: no longer
// than the fire takes to be changed, for it stands below its minimum meanwhile.
const SearLagMinutes = 20

// SearStandMinutes is the longest that a piece is expected to stand off the heat before its sear:
// it is below its minimum, and the change of fire takes most of it (judgment).
const SearStandMinutes = 30

// Minutes of a sear in all, by the clock and on every face (common practice, no source):
// steaks and chops a minute and a half a side, pieces of birds four, tri-tip and picanha
// four a side, roasts two a face and eight to ten in all.
const (
	searSmall = 3.0
	searBird  = 4.0
	searThin  = 8.0
	searRoast = 9.0

	// searSD is how far a sear by the clock is off, in the logarithm (assumption).
	searSD = 0.1

	// searThinM is up to where a roast counts as one with two sides.
	searThinM = 0.065
)

// searMinutes is how long a piece is seared.
func searMinutes(it *Item, body heat.Body) float64 {
	switch {
	case it.Cut.Poultry:
		return searBird
	case it.Cut.Style == cut.Small:
		return searSmall
	case math.Min(body.ThicknessM, body.WidthM) <= searThinM:
		return searThin
	}
	return searRoast
}

// searedWays smokes a lot beside the coals and finishes it over them. The piece comes off
// the slow side where the sear and the rest after it bring its core to the target.
func (d *Day) searedWays(it *Item, l Lot, s Spot) []Way {
	k := kitchen{d: d, it: it, body: it.Body(l.MassKg), count: l.Count}
	k.base = Way{Kind: schedule.StageBare, LevelC: s.LevelC, Band: s.Band, Sear: true}
	minutes := searMinutes(it, k.body)
	k.in = heat.Grate(actualC(s.LevelC, it.Cut.Style), d.Outdoors)
	k.base.PullC = k.pullForSear(minutes)
	if !k.aim(nil, l.Count) {
		return nil
	}
	k.start()
	if k.sim.RunTo(k.base.PullC, LongestCookS) != heat.Reached {
		return nil
	}
	w := k.base
	w.ModelWrap, w.WrapC = k.minutes(), k.base.PullC
	k.sear(&k.sim, minutes)
	w.ModelDone = w.ModelWrap + minutes
	w.PullC = math.Max(k.sim.CoreC(), w.WrapC)
	w.First = spread.Paces(d.Z, func(z float64) float64 { return w.ModelWrap * w.Spread.Factor(z) })
	w.Second = spread.Paces(d.Z, func(z float64) float64 { return minutes * math.Exp(searSD*z) })
	return []Way{k.keep(w)}
}

// pullForSear is the core at which a piece leaves the slow side, degC: so that it comes to
// its target in the sear and the usual rest after it; and, for what may carry its surface
// inside, no less than its published minimum, since a sear earns no credit. A large roast
// goes on rising for an hour: it is carved before, so that is not counted on.
func (k *kitchen) pullForSear(minutes float64) float64 {
	least := k.it.TargetC - searPullMostK
	if safety.SurfaceInside(k.it.Category, k.it.Prep) {
		least = k.it.Verdict.Minimum.CoreC
	}
	const firstGuessK, closeK = 5.0, 0.1
	pullC := k.it.TargetC - firstGuessK
	for range 6 {
		k.start()
		if k.sim.RunTo(math.Max(pullC, least), LongestCookS) != heat.Reached {
			break
		}
		k.sear(&k.sim, minutes)
		off := k.restedC() - k.it.TargetC
		if math.Abs(off) < closeK || pullC-off < k.body.StartC {
			break
		}
		pullC -= off
	}
	return math.Max(math.Min(pullC, k.it.TargetC), least)
}

// searPullMostK is how far below its target a piece comes off for the sear at the most:
// 15 F (common practice, no source).
const searPullMostK = 15 / 1.8

// restedC is the warmest that the piece at hand is until the end of its usual rest.
func (k *kitchen) restedC() float64 {
	rest := k.sim
	rest.Change(heat.Counter(RoomC))
	end := math.Max(k.it.RestMinutes(), k.it.Cut.Rest.IdealMinutes) * 60
	warmest, step := k.sim.CoreC(), math.Max(end/6, 30)
	for at := 0.0; at < end; at += step {
		rest.RunFor(step)
		warmest = math.Max(warmest, rest.CoreC())
	}
	return warmest
}

// sear puts a piece over the coals for so many minutes, turned half-way.
func (k *kitchen) sear(sim *heat.Sim, minutes float64) {
	var slab heat.Slab
	slab.StartFrom(k.body, sim, k.d.directFire(SearBand(k.it)))
	slab.SearedS(minutes * 60)
	sim.TakeSlab(&slab)
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
