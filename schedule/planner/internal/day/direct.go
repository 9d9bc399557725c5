package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/planner/internal/spread"
)

const (
	longestDirectS = 3 * 3600
	// searFireC is the hot face over a heap of coals; the calibrated figure of 500 F
	// is for an even layer (assumption).
	searFireC = 315
)

// ThickM is from where a steak counts as thick: an inch and a quarter (common practice, no
// source).
const ThickM = 1.25 * 0.0254

// directPace is how the minutes over the coals go with how hot the grate over them is:
// minutes are those of the calibrated fire times directK / (T - 60 F). Fitted on published
// minutes at two heats of steaks, chops, burgers and the like (27 rows); a form of common
// practice, no source. Below 250 F coals are no cooler than that.
func directPace(levelC float64) float64 {
	const directK, coldF, coolestF = 310, 60, 250
	return directK / (math.Max(levelC*1.8+32, coolestF) - coldF)
}

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
	w.ModelDone = slab.ElapsedS() / 60 * directPace(s.LevelC)
	w.Spread = directScatter.mixed(directSwings(body, fire, w.PullC)).SlowestOf(l.Count)
	w.First = spread.Paces(d.Z, func(z float64) float64 { return w.ModelDone * w.Spread.Factor(z) })
	if it.Cut.Style != cut.Timed { // it waits as it would from beside the coals
		var end heat.Sim
		end.Start(body, heat.Counter(RoomC))
		end.TakeSlab(&slab)
		w.State = &end
	}
	return []Way{w}
}

// MinutesToCores are how many minutes over the coals a piece takes, at the model's own pace,
// until its middle has come to each of some temperatures in degC, ascending, in a cook that
// is turned at half of w. One that it does not come to takes as long as the model looks.
func (d *Day) MinutesToCores(it *Item, massKg float64, w Way, coresC ...float64) []float64 {
	pace := directPace(w.LevelC)
	turnS := w.ModelDone / pace * 60 / 2
	var slab heat.Slab
	slab.Start(it.Body(massKg), d.directFire(w.Band))
	out := make([]float64, len(coresC))
	for i, c := range coresC {
		if slab.ElapsedS() < turnS && slab.RunTo(c, 0, turnS-slab.ElapsedS()) == heat.TimedOut {
			slab.Flip()
		}
		if slab.ElapsedS() >= turnS {
			slab.RunTo(c, 0, longestDirectS)
		}
		out[i] = slab.ElapsedS() / 60 * pace
	}
	return out
}

// directSwings are the minutes over a fire that is cooler, and one that is hotter, than
// said, as shares of those over the fire itself: runs without a turn, which feel it as
// one with a turn does.
func directSwings(b heat.Body, f heat.Fire, pullC float64) (slow, fast float64) {
	at := func(dK float64) float64 {
		g := f
		g.Hot.AirC, g.Hot.WallC = g.Hot.AirC+dK, g.Hot.WallC+dK
		g.Top.AirC, g.Top.WallC = g.Top.AirC+dK, g.Top.WallC+dK
		var s heat.Slab
		s.Start(b, g)
		s.RunTo(pullC, 0, longestDirectS)
		return s.ElapsedS()
	}
	const swing = spread.NodeSD * spread.GrateErrorK
	middle := at(0)
	return at(-swing) / middle, at(swing) / middle
}
