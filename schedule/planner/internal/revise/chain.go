package revise

import (
	"math"
	"slices"

	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// liveChain is a batch on the grate: its start is fixed, what is left takes the
// minutes of the belief at the asked chance, cut to what serving leaves so that
// a late dish does not stand in the way of a plan.
func (v *Revision) liveChain(a *liveBatch, now int) sequence.Chain {
	w, b := v.counted(a, a.live), a.batch
	on, aside := v.day.Minute(a.on.at), v.attempt.aside || a.condemned
	total := int(math.Ceil(w.Total().Planned))
	rest := int(math.Ceil(b.It.RestMinutes()))
	serve, leastGap := b.It.Serve, rest
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
		if w.Sear && total <= on-serve-rest {
			leastGap = rest
		}
	}
	c := sequence.Chain{Serve: serve, HoldCost: b.It.Cut.HoldCostTenths}
	gap := sequence.Gap{Min: leastGap, Ideal: rest, Max: sequence.NoLimit}
	if on-total-serve < gap.Min {
		gap.Min = 0
	}
	task := func(minutes int, places []arrange.Place, wrapped bool) sequence.Task {
		m := sequence.Mode{Area: b.Area(v.hearth, places, b.LoadIn(w, wrapped)), Minutes: []int{max(minutes, 1)}, Places: arrange.AsPlaces(places), Gap: gap}
		if aside {
			m.Area = 0 // it is there, whether there is room or not
		}
		if len(places) == 0 {
			m.Places = []sequence.Place{{Fire: sequence.OvenFire}}
			if a.sent != "" {
				m.Area = 0 // it goes there, close as it may be
			}
		}
		return sequence.Task{StartHands: sequence.Unattended, EndHands: sequence.Unattended, Modes: []sequence.Mode{m}}
	}
	first, second := v.placesNow(a)
	split := int(math.Ceil(w.First.Planned))
	if w.Sear { // its minutes are by the clock
		split = min(split, total-int(math.Ceil(w.Second.Planned)))
	}
	if v.splits(a) && split >= total && total-assemble.LeastLeft > on-now {
		split = total - assemble.LeastLeft // as the cut way is placed
	}
	if !v.splits(a) || split >= total || split <= on-now {
		places, wrapped := first, w.Stages() > 1 && (!v.splits(a) || split <= on-now)
		if wrapped {
			places = second
		}
		c.Tasks = []sequence.Task{task(total, places, wrapped)}
	} else {
		c.Tasks = []sequence.Task{task(split, first, false), task(total-split, second, true)}
		if w.Sear {
			c.Tasks[0].LagMax = day.SearLagMinutes
		}
		if at := on - split; at > 0 && !aside && !v.day.InQuiet(v.day.At(float64(at))) {
			c.Tasks[1].StartHands = arrange.HandsWrap
		}
	}
	c.Tasks[0].Modes[0].Closed = allBut(on)
	return c
}

// squeeze lets what lies on the grate together lie there, close as it may be: the cook has
// found room for it. What is put down beside it finds no more room for that. The chains from
// live on are of what cooks.
func (v *Revision) squeeze(p *sequence.Problem, live int) {
	now := v.fireNow()
	if now < 0 || now >= len(p.Fires) {
		return
	}
	zones := slices.Clone(p.Fires[now].Zones)
	for z, room := range zones {
		here, sum := sequence.Place{Fire: now, Zone: z}, 0
		for _, c := range p.Chains[live:] {
			most := 0
			for _, t := range c.Tasks {
				if m := t.Modes[0]; slices.Contains(m.Places, here) {
					most = max(most, m.Area)
				}
			}
			sum += most
		}
		if sum <= room {
			continue
		}
		zones[z] = sum
		for _, c := range p.Chains[:live] {
			for t := range c.Tasks {
				for k := range c.Tasks[t].Modes {
					if m := &c.Tasks[t].Modes[k]; slices.Contains(m.Places, here) {
						m.Area += sum - room
					}
				}
			}
		}
	}
	p.Fires[now].Zones = zones
}

// splits says whether a second stage is still to come.
func (v *Revision) splits(a *liveBatch) bool {
	if a.condemned { // nobody wraps it any more
		return false
	}
	if a.live.Sear {
		return true
	}
	return a.live.Stages() > 1 && !(a.wrap.set && a.wrapMinute() < v.now.Sub(a.on.at).Minutes()+assemble.LeastLeft)
}

// placesNow are the zones that a batch on the grate may be in, now and in its
// second stage; none stands for the oven.
func (v *Revision) placesNow(a *liveBatch) (first, second []arrange.Place) {
	if v.inOven(a) {
		return nil, nil
	}
	w, fireNow := a.live, v.fireNow()
	here := arrange.Place{Fire: fireNow}
	for z, zone := range v.hearth.Zones[fireNow] {
		if zone.Direct == w.Direct {
			here.Zone = z
			break
		}
	}
	g := arrange.PlaceGroup{Places: []arrange.Place{here}}
	for _, p := range v.hearth.PlacesOf(w) {
		if p.Fire != fireNow && !w.Direct {
			g.Places = append(g.Places, p)
		}
	}
	if a.first != nil && a.first.Oven {
		return g.Places, nil
	}
	second = v.hearth.SecondPlaces(a.batch.It, w, g, a.batch.LoadIn(w, true))
	if sides := v.searsHere(a, w); len(sides) > 0 {
		second = sides
	}
	if len(second) == 0 {
		second = g.Places
	}
	return g.Places, second
}

// inOven says whether the piece is in the kitchen oven now.
func (v *Revision) inOven(a *liveBatch) bool {
	return a.oven.set || v.day.Req.Oven != nil && a.first != nil && a.first.Oven && a.wrap.set
}

// searsHere are the places over the coals of the fire that burns, for a sear that was planned
// there: it needs no fire of its own. None where it has one.
func (v *Revision) searsHere(a *liveBatch, w day.Way) []arrange.Place {
	if p := a.first; p != nil && (p.Stages() < 2 || p.Phases[1].First != p.Phases[0].Last) {
		return nil
	}
	return slices.DeleteFunc(v.hearth.SearingSides(a.batch.It, w, a.batch.LoadIn(w, true)), func(p arrange.Place) bool { return p.Fire != v.fireNow() })
}
