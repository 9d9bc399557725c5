package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// hands are the minutes of work at a put-on, a wrap, the light and a change of
// fire (assumptions).
const (
	HandsOnLarge = 5
	HandsOnSmall = 3
	HandsWrap    = 5
	HandsLight   = 15
	HandsChange  = 10
)

func (b *Batch) HandsOn() int {
	if b.It.Cut.Quick() {
		return HandsOnSmall
	}
	return HandsOnLarge
}

// soonest is how many minutes any of the fires takes at the least from its lighting until
// food goes on.
func (d *Arranger) soonest(h Hearth) int {
	least := math.MaxInt
	for _, f := range h.Fires {
		least = min(least, d.Grill.SetupMinutes(f))
	}
	return least
}

// chain states the batch for the solver and remembers what its modes stand for.
func (d *Arranger) chain(b *Batch, h Hearth, night day.NightFires) sequence.Chain {
	c := sequence.Chain{Serve: b.It.Serve, HoldCost: b.holdCost(), Group: b.group}
	h.apart = d.sleepsBy(b.It.Serve)
	b.First, b.second = d.modeRefs(b, h, night)
	stages := 1
	for _, w := range b.Ways {
		stages = max(stages, w.Stages())
	}
	gaps := d.gaps(b)
	first := sequence.Task{StartHands: b.HandsOn(), EndHands: sequence.Unattended, LagMax: b.lag(stages)}
	ready := d.soonest(h)
	for i, r := range b.First {
		w := b.Ways[r.way]
		m := sequence.Mode{Area: b.Area(h, r.places, b.LoadIn(w, false)), Minutes: []int{b.firstMinutes(w, stages)}, Places: AsPlaces(r.places), Gap: gaps[r.way]}
		if i > 0 && b.First[i-1].way == r.way && b.First[i-1].night == r.night { // but for the place it is the same
			m.Cost, m.Closed = first.Modes[i-1].Cost, first.Modes[i-1].Closed
		} else {
			m.Cost, m.Closed = w.Cost+d.missCost(b, w), d.closedStarts(w, r.night, b.It, ready)
		}
		first.Modes = append(first.Modes, m)
	}
	c.Tasks = []sequence.Task{first}
	if stages == 2 {
		second := b.secondTask(h, gaps)
		for i, r := range b.second {
			if w := b.Ways[r.way]; w.Sear && !r.oven {
				second.Modes[i].Closed = d.closedSears(w, b.It)
			}
		}
		c.Tasks = append(c.Tasks, second)
	}
	return c
}

// holdCost is what a minute of waiting costs those who eat of the batch: of a dish in
// several, its share.
func (b *Batch) holdCost() int {
	all := 0
	for _, l := range b.It.Lots {
		all += l.Count
	}
	return (b.It.Cut.HoldCostTenths*b.Count + all - 1) / all
}

// lag is how long a batch may wait between its stages: not at all for a wrap,
// while the fire is changed for a sear.
func (b *Batch) lag(stages int) int {
	if stages == 2 && b.It.Dish.Finish != "" {
		return day.SearLagMinutes
	}
	return 0
}

// firstMinutes is the first stage in whole minutes. Where others of the dish's
// ways have two stages and this one does not, its last minute stands for the
// second: the solver wants the same number of stages of all.
func (b *Batch) firstMinutes(w day.Way, stages int) int {
	m := int(math.Ceil(w.First.Planned))
	if stages == 2 && w.Stages() == 1 {
		m--
	}
	return max(m, 1)
}

func (b *Batch) secondTask(h Hearth, gaps []sequence.Gap) sequence.Task {
	t := sequence.Task{StartHands: HandsWrap, EndHands: sequence.Unattended}
	for _, r := range b.second {
		w := b.Ways[r.way]
		m := sequence.Mode{Area: b.Area(h, r.places, b.LoadIn(w, true)), Minutes: make([]int, len(b.First)), Gap: gaps[r.way]}
		stage := w.Second
		if r.oven {
			stage = w.InOven
			m.Area, m.Places, m.Cost = min(m.Area, ovenRoomCm2), []sequence.Place{{Fire: sequence.OvenFire}}, ovenCost
		} else {
			m.Places, m.Cost = AsPlaces(r.places), r.cost
		}
		for i, f := range b.First {
			if f.way == r.way && (r.oven || f.night == r.night) {
				m.Minutes[i] = max(int(math.Ceil(stage.Planned)), 1)
			}
		}
		t.Modes = append(t.Modes, m)
	}
	return t
}

func AsPlaces(ps []Place) []sequence.Place {
	out := make([]sequence.Place, len(ps))
	for i, p := range ps {
		out[i] = sequence.Place{Fire: p.Fire, Zone: p.Zone}
	}
	return out
}

// sleepsBy says whether people sleep so near a meal that a sear just before it may fall
// into that: a change of fire leaves time between a slow cook and its sear.
func (d *Arranger) sleepsBy(serve int) bool {
	const before, after = 240, 60
	return slices.ContainsFunc(d.Quiet, func(q day.Span) bool { return q.From <= serve+before && q.To >= serve-after })
}
