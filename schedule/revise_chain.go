package schedule

import (
	"math"

	"example.com/cookday/schedule/internal/sequence"
)

// liveChain is a batch on the grate: its start is fixed, what is left takes the
// minutes of the belief at the asked chance, cut to what serving leaves so that
// a late dish does not stand in the way of a plan.
func (v *revision) liveChain(a *afoot, now int) sequence.Chain {
	w, b := v.counted(a, a.live), a.batch
	on, aside := v.day.minute(a.on.at), v.try.aside || a.condemned
	total := int(math.Ceil(w.total().planned))
	rest := int(math.Ceil(b.it.restMinutes()))
	serve, leastGap := b.it.serve, rest
	if total > on-serve-rest {
		leastGap = 0
		total = min(total, max(on-serve-rest, on-now+2))
		if aside {
			total = on - now + 2
		}
		if total > on-serve {
			serve = 0
			total = min(total, on)
		}
	}
	c := sequence.Chain{Serve: serve, HoldCost: b.it.cut.HoldCostTenths}
	gap := sequence.Gap{Min: leastGap, Ideal: rest, Max: sequence.NoLimit}
	if on-total-serve < gap.Min {
		gap.Min = 0
	}
	task := func(minutes int, places []place) sequence.Task {
		m := sequence.Mode{Area: b.area(v.hearth, places, b.covers()), Minutes: []int{max(minutes, 1)}, Places: asPlaces(places), Gap: gap}
		if aside {
			m.Area = 0 // it is there, whether there is room or not
		}
		if len(places) == 0 {
			m.Places = []sequence.Place{{Fire: sequence.OvenFire}}
		}
		return sequence.Task{StartHands: sequence.Unattended, EndHands: sequence.Unattended, Modes: []sequence.Mode{m}}
	}
	first, second := v.placesNow(a)
	split := int(math.Ceil(w.first.planned))
	if v.splits(a) && split >= total && total-leastLeft > on-now {
		split = total - leastLeft // as the cut way is placed
	}
	if !v.splits(a) || split >= total || split <= on-now {
		places := first
		if w.stages() > 1 && (!v.splits(a) || split <= on-now) {
			places = second
		}
		c.Tasks = []sequence.Task{task(total, places)}
	} else {
		c.Tasks = []sequence.Task{task(split, first), task(total-split, second)}
		if w.sear {
			c.Tasks[0].LagMax = searLagMinutes
		}
		if at := on - split; at > 0 && !v.day.inQuiet(v.day.at(float64(at))) {
			c.Tasks[1].StartHands = handsWrap
		}
	}
	c.Tasks[0].Modes[0].Closed = allBut(on)
	return c
}

// splits says whether a second stage is still to come.
func (v *revision) splits(a *afoot) bool {
	if a.live.sear {
		return true
	}
	return a.live.stages() > 1 && !(a.wrap.set && a.wrapMinute() < v.now.Sub(a.on.at).Minutes()+leastLeft)
}

// placesNow are the zones that a batch on the grate may be in, now and in its
// second stage; none stands for the oven.
func (v *revision) placesNow(a *afoot) (first, second []place) {
	if v.inOven(a) {
		return nil, nil
	}
	w, fireNow := a.live, v.fireNow()
	here := place{fireNow, 0}
	for z, zone := range v.hearth.zones[fireNow] {
		if zone.Direct == w.direct {
			here.zone = z
			break
		}
	}
	g := placeGroup{places: []place{here}}
	for _, p := range v.hearth.placesOf(w) {
		if p.fire != fireNow && !w.direct {
			g.places = append(g.places, p)
		}
	}
	if a.first != nil && a.first.oven {
		return g.places, nil
	}
	each := a.batch.covers()
	second = v.hearth.secondPlaces(a.batch.it, w, g, each, a.batch.count == 1)
	if len(second) == 0 {
		second = g.places
	}
	return g.places, second
}

// inOven says whether the piece is in the kitchen oven now.
func (v *revision) inOven(a *afoot) bool {
	return v.day.req.Oven != nil && (a.oven.set || a.first != nil && a.first.oven && a.wrap.set)
}
