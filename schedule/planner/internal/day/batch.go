package day

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/spread"
)

// waysAt simulates a lot in one place.
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
	sd := math.Log(t[2]/t[1]) / spread.ZTenth
	w := Way{Kind: schedule.StageBare, Direct: s.Direct, LevelC: s.LevelC, AirC: s.LevelC, Band: s.Band, Spread: spread.Spread{S: sd}, Flips: it.Cut.Flips}
	w.First = spread.Paces(d.Z, func(z float64) float64 { return t[1] * w.Spread.Factor(z) })
	return w
}
