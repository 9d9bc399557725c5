package schedule

import (
	"context"
	"fmt"
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/sequence"
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

// hands are the minutes of work at a put-on, a wrap, the light and a change of
// fire (assumptions).
const (
	handsOnLarge = 5
	handsOnSmall = 3
	handsWrap    = 5
	handsLight   = 15
	handsChange  = 10
)

func (b *batch) handsOn() int {
	if b.it.cut.Style == cut.Small || b.it.cut.Style == cut.Timed {
		return handsOnSmall
	}
	return handsOnLarge
}

// chain states the batch for the solver and remembers what its modes stand for.
func (d *day) chain(b *batch, h hearth, night nightFires) sequence.Chain {
	c := sequence.Chain{Serve: b.it.serve, HoldCost: b.it.cut.HoldCostTenths, Group: b.group}
	b.first, b.second = b.modeRefs(h, night)
	stages := 1
	for _, w := range b.ways {
		stages = max(stages, w.stages())
	}
	gaps, covers := d.gaps(b), b.covers()
	first := sequence.Task{StartHands: b.handsOn(), EndHands: sequence.Unattended, LagMax: b.lag(stages)}
	for _, r := range b.first {
		w := b.ways[r.way]
		m := sequence.Mode{Area: b.area(h, r.places, covers), Cost: w.cost, Minutes: []int{b.firstMinutes(w, stages)}, Places: asPlaces(r.places)}
		m.Closed = d.closedStarts(w, r.night, b.it)
		m.Gap = gaps[r.way]
		first.Modes = append(first.Modes, m)
	}
	c.Tasks = []sequence.Task{first}
	if stages == 2 {
		c.Tasks = append(c.Tasks, b.secondTask(h, gaps, covers))
	}
	return c
}

// lag is how long a batch may wait between its stages: not at all for a wrap,
// while the fire is changed for a sear.
func (b *batch) lag(stages int) int {
	if stages == 2 && b.it.dish.Finish != "" {
		return searLagMinutes
	}
	return 0
}

// firstMinutes is the first stage in whole minutes. Where others of the dish's
// ways have two stages and this one does not, its last minute stands for the
// second: the solver wants the same number of stages of all.
func (b *batch) firstMinutes(w way, stages int) int {
	m := int(math.Ceil(w.first.planned))
	if stages == 2 && w.stages() == 1 {
		m--
	}
	return max(m, 1)
}

func (b *batch) secondTask(h hearth, gaps []sequence.Gap, covers float64) sequence.Task {
	t := sequence.Task{StartHands: handsWrap, EndHands: sequence.Unattended}
	for _, r := range b.second {
		w := b.ways[r.way]
		m := sequence.Mode{Area: b.area(h, r.places, covers), Minutes: make([]int, len(b.first)), Gap: gaps[r.way]}
		stage := w.second
		if r.oven {
			stage = w.inOven
			m.Area, m.Places, m.Cost = min(m.Area, ovenRoomCm2), []sequence.Place{{Fire: sequence.OvenFire}}, ovenCost
		} else {
			m.Places = asPlaces(r.places)
		}
		for i, f := range b.first {
			if f.way == r.way && (r.oven || f.night == r.night) {
				m.Minutes[i] = max(int(math.Ceil(stage.planned)), 1)
			}
		}
		t.Modes = append(t.Modes, m)
	}
	return t
}

// covers is what the batch takes of a zone's room, m2.
func (b *batch) covers() float64 { return takes(b.it.footprint(b.massKg)) * float64(b.count) }

// area is what the batch takes of a zone, in whole square centimetres, where it
// covers so much. A single piece larger than the room of the zone takes all of it.
func (b *batch) area(h hearth, places []place, coversM2 float64) int {
	area := math.Ceil(coversM2*1e4 - 1e-6)
	if b.count == 1 {
		for _, p := range places {
			area = math.Min(area, math.Floor(h.room(p)*1e4))
		}
	}
	return int(area)
}

func asPlaces(ps []place) []sequence.Place {
	out := make([]sequence.Place, len(ps))
	for i, p := range ps {
		out[i] = sequence.Place{Fire: p.fire, Zone: p.zone}
	}
	return out
}

// label names the batch for people.
func (b *batch) label(of int) string {
	if of > 1 {
		return fmt.Sprintf("%s, batch %d", b.it.dish.Name, b.number)
	}
	return b.it.dish.Name
}
