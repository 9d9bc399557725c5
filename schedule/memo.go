package schedule

import (
	"slices"

	"example.com/cookday/schedule/internal/heat"
)

// memo keeps simulated ways between plans of much the same day, as when remedies
// are tried: what a cook takes depends on nothing that is not in the key.
type memo map[cookKey][]way

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
	ways, ok := d.memo[k]
	if !ok {
		ways = d.waysAt(it, l, s)
		d.memo[k] = ways
	}
	return slices.Clone(ways)
}
