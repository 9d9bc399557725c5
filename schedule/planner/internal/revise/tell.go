package revise

import (
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// tellDish tells the batches of a dish, among some, what the log says of it.
func (v *Revision) tellDish(among []*liveBatch, id string, late time.Duration) {
	var all []*liveBatch
	for _, a := range among {
		if a.batch.It.Dish.ID == id {
			all = append(all, a)
		}
	}
	for _, e := range v.log {
		if e.Dish == id && e.Kind == schedule.LogOn {
			v.putOn(all, e)
		}
	}
	for _, a := range all {
		if !a.on.set && a.first != nil && !v.loose {
			if at := v.base.At(a.first.On).Add(late); !at.After(v.now) && !v.beyond(a, late) && !anyOn(all, a) {
				a.on = known{at: at, set: true}
			}
		}
	}
	for _, e := range v.log {
		if e.Dish == id && e.Kind != schedule.LogOn || e.Kind == schedule.LogServed && v.atTable(e, id) {
			for _, a := range meant(e, all, v.log) {
				a.tell(e)
			}
		}
	}
	for _, a := range all {
		v.settle(a)
	}
}

// beyond says whether a batch that goes on so much later than planned is done too late for
// any serving of this day: then nobody put it on without a word.
func (v *Revision) beyond(a *liveBatch, late time.Duration) bool {
	done := v.base.At(a.first.Off).Add(late).Add(instant.Minutes(a.batch.It.RestMinutes()))
	serve := instant.Later(v.serve(a), v.base.At(float64(a.first.It.Serve))) // a meal that was served moves no put-on
	return done.After(serve.Add(longestDelay * time.Minute))
}

// anyOn says whether the log puts on another batch of the dish: then it is kept
// strictly, and a batch is on when the log says so.
func anyOn(all []*liveBatch, but *liveBatch) bool {
	for _, a := range all {
		if a != but && a.on.logged {
			return true
		}
	}
	return false
}

// putOn gives the instant of an entry to the next batch that is not on, and to those that
// were to go on with it; to every one, where the log says that all went on. The only entry of a
// dish is of all batches that the plan has on the grate together at some time.
func (v *Revision) putOn(all []*liveBatch, e schedule.Entry) {
	once := 0
	for _, o := range v.log {
		if o.Dish == e.Dish && o.Kind == schedule.LogOn {
			once++
		}
	}
	var next *liveBatch
	for _, a := range all {
		if a.on.set {
			continue
		}
		if next == nil {
			next = a
		}
		if a == next || e.Value == schedule.AllBatches || a.first != nil && next.first != nil && (math.Abs(a.first.On-next.first.On) < 2 || once == 1 && a.first.On > next.first.Off) {
			a.on = known{at: e.At, set: true, logged: true}
		}
	}
}

// tell notes an event or reading of the dish. What comes before the batch is on
// or after it is off is not about it.
func (a *liveBatch) tell(e schedule.Entry) {
	if !a.on.set || e.At.Before(a.on.at) {
		return
	}
	fact := known{at: e.At, set: true, logged: true}
	if n := len(a.stands); n > 0 && a.stands[n-1].open && !staysThere(e.Kind, a.stands[n-1].kind) {
		a.stands[n-1].open, a.stands[n-1].to = false, e.At
	}
	switch e.Kind {
	case schedule.LogCore, schedule.LogColdest:
		a.cores = append(a.cores, e)
		a.searedBy(e)
	case schedule.LogOuter:
		a.outers = append(a.outers, e)
	case schedule.LogWrapped:
		if e.Value == schedule.WrapNone {
			a.bare = true
		} else if !a.wrap.set {
			fact.at = instant.Later(fact.at, a.on.at.Add(assemble.LeastLeft*time.Minute)) // it went on wrapped
			a.wrap, a.with = fact, e.Value
			if a.with == "" && a.way().With == "" { // nobody said in what, and no plan does
				a.with = schedule.WrapFoil
			}
		}
	case schedule.LogToOven:
		if a.off.set && e.C >= cooksFromC {
			if a.hotly = fact; a.boxed.set { // where it waited counts up to then
				return
			}
		}
		if a.off.set { // done, it waits there
			a.hold(fact, schedule.HeldInOven)
			return
		}
		if a.oven.set && a.oven.logged { // it is in there: set anew
			if e.C > 0 {
				a.heats = append(a.heats, ovenHeat{e.At, e.C})
			}
			return
		}
		a.oven, a.ovenC, a.sent = fact, e.C, ""
	case schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter:
		if e.At.Sub(a.on.at) < assemble.LeastLeft*time.Minute {
			return // nothing is done the minute it goes on: a slip of the pen
		}
		if e.Kind == schedule.LogPulled && a.offForSear(e.At) {
			a.stands = append(a.stands, stand{from: e.At, kind: schedule.LogStopped, open: true, sears: true})
			return
		}
		if !a.off.set {
			a.off = fact
		}
		if e.Kind == schedule.LogBoxed {
			a.hold(fact, e.Value)
		}
		if e.Kind == schedule.LogCounter {
			a.stands = append(a.stands, stand{from: e.At, kind: e.Kind, open: true})
		}
	case schedule.LogStopped, schedule.LogChilled:
		a.stands = append(a.stands, stand{from: e.At, kind: e.Kind, open: true})
	case schedule.LogServed:
		if !a.eatableBy(e.At) {
			return // and nothing is eaten before it can have rested
		}
		if !a.off.set { // it was off and rested before that
			rest := instant.Minutes(a.batch.It.RestMinutes())
			a.off = known{at: e.At.Add(-rest), set: true, logged: true}
		}
		a.served = fact
	case schedule.LogRestarted:
		a.backOnGrate(e.At)
		a.stoodUntil(e.At)
		a.off, a.boxed, a.held, a.served, a.hotly = known{}, known{}, nil, known{}, known{}
	}
}

// staysThere says whether a piece lies where it lay, with a word of it: a reading moves nothing,
// and what is off the fire for good is neither pulled nor wrapped into heat.
func staysThere(kind, stand schedule.EntryKind) bool {
	switch kind {
	case schedule.LogCore, schedule.LogColdest, schedule.LogOuter:
		return true
	case schedule.LogPulled:
		return stand == schedule.LogCounter
	case schedule.LogWrapped:
		return stand != schedule.LogStopped
	}
	return false
}

// stoodUntil notes that a piece which was taken off was without heat until it goes back, or
// until the log says where it went.
func (a *liveBatch) stoodUntil(at time.Time) {
	if !a.off.set || len(a.waits()) > 0 {
		return
	}
	if a.boxed.set {
		at = a.boxed.at
	}
	if at.After(a.off.at) {
		a.stands = append(a.stands, stand{from: a.off.at, to: at, kind: schedule.LogStopped})
	}
}

// overFor is how long after its serving, and after it was read done, a piece that nothing was
// logged of since is taken to be off and eaten (assumption).
const overFor = time.Hour

// eatenSilently says of a piece on the fire that was read at its target, and whose serving is long
// past, when it came off: no meal waits for it any more.
func (v *Revision) eatenSilently(a *liveBatch) (at time.Time, ok bool) {
	n := len(a.cores)
	if n == 0 || a.way().Sear || len(a.stands) > 0 && a.stands[len(a.stands)-1].open || v.now.Sub(v.serve(a)) < overFor {
		return at, false
	}
	last := a.cores[n-1]
	return last.At, last.C >= a.way().PullC && v.now.Sub(last.At) >= overFor && last.At.After(a.on.at)
}

// settle says where the batch is. Without a word of it, what was planned is
// taken as done once it was due at the asked chance.
func (v *Revision) settle(a *liveBatch) {
	if n := len(a.stands); n > 0 && a.stands[n-1].open {
		a.stands[n-1].to = v.now
		v.searOver(a)
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
	if at, ok := v.eatenSilently(a); ok {
		a.off, a.where = known{at: at, set: true}, off
		return
	}
	silent := len(a.cores) == 0 && len(a.stands) == 0
	if !silent || a.first == nil || v.loose {
		return
	}
	shift := a.on.at.Sub(v.base.At(a.first.On))
	due := v.base.At(a.first.Off).Add(shift)
	if k := a.first.Phases[a.first.Stages()-1].Last + 1; k > 0 && k < len(v.first.Phases) {
		if next := v.first.Phases[k].SetupFrom; next.After(a.on.at) && next.Before(due) {
			due = next // the next fire was wanted then
		}
	}
	if at := due; !at.After(v.now) && !v.onlyByReading(a) && !v.heatFailed(a, a.on.at, at) {
		a.off, a.where = known{at: at, set: true}, off
	}
	if p := a.first; p.Stages() == 2 && !p.Way.Sear && !a.wrap.set && !a.bare {
		wrapped := v.base.AfterQuiet(plans.FixedWindow(v.base.At(p.On - p.Way.First.Expected))).Expected.Add(shift)
		if indoors := a.oven.set && a.oven.at.Before(wrapped); !wrapped.After(v.now) && !indoors {
			a.wrap = known{at: wrapped, set: true}
		}
	}
}
