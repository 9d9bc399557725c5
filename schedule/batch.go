package schedule

import (
	"context"
	"fmt"
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// mostBatches is how many batches a day may have; more is no day at one grill.
const mostBatches = 24

// batch is the pieces of a dish that share the grate at one time, and the ways
// they may cook.
type batch struct {
	it     *item
	number int // from 1, within the dish
	massKg float64
	count  int
	ways   []way
	group  int // like batches of one dish share a number > 0
	first  []modeRef
	second []modeRef
}

// modeRef says what a mode of the solver stands for.
type modeRef struct {
	way    int
	places []place
	oven   bool
	night  bool // its fire lasts through the quiet hours untended
}

// leastBatches is how many batches there are however large the grate is. It is known
// before anything is simulated, so that a menu beyond all bounds costs nothing.
func (d *day) leastBatches() int {
	n := 0
	for _, it := range d.items {
		n += len(it.lots)
	}
	return n
}

// batches splits the dishes by the room on the grate and simulates their ways.
func (d *day) batches(ctx context.Context, h hearth, fit fitting) ([]*batch, error) {
	var all []*batch
	group := 0
	for i := range d.items {
		it := &d.items[i]
		number := 0
		for _, l := range it.lots {
			ways, err := d.waysOf(ctx, it, l, h)
			if err != nil {
				return nil, err
			}
			sizes := split(l.count, roomFor(it, l, ways, h, fit))
			group++
			for _, n := range sizes {
				number++
				b := &batch{it: it, number: number, massKg: l.massKg, count: n, ways: ways}
				if len(sizes) > 1 && n == sizes[len(sizes)-1] {
					b.group = group
				}
				all = append(all, b)
			}
		}
	}
	return all, nil
}

// fitting chooses the place that sets the size of a batch.
type fitting func(a, b int) int

func roomiest(a, b int) int  { return max(a, b) }
func narrowest(a, b int) int { return min(a, b) }

// roomFor is how many pieces of a lot fit at once in the place that fit chooses
// of all that it may cook in; at least 1, so that a piece too large for the grate
// is found by the solver and said, not dropped.
func roomFor(it *item, l lot, ways []way, h hearth, fit fitting) int {
	best := 0
	each := takes(it.footprint(l.massKg))
	for _, w := range ways {
		for _, p := range h.placesOf(w) {
			if n := int(h.room(p)/each + 1e-9); n > 0 {
				if best == 0 {
					best = n
				}
				best = fit(best, n)
			}
		}
	}
	return max(best, 1)
}

// split parts n pieces into as few even batches as hold most each, larger first.
func split(n, most int) []int {
	count := (n + most - 1) / most
	sizes := make([]int, count)
	for i := range sizes {
		sizes[i] = n / count
		if i < n%count {
			sizes[i]++
		}
	}
	return sizes
}

// waysOf simulates all ways of a lot in the fires on offer.
func (d *day) waysOf(ctx context.Context, it *item, l lot, h hearth) ([]way, error) {
	var ways []way
	for rank, s := range it.spots() {
		if err := ctx.Err(); err != nil { // a place takes milliseconds
			return nil, err
		}
		for _, w := range d.remembered(it, l, s) {
			if len(h.placesOf(w)) == 0 {
				continue
			}
			w.cost += rank * unhabitual / 2
			ways = append(ways, w)
		}
	}
	return ways, nil
}

// waysAt simulates a lot in one place.
func (d *day) waysAt(it *item, l lot, s spot) []way {
	switch {
	case it.cut.Style == cut.Timed:
		return []way{d.timedWay(it, s)}
	case it.fromFrozen:
		return d.frozenWays(it, l, s)
	}
	return it.keptHot(d.simulated(it, l, s))
}

func (d *day) simulated(it *item, l lot, s spot) []way {
	switch {
	case s.direct:
		return d.directWays(it, l, s)
	case it.dish.Finish != "":
		return d.searedWays(it, l, s)
	}
	return d.indirectWays(it, l, s.band, s.levelC)
}

// timedWay is a plain item that takes a time, not a temperature.
func (d *day) timedWay(it *item, s spot) way {
	t := it.cut.Timed
	sd := math.Log(t[2]/t[1]) / zTenth
	w := way{kind: StageBare, direct: s.direct, levelC: s.levelC, airC: s.levelC, band: s.band, spread: spread{S: sd}, flips: it.cut.Flips}
	w.first = paces(d.z, func(z float64) float64 { return t[1] * w.spread.factor(z) })
	return w
}

// label names the batch for people. Of unequal pieces it says which they are.
func (b *batch) label(of int, u unit.System) string {
	name := b.it.dish.Name
	if of > 1 {
		name = fmt.Sprintf("%s, batch %d", name, b.number)
		if len(b.it.lots) > 1 {
			name += " (" + pieces(u, b.count, b.massKg) + ")"
		}
	}
	return name
}

// pieces says how many like pieces there are, and how heavy each is.
func pieces(u unit.System, n int, kg float64) string {
	if n > 1 {
		return fmt.Sprintf("%d × %s", n, mass(u, kg))
	}
	return mass(u, kg)
}
