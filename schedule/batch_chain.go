package schedule

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/sequence"
)

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
		second := b.secondTask(h, gaps, covers)
		for i, r := range b.second {
			if w := b.ways[r.way]; w.sear && !r.oven {
				second.Modes[i].Closed = d.closedSears(w, b.it)
			}
		}
		c.Tasks = append(c.Tasks, second)
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
