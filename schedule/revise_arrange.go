package schedule

import (
	"context"
	"math"
	"time"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/sequence"
)

// left is the solved rest of the day.
type left struct {
	a     arrangement // the whole day: what is past, what cooks, what waits
	all   []*placed
	bound []*afoot // of each placed
}

// addAlways adds a fire beyond the number that a first plan is offered.
func (h *hearth) addAlways(g fire.Grill, f fire.Fire) {
	for _, o := range h.fires {
		if o.Layout == f.Layout && math.Abs(o.LevelC-f.LevelC) < 1 {
			return
		}
	}
	fires, zones := h.fires, h.zones
	h.fires = append(fires[:len(fires):len(fires)], f)
	h.zones = append(zones[:len(zones):len(zones)], g.Zones(f))
}

// begun finds the phases that have begun. A change of fire waits for food that
// must be off before it, if the log says that it is still on.
func (v *revision) begun() {
	late := v.litLate()
	for k := range v.first.Phases {
		from := v.first.Phases[k].SetupFrom
		if k == 0 {
			from = from.Add(late)
		}
		if from.After(v.now) && !v.onIn(k) {
			return
		}
		if k > 0 && v.keeps(k-1, from) && !v.onIn(k) {
			return
		}
		v.phases = k + 1
	}
}

// onIn says whether the log has put something on that belongs to phase k or later.
func (v *revision) onIn(k int) bool {
	for _, a := range v.afoot {
		if a.first != nil && a.on.logged && a.first.phases[0][0] >= k {
			return true
		}
	}
	return false
}

// keeps says whether something that cooks keeps the fire of phase k beyond an
// instant: a piece that was read before it, and that is not off by the log.
func (v *revision) keeps(k int, beyond time.Time) bool {
	for _, a := range v.afoot {
		if a.where != cooking || a.first == nil || a.first.oven || len(a.cores) == 0 || a.cores[0].At.After(beyond) {
			continue
		}
		if last := a.first.phases[a.first.stages()-1][1]; last >= 0 && last <= k {
			return true
		}
	}
	return false
}

// fireNow is the fire that burns; before the first light, the one to be lit first.
func (v *revision) fireNow() int {
	if len(v.firstA.solution.Phases) == 0 {
		return 0
	}
	return v.firstA.solution.Phases[max(v.phases-1, 0)].Fire
}

// plannedLevel is the level of the phase that was to burn at an instant.
func (v *revision) plannedLevel(at time.Time) float64 {
	level := 0.0
	for i, ph := range v.first.Phases {
		if i == 0 || !ph.SetupFrom.After(at) {
			level = ph.LevelC
		}
	}
	return level
}

// try is one way to meet what is left of the day.
type try struct {
	later   int  // minutes that serving is moved by
	halfway bool // what is on the grate is counted at its expected end, not at the asked chance
	all     bool // and so is what is not on yet
	aside   bool // what is on the grate and will not be done in time makes room now
}

// tries are in the order in which they are taken: dinner is moved last, and by
// as little as it can.
var tries = []try{
	{}, {halfway: true}, {halfway: true, all: true},
	{later: 20}, {later: 40}, {later: 60}, {later: 90}, {later: 120}, {later: 180}, {later: 240}, {later: 360}, {later: 480},
	{halfway: true, all: true, aside: true}, {later: 40, aside: true}, {later: 90, aside: true}, {later: 240, aside: true},
}

// arrangeLeft solves the rest of the day.
func (v *revision) arrangeLeft(ctx context.Context) (left, error) {
	asked := v.day
	for _, t := range tries {
		v.try = t
		if err := v.serveLater(asked, t.later); err != nil {
			return left{}, err
		}
		if !v.now.Before(v.day.end) && v.unserved() {
			continue
		}
		s, p, order, err := v.solve(ctx)
		if err != nil {
			return left{}, err
		}
		if s.Status == sequence.Optimal || s.Status == sequence.Feasible {
			return v.join(s, p, order), nil
		}
	}
	return left{}, &InputError{Faults: []Fault{{Sentence: "what is left of this day cannot be arranged, even if it is served eight hours later; make a new plan for the dishes that are not on yet"}}}
}

// counted is the way of a batch at the chance that the try counts with.
func (v *revision) counted(a *afoot, w way) way {
	if v.try.halfway && (a.where == cooking || v.try.all) {
		w.first.planned, w.second.planned = w.first.expected, w.second.expected
		w.inOven.planned = w.inOven.expected
	}
	return w
}

// unserved says whether something is still waiting or cooking.
func (v *revision) unserved() bool {
	for _, a := range v.afoot {
		if a.where != off {
			return true
		}
	}
	return false
}

// serveLater moves all serving instants of the day.
func (v *revision) serveLater(asked *day, byMinutes int) error {
	if byMinutes == 0 {
		return nil
	}
	by := time.Duration(byMinutes) * time.Minute
	r := copyRequest(asked.req)
	at := clockOf(asked.clock(nil).Add(by))
	r.Serve.Date, r.Serve.Time = *at.Date, at.Time
	for i := range r.Dishes {
		if s := r.Dishes[i].Serve; s != nil {
			at := clockOf(asked.clock(s).Add(by))
			r.Dishes[i].Serve = &at
		}
	}
	if err := v.resolve(r); err != nil {
		return err
	}
	v.rebind()
	return nil
}

// rebind gives the batches the items of the day as it is now.
func (v *revision) rebind() {
	for _, a := range v.afoot {
		for i := range v.day.items {
			if v.day.items[i].dish.ID == a.batch.it.dish.ID {
				b := *a.batch
				b.it = &v.day.items[i]
				a.batch = &b
			}
		}
	}
}

// solve states and solves what is left. The order says which batch a chain is.
func (v *revision) solve(ctx context.Context) (sequence.Solution, sequence.Problem, []*afoot, error) {
	var order []*afoot
	var open []*batch
	for _, a := range v.afoot {
		if a.where == waiting {
			b := *a.batch
			b.ways = append([]way(nil), b.ways...)
			for i := range b.ways {
				b.ways[i] = v.counted(a, b.ways[i])
			}
			a.open = &b
			order, open = append(order, a), append(open, a.open)
		}
	}
	now := v.day.minute(v.now)
	p := v.day.problem(v.hearth, open)
	p.NoClash, p.Earliest = true, min(v.day.earliest, now)
	p.Quiet = nil
	for _, q := range v.day.quiet {
		if q.From <= now {
			p.Quiet = append(p.Quiet, sequence.Span{From: q.From, To: min(q.To, now+1)})
		}
	}
	ready := v.readyAt()
	for i := range p.Chains {
		for m := range p.Chains[i].Tasks[0].Modes {
			mode := &p.Chains[i].Tasks[0].Modes[m]
			mode.Closed = append(mode.Closed[:len(mode.Closed):len(mode.Closed)], sequence.Span{From: min(now, ready) + 1, To: forever})
		}
	}
	for _, a := range v.afoot {
		if a.where == cooking {
			order = append(order, a)
			p.Chains = append(p.Chains, v.liveChain(a, now))
		}
	}
	if v.phases > 0 {
		p.Chains = append(p.Chains, v.burning(ready))
		earliest := ready
		for _, a := range order {
			if a.where == cooking {
				earliest = max(earliest, v.day.minute(a.on.at))
			}
		}
		p.Earliest = max(p.Earliest, earliest+p.Fires[v.fireNow()].Setup+handsLight)
	}
	if len(p.Chains) == 0 {
		return sequence.Solution{Status: sequence.Optimal, Light: -1}, p, order, nil
	}
	s, err := sequence.Solve(ctx, &p)
	return s, p, order, err
}

// forever is earlier than any instant of a day.
const forever = 1 << 20

// readyAt is the minute at which the fire that burns, or is being made, is ready:
// now, or later if it is not yet.
func (v *revision) readyAt() int {
	now := v.day.minute(v.now)
	if v.phases == 0 {
		return now
	}
	from := v.first.Phases[v.phases-1].From
	if v.phases == 1 {
		from = from.Add(v.litLate())
	}
	return max(min(now, v.day.minute(from)), 0)
}

// burning is a chain that holds the fire that burns in its place until now.
func (v *revision) burning(ready int) sequence.Chain {
	at := max(ready, 1)
	return sequence.Chain{Tasks: []sequence.Task{{
		StartHands: sequence.Unattended, EndHands: sequence.Unattended,
		Modes: []sequence.Mode{{
			Minutes: []int{1}, Places: []sequence.Place{{Fire: v.fireNow()}}, Closed: allBut(at), Gap: sequence.Gap{Max: sequence.NoLimit},
		}},
	}}}
}

func allBut(u int) []sequence.Span {
	return []sequence.Span{{From: -forever, To: u}, {From: u + 1, To: forever}}
}

// liveChain is a batch on the grate: its start is fixed, what is left takes the
// minutes of the belief at the asked chance, cut to what serving leaves so that
// a late dish does not stand in the way of a plan.
func (v *revision) liveChain(a *afoot, now int) sequence.Chain {
	w, b := v.counted(a, a.live), a.batch
	on := v.day.minute(a.on.at)
	total := int(math.Ceil(w.total().planned))
	rest := int(math.Ceil(b.it.restMinutes()))
	serve, leastGap := b.it.serve, rest
	if total > on-serve-rest {
		leastGap = 0
		total = min(total, max(on-serve-rest, on-now+2))
		if v.try.aside {
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
		m := sequence.Mode{Area: b.area(v.hearth, places), Minutes: []int{max(minutes, 1)}, Places: asPlaces(places), Gap: gap}
		if v.try.aside {
			m.Area = 0 // it is there, whether there is room or not
		}
		if len(places) == 0 {
			m.Places = []sequence.Place{{Fire: sequence.OvenFire}}
		}
		return sequence.Task{StartHands: sequence.Unattended, EndHands: sequence.Unattended, Modes: []sequence.Mode{m}}
	}
	first, second := v.placesNow(a)
	split := int(math.Ceil(w.first.planned))
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
	each := takes(a.batch.it.footprint(a.batch.massKg)) * float64(a.batch.count)
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
