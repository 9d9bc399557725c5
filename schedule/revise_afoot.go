package schedule

import (
	"math"
	"time"
)

// Where a batch is at now.
type whereabouts int

const (
	waiting whereabouts = iota // not on yet
	cooking
	off // taken off
)

// known is an instant that has passed: logged, or taken as planned because
// nothing says otherwise.
type known struct {
	at     time.Time
	set    bool
	logged bool
}

// stand is a stretch off the heat, open if it lasts until now.
type stand struct {
	from, to time.Time
	open     bool
	kind     string // LogStopped, LogCounter or LogChilled
}

// afoot is one batch while the day runs.
type afoot struct {
	first  *placed // as first planned, in the first plan's day; nil for what the log added
	batch  *batch  // in the revised day
	open   *batch  // the same as it is being arranged, if it waits
	where  whereabouts
	on     known
	wrap   known
	with   string // what it was wrapped in
	bare   bool   // the cook leaves it bare
	off    known
	boxed  known
	oven   known
	ovenC  float64
	stands []stand
	cores  []Entry // core readings
	outers []Entry

	readings []reading // the same cores, from the put-on, judged
	believed *belief   // nil where the model follows nothing
	journey  *journey
	live     way // what is left, as the solver and the texts take it
}

// look works out from the log where every batch is, and what is believed of it.
func (v *revision) look() {
	for _, p := range v.placed {
		if b := v.again(p); b != nil {
			v.afoot = append(v.afoot, &afoot{first: p, batch: b})
		}
	}
	v.addDishes()
	late := v.litLate()
	for i := range v.day.items {
		v.tellDish(v.day.items[i].dish.ID, late)
	}
	v.grate = v.day.grateHistory(v.log, v.now, v.plannedLevel)
	v.begun()
	for _, a := range v.afoot {
		if a.on.set && !a.on.logged && a.first != nil && a.first.phases[0][0] >= v.phases && len(a.cores) == 0 {
			*a = afoot{first: a.first, batch: a.batch} // the fire that it waits for is not there yet
		}
	}
	v.believe()
}

// again is a batch of the first plan in the revised day; nil if its dish is gone.
func (v *revision) again(p *placed) *batch {
	for i := range v.day.items {
		if it := &v.day.items[i]; it.dish.ID == p.it.dish.ID {
			b := *p.batch
			b.it = it
			return &b
		}
	}
	return nil
}

// addDishes makes batches of the dishes that the log added, and room in the
// hearth for the fires they want.
func (v *revision) addDishes() {
	for i := range v.day.items {
		if onMenu(v.base.req, v.day.items[i].dish.ID) {
			continue
		}
		only := *v.day
		only.items = v.day.items[i : i+1]
		for _, s := range only.items[0].spots() {
			for _, f := range only.firesFor(s) {
				v.hearth.addAlways(v.day.grill, f)
			}
		}
		for _, b := range only.batches(v.hearth, roomiest) {
			v.afoot = append(v.afoot, &afoot{batch: b})
		}
	}
}

// litLate is by how much the fire was lit later than planned.
func (v *revision) litLate() time.Duration {
	for _, e := range v.log {
		if e.Kind != LogLit || len(v.first.Phases) == 0 {
			continue
		}
		if late := e.At.Sub(v.first.Phases[0].SetupFrom); late > 0 && late < 12*time.Hour {
			return late
		}
		return 0
	}
	return 0
}

// tellDish tells the batches of a dish what the log says of it.
func (v *revision) tellDish(id string, late time.Duration) {
	var all []*afoot
	for _, a := range v.afoot {
		if a.batch.it.dish.ID == id {
			all = append(all, a)
		}
	}
	for _, e := range v.log {
		if e.Dish == id && e.Kind == LogOn {
			v.putOn(all, e.At)
		}
	}
	for _, a := range all {
		if !a.on.set && a.first != nil {
			if at := v.base.at(a.first.on).Add(late); !at.After(v.now) && !anyOn(all, a) {
				a.on = known{at: at, set: true}
			}
		}
	}
	for _, e := range v.log {
		if e.Dish == id && e.Kind != LogOn {
			for _, a := range all {
				a.tell(e)
			}
		}
	}
	for _, a := range all {
		v.settle(a)
	}
}

// anyOn says whether the log puts on another batch of the dish: then it is kept
// strictly, and a batch is on when the log says so.
func anyOn(all []*afoot, but *afoot) bool {
	for _, a := range all {
		if a != but && a.on.logged {
			return true
		}
	}
	return false
}

// putOn gives an instant to the next batch that is not on, and to those that
// were to go on with it.
func (v *revision) putOn(all []*afoot, at time.Time) {
	var next *afoot
	for _, a := range all {
		if a.on.set {
			continue
		}
		if next == nil {
			next = a
		}
		if a == next || a.first != nil && next.first != nil && math.Abs(a.first.on-next.first.on) < 2 {
			a.on = known{at: at, set: true, logged: true}
		}
	}
}

// tell notes an event or reading of the dish. What comes before the batch is on
// or after it is off is not about it.
func (a *afoot) tell(e Entry) {
	if !a.on.set || e.At.Before(a.on.at) {
		return
	}
	fact := known{at: e.At, set: true, logged: true}
	if n := len(a.stands); n > 0 && a.stands[n-1].open && e.Kind != LogCore && e.Kind != LogOuter {
		a.stands[n-1].open, a.stands[n-1].to = false, e.At
	}
	switch e.Kind {
	case LogCore:
		a.cores = append(a.cores, e)
	case LogOuter:
		a.outers = append(a.outers, e)
	case LogWrapped:
		if e.Value == WrapNone {
			a.bare = true
		} else if !a.wrap.set {
			a.wrap, a.with = fact, e.Value
		}
	case LogToOven:
		a.oven, a.ovenC = fact, e.C
	case LogPulled, LogBoxed, LogCounter:
		if !a.off.set {
			a.off = fact
		}
		if e.Kind == LogBoxed && !a.boxed.set {
			a.boxed = fact
		}
		if e.Kind == LogCounter {
			a.stands = append(a.stands, stand{from: e.At, kind: e.Kind, open: true})
		}
	case LogStopped, LogChilled:
		a.stands = append(a.stands, stand{from: e.At, kind: e.Kind, open: true})
	case LogRestarted:
		a.off = known{}
	}
}

// settle says where the batch is. Without a word of it, what was planned is
// taken as done once it was due at the asked chance.
func (v *revision) settle(a *afoot) {
	if n := len(a.stands); n > 0 && a.stands[n-1].open {
		a.stands[n-1].to = v.now
	}
	switch {
	case !a.on.set:
		a.where = waiting
		return
	case a.off.set:
		a.where = off
		return
	}
	a.where = cooking
	silent := len(a.cores) == 0 && len(a.stands) == 0
	if !silent || a.first == nil {
		return
	}
	shift := a.on.at.Sub(v.base.at(a.first.on))
	due := v.base.at(a.first.off).Add(shift)
	if k := a.first.phases[a.first.stages()-1][1] + 1; k > 0 && k < len(v.first.Phases) && v.first.Phases[k].SetupFrom.Before(due) {
		due = v.first.Phases[k].SetupFrom // the next fire was wanted then
	}
	if at := due; !at.After(v.now) {
		a.off, a.where = known{at: at, set: true}, off
	}
	if p := a.first; p.stages() == 2 && !p.way.sear && !a.wrap.set && !a.bare {
		wrapped := v.base.afterQuiet(fixedWindow(v.base.at(p.on - p.way.first.expected))).Expected.Add(shift)
		if !wrapped.After(v.now) {
			a.wrap = known{at: wrapped, set: true}
		}
	}
}

// serve is the instant at which the batch is to be ready.
func (v *revision) serve(a *afoot) time.Time { return v.day.at(float64(a.batch.it.serve)) }
