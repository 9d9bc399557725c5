package day

import (
	"slices"

	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
)

// Memo keeps simulated ways and holds between plans of much the same day, as when
// remedies are tried: what they take depends on nothing that is not in the key.
type Memo struct {
	cooks map[cookKey][]Way
	holds map[holdKey]float64
}

func NewMemo() *Memo {
	return &Memo{cooks: map[cookKey][]Way{}, holds: map[holdKey]float64{}}
}

type cookKey struct {
	cut, wrap, finish           string
	massKg, thicknessM, startC  float64
	targetC, wrapFromC, wrapMin float64
	count, night                int
	final, typed, oven, frozen  bool
	spot                        Spot
	outdoors                    heat.Outdoors
	z, holdMin                  float64
}

func (d *Day) cookKey(it *Item, l Lot, s Spot) cookKey {
	k := cookKey{
		cut: it.Cut.Name, finish: it.Dish.Finish, massKg: l.MassKg, thicknessM: float64(it.Dish.Thickness), targetC: it.TargetC,
		count: l.Count, night: d.LongestQuiet(), final: it.final, typed: it.Dish.Target != nil, spot: s, outdoors: d.Outdoors, z: d.Z,
		startC: it.Body(l.MassKg).StartC, oven: d.ovenFinishes(), frozen: it.FromFrozen, holdMin: it.holdMinutes(),
	}
	if w := it.Dish.Wrap; w != nil {
		k.wrap = w.With
		if w.From != nil {
			k.wrapFromC = float64(*w.From)
		}
		if w.After != nil {
			k.wrapMin = instant.UnitMinutes(*w.After)
		}
	}
	return k
}

// Remembered is waysAt, simulated once.
func (d *Day) Remembered(it *Item, l Lot, s Spot) []Way {
	k := d.cookKey(it, l, s)
	ways, ok := d.memo.cooks[k]
	if !ok {
		ways = d.WaysAt(it, l, s)
		for i := range ways {
			ways[i].Z = d.Z
		}
		d.memo.cooks[k] = ways
	}
	return slices.Clone(ways)
}

// holdKey is what a hold at its poor end depends on. A state belongs to one way and
// does not change.
type holdKey struct {
	state               *heat.Sim
	waiting             Waiting
	with                string
	levelC, nightC, box float64
}

func (d *Day) holdKey(w Way, h Waiting) holdKey {
	return holdKey{w.State, h, w.With, w.LevelC, d.Night.AirC, d.boxOfOne()}
}

// hold is the minutes of a hold, worked out once. Without a memo they are worked out.
func (m *Memo) hold(k holdKey, minutes func() float64) float64 {
	if m == nil {
		return minutes()
	}
	if _, ok := m.holds[k]; !ok {
		m.holds[k] = minutes()
	}
	return m.holds[k]
}
