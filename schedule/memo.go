package schedule

import (
	"slices"

	"example.com/cookday/schedule/internal/heat"
)

// memo keeps simulated ways and holds between plans of much the same day, as when
// remedies are tried: what they take depends on nothing that is not in the key.
type memo struct {
	cooks map[cookKey][]way
	holds map[holdKey]float64
}

func newMemo() *memo {
	return &memo{cooks: map[cookKey][]way{}, holds: map[holdKey]float64{}}
}

type cookKey struct {
	cut, wrap, finish           string
	massKg, thicknessM, startC  float64
	targetC, wrapFromC, wrapMin float64
	count, night                int
	final, typed, oven, frozen  bool
	spot                        spot
	outdoors                    heat.Outdoors
	z, holdMin                  float64
}

func (d *day) cookKey(it *item, l lot, s spot) cookKey {
	k := cookKey{
		cut: it.cut.Name, finish: it.dish.Finish, massKg: l.massKg, thicknessM: float64(it.dish.Thickness), targetC: it.targetC,
		count: l.count, night: d.longestQuiet(), final: it.final, typed: it.dish.Target != nil, spot: s, outdoors: d.outdoors, z: d.z,
		startC: it.body(l.massKg).StartC, oven: d.req.Oven != nil, frozen: it.fromFrozen, holdMin: it.holdMinutes(),
	}
	if w := it.dish.Wrap; w != nil {
		k.wrap = w.With
		if w.From != nil {
			k.wrapFromC = float64(*w.From)
		}
		if w.After != nil {
			k.wrapMin = unitMinutes(*w.After)
		}
	}
	return k
}

// remembered is waysAt, simulated once.
func (d *day) remembered(it *item, l lot, s spot) []way {
	k := d.cookKey(it, l, s)
	ways, ok := d.memo.cooks[k]
	if !ok {
		ways = d.waysAt(it, l, s)
		d.memo.cooks[k] = ways
	}
	return slices.Clone(ways)
}

// holdKey is what a hold at its poor end depends on. A state belongs to one way and
// does not change.
type holdKey struct {
	state                       *heat.Sim
	method, with                string
	pieces                      int
	vent, levelC, nightC, ovenC float64
}

func (d *day) holdKey(w way, method string, pieces int, vent float64) holdKey {
	return holdKey{w.state, method, w.with, pieces, vent, w.levelC, d.night.AirC, d.ovenC()}
}

// hold is the minutes of a hold, worked out once. Without a memo they are worked out.
func (m *memo) hold(k holdKey, minutes func() float64) float64 {
	if m == nil {
		return minutes()
	}
	if _, ok := m.holds[k]; !ok {
		m.holds[k] = minutes()
	}
	return m.holds[k]
}
