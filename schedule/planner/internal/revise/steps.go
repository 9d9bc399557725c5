package revise

import (
	"fmt"
	"slices"
	"sort"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/belief"
)

// steps are those of the whole day: what is done where and when it was done,
// what is due and has not been said to be done at now, the rest as arranged.
func (v *Revision) steps(p *schedule.Plan, l remainder) []schedule.Step {
	v.overdueFeeds(p)
	fresh := v.day.Steps(p, l.a, l.all)
	before := map[string]schedule.Step{}
	for _, s := range v.first.Steps {
		before[s.ID] = s
	}
	seen := map[string]bool{}
	more := v.moreFuel(p)
	out := slices.Clone(more)
	for _, s := range fresh {
		was := before[s.ID]
		if seen[s.ID] = true; v.takenBy(s, &more) || (isStall(s) || v.tends(s)) && was.ID == "" && v.isPast(s, l) {
			continue // the next revision may know nothing of it
		}
		if isStall(s) && v.stallIsOver(s, was, l) {
			continue
		}
		if s = v.settled(p, s, was, l); s.Kind == schedule.StepLook && !s.Done && (v.day.InQuiet(s.At) || s.At.After(v.day.End)) {
			continue // put off into the night or beyond the meal, it is left out
		}
		if v.lookedAt(s, l) || v.turnedNoMore(s, l, fresh) {
			continue
		}
		if s.Kind == schedule.StepRefuel && !s.Done && !p.Phases[s.Phase-1].To.After(v.now.Add(unfedFor)) {
			s.Text = "Leave this out: this fire is over before new coals burn."
		}
		out = append(out, v.dueNow(s, l))
	}
	for _, s := range slices.Concat(v.first.Steps, v.staysTold(p, l), v.shutTold(p, l)) { // done, and no part of the day as it is arranged now
		if seen[s.ID] {
			continue
		}
		seen[s.ID] = true
		if at, ok := v.fact(s, l); ok {
			s.At, s.Window, s.Done = at, plans.FixedWindow(at), true
			out = append(out, s)
		} else if s = v.alongFire(s); !s.At.After(v.now) && v.wasDone(s) {
			s.Done = true
			out = append(out, s)
		}
	}
	out = append(v.oneLook(append(v.asItIs(v.fedOnce(p, v.missedLook(out)), l), v.steerSteps(p)...)), v.sentSteps(p)...)
	out = append(out, v.feelSteps(p, l)...)
	out = v.withdraw(v.unlitInStorm(v.rebuild(p, out)), l)
	out = plans.WithoutLateHolds(v.overAtTable(v.kept(v.measureFirst(p, out, l), l), l))
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if !a.At.Equal(b.At) {
			return a.At.Before(b.At)
		}
		if a.Done != b.Done {
			return a.Done
		}
		if a.Decides() != b.Decides() {
			return a.Decides()
		}
		return plans.RankOf(a.Kind) < plans.RankOf(b.Kind)
	})
	return out
}

// settled is a step as the log and the clock leave it.
func (v *Revision) settled(p *schedule.Plan, s, before schedule.Step, l remainder) schedule.Step {
	if isStall(s) && before.ID != "" {
		told := before // where a stall lies is believed anew with each reading; what is told of it is not
		if at, ok := v.fact(told, l); ok {
			told.At, told.Window, told.Done = at, plans.FixedWindow(at), true
			return told
		}
	} else if at, ok := v.fact(s, l); ok {
		s.At, s.Window, s.Done = at, plans.FixedWindow(at), true
		return s
	}
	if a := l.of(s.Dish, s.Batch); a != nil && a.thrownAway() && slices.Contains(afterTheHeat, s.Kind) {
		return s // nobody does that with it
	}
	if s.Kind == schedule.StepWaking && !s.At.After(v.now) && !v.anyCookingSince(s.At) {
		s.Done = true // nothing is on that fire any more
		return s
	}
	if at, ok := v.fireLeft(); ok && s.Kind == schedule.StepCloseDown && s.Phase >= v.phases {
		s.At, s.Window, s.Done = at, plans.FixedWindow(at), true // it was told for long enough
		return s
	}
	if v.followsFromFacts(s, l) {
		if !s.At.After(v.now) {
			s.Done = true
			return s
		}
	} else if before.ID != "" && !before.At.After(v.now) && v.wasDone(before) && !(endsOff(l.of(s.Dish, s.Batch), s) && before.At.After(l.of(s.Dish, s.Batch).off.at)) {
		before.Done = true
		return before
	} else if a := l.of(s.Dish, s.Batch); a != nil && a.unshown() && s.Kind == schedule.StepTakeOff && !s.At.After(v.now) {
		s.Done = true // it was due, and what is to be done is said: measure it
		return s
	}
	if a := l.of(s.Dish, s.Batch); a != nil && a.where != waiting && slices.Contains(beforeTheHeat, s.Kind) {
		s.At = instant.Earlier(s.At, a.on.at) // what is on was made ready
		s.Window, s.Done = plans.FixedWindow(s.At), true
		return s
	}
	if a := l.of(s.Dish, s.Batch); endsOff(a, s) {
		if s.At.After(a.off.at) {
			s.At = a.off.at
		}
		s.Window, s.Done = plans.FixedWindow(s.At), true // what is off is not turned any more, nor looked at
		return s
	}
	if s.Kind == schedule.StepRefuel && !p.Phases[s.Phase-1].To.After(v.now) {
		s.Done = true // with or without it, that fire is over
		return s
	}
	if s.At.Before(v.now) {
		if s.Kind == schedule.StepCloseDown && !v.foodOn() {
			s.Text += " Then log it: both vents shut."
		}
		s.At = v.now
	}
	s.Window = plans.WindowNotBefore(s.Window, v.now)
	if s.At.Before(s.Window.Early) {
		s.At = s.Window.Early
	}
	return s
}

// endsOff says whether a step is over with a piece that is off: nobody turns it any more, or
// looks whether it is done.
func endsOff(a *liveBatch, s schedule.Step) bool {
	return a != nil && a.where == off && (s.Kind == schedule.StepFlip || s.Kind == schedule.StepLook && s.Why == assemble.FirstLookWhy && !a.unshown())
}

// thrownAway says whether a piece goes from the fire into the bin, and nowhere else.
func (a *liveBatch) thrownAway() bool { return a.gone || a.condemned && a.where == cooking }

// endsWithin says whether a piece on the fire is expected off within so many minutes.
func (v *Revision) endsWithin(a *liveBatch, minutes float64) bool {
	return a.live.Total().Expected-v.now.Sub(a.on.at).Minutes() <= minutes
}

// beforeTheHeat are the steps that make a piece ready to go on.
var beforeTheHeat = []schedule.StepKind{schedule.StepThaw, schedule.StepSalt, schedule.StepTakeOut}

// unfedFor is how long a fire goes on that was to be fed now: what is laid on it is not burning
// before that (assumption).
const unfedFor = 20 * time.Minute

// dueNow is the take-off of a piece that was read at its target: nobody waits for the
// thermometer any more.
func (v *Revision) dueNow(s schedule.Step, l remainder) schedule.Step {
	a := l.of(s.Dish, s.Batch)
	if s.Kind == schedule.StepTakeOff && !s.Done && a != nil && a.atTarget() && !a.awaitsOthers() && !a.way().Sear {
		s.Text = fmt.Sprintf("%s: take it off now. It was read at %s.", a.batch.It.Dish.Name, v.day.Core(a.readAt()))
		if a.batch.Count > 1 {
			s.Text += " Measure the others too: each comes off by its own reading."
		}
		if at := a.readWhen(); v.now.Sub(at) > stillThere {
			s.Text = fmt.Sprintf("%s: is it off? It was read at %s at %s. Off already: log it (off, with its time). Still on: take it off now.", a.batch.It.Dish.Name, v.day.Core(a.readAt()), v.clock(at))
		}
	}
	return s
}

// stillThere is how long after a reading at its target a piece is taken to be on the fire as
// it was (assumption).
const stillThere = 30 * time.Minute

// readWhen is when the newest reading that counts was made; there must be one.
func (a *liveBatch) readWhen() time.Time {
	if a.believed == nil {
		return a.cores[a.lastRead()].At
	}
	return a.on.at.Add(instant.Minutes(a.believed.Nodes[len(a.believed.Nodes)-1].Minute)).Truncate(time.Minute)
}

// lookedAt says whether a look is only to tell what a reading has told: that the piece is at
// its target, or may be done by the feel.
func (v *Revision) lookedAt(s schedule.Step, l remainder) bool {
	a := l.of(s.Dish, s.Batch)
	return s.Kind == schedule.StepLook && !s.Done && v.mayBeDone(a) || s.Kind == schedule.StepLook && !s.Done && a != nil && a.atTarget() && !s.At.After(v.now.Add(2*assemble.LeastLeft*time.Minute))
}

// atTarget says whether a piece on the fire was read at its target, or past it.
func (a *liveBatch) atTarget() bool {
	if a.colder {
		return false
	}
	if a.believed == nil {
		return a.where == cooking && a.read() && a.readAt() >= a.way().PullC
	}
	return a.believed.Rest == nil && len(a.believed.Nodes) > 0
}

// turnedNoMore says whether a piece comes off before anybody turns it: the step is left out, for
// when it would have been moves with each revision.
func (v *Revision) turnedNoMore(s schedule.Step, l remainder, fresh []schedule.Step) bool {
	a := l.of(s.Dish, s.Batch)
	due := slices.ContainsFunc(fresh, func(f schedule.Step) bool { return f.ID == s.ID && !f.At.After(v.now) })
	return s.Kind == schedule.StepFlip && !s.Done && due && a != nil && a.where == cooking && (a.atTarget() || v.endsWithin(a, 2*assemble.LeastLeft))
}

// readAt is the core by the newest reading that counts, degC; there must be one.
func (a *liveBatch) readAt() float64 {
	if a.believed == nil {
		return a.cores[a.lastRead()].C
	}
	return a.believed.Nodes[len(a.believed.Nodes)-1].CoreC
}

func isStall(s schedule.Step) bool {
	return s.Kind == schedule.StepStallBegins || s.Kind == schedule.StepStallEnds
}

// tends says whether a step looks after a fire that burns: a look at it, or coals lit to feed it.
func (v *Revision) tends(s schedule.Step) bool {
	lights := s.Kind == schedule.StepLight && s.Dish == "" && s.ID != plans.StepID(v.first.ID, "", s.Phase, s.Kind, 1)
	return s.Kind == schedule.StepCheckFire || lights
}

// alongFire is a look of the first plan at a fire that was lit earlier or later than planned: it
// moved with it. The look at cold food waits for the food: an earlier fire does not make it earlier.
func (v *Revision) alongFire(s schedule.Step) schedule.Step {
	if s.Kind != schedule.StepCheckFire || s.Phase < 1 || s.Phase > len(v.first.Phases) {
		return s
	}
	by := v.lateOf(s.Phase - 1)
	if s.ID == plans.StepID(v.first.ID, "", s.Phase, s.Kind, assemble.Apart) {
		by = max(by, 0)
	}
	s.At = s.At.Add(by)
	s.Window = schedule.Window{Early: s.Window.Early.Add(by), Expected: s.Window.Expected.Add(by), Late: s.Window.Late.Add(by)}
	return s
}

// stallIsOver says whether a piece is off, and nothing is known of a stall that it had.
func (v *Revision) stallIsOver(s, was schedule.Step, l remainder) bool {
	a := l.of(s.Dish, s.Batch)
	if a == nil || a.where != off {
		return false
	}
	_, told := v.fact(s, l)
	return !told && !(was.ID != "" && !was.At.After(v.now) && v.wasDone(was))
}

// isPast says whether a step has been, by the log or by the plan.
func (v *Revision) isPast(s schedule.Step, l remainder) bool {
	_, told := v.fact(s, l)
	return told || !s.At.After(v.now)
}

// fact is when the log says that a step was done.
func (v *Revision) fact(s schedule.Step, l remainder) (time.Time, bool) {
	if s.Dish == "" {
		return v.fireFact(s)
	}
	a := l.of(s.Dish, s.Batch)
	for _, c := range v.called {
		if c.batch.It.Dish.ID == s.Dish && c.batch.Number == s.Batch {
			a = c
		}
	}
	if a == nil {
		return time.Time{}, false
	}
	switch s.Kind {
	case schedule.StepPutOn:
		return a.on.at, a.on.set
	case schedule.StepWrap:
		return a.wrap.at, a.wrap.set && !a.wrap.at.After(v.now)
	case schedule.StepTakeOff, schedule.StepRest:
		if since, waits := a.waitsForSear(); waits && s.Kind == schedule.StepTakeOff && s.CoreC == a.way().WrapC {
			return since, true
		}
		return a.off.at, a.off.set && a.off.logged
	case schedule.StepBox, schedule.StepToOven, schedule.StepHold:
		return v.putAway(a, s.Kind)
	case schedule.StepSlice: // it was cut up to be served
		return instant.Earlier(s.At, a.served.at), a.served.set
	case schedule.StepChill:
		return a.chilledAt()
	case schedule.StepStallBegins, schedule.StepStallEnds:
		return a.firstAt(s.CoreC, v.now)
	}
	return time.Time{}, false
}

// of is the batch of a dish.
func (l remainder) of(dish string, number int) *liveBatch {
	for i, p := range l.all {
		if p.It.Dish.ID == dish && p.Number == number {
			return l.bound[i]
		}
	}
	return nil
}

// firstAt is when the core was first at a temperature by believed readings.
func (a *liveBatch) firstAt(coreC float64, now time.Time) (time.Time, bool) {
	var before belief.Reading
	for _, r := range a.readings {
		switch {
		case !r.Counts():
		case r.CoreC < coreC:
			before = r
		default:
			m := r.Minute
			if before.Minute > 0 { // on the line between the two
				m -= (r.Minute - before.Minute) * (r.CoreC - coreC) / (r.CoreC - before.CoreC)
			}
			return a.on.at.Add(instant.Minutes(m)).Truncate(time.Minute), true
		}
	}
	return time.Time{}, false
}

// readSince says whether the piece was measured at an instant or later.
func (a *liveBatch) readSince(at time.Time) bool {
	read := func(e schedule.Entry) bool { return !e.At.Before(at) }
	return slices.ContainsFunc(a.cores, read) || slices.ContainsFunc(a.outers, read)
}

// grateReadSince says whether the fire shows how it stands at an instant or later: by a thermometer of the grill, which a core
// that was read alone is not, or as it was told.
func (v *Revision) grateReadSince(at time.Time) bool {
	return slices.ContainsFunc(v.log, func(e schedule.Entry) bool {
		switch e.Kind {
		case schedule.LogGrate, schedule.LogGauge, schedule.LogFireOut, schedule.LogLit:
			return !e.At.Before(at)
		}
		return false
	})
}

// anyCooking says whether something is on the fire.
func (v *Revision) anyCooking() bool { return v.anyCookingSince(v.now) }

// anyCookingSince says whether something is on the fire that was so at an instant.
func (v *Revision) anyCookingSince(at time.Time) bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool {
		return a.where == cooking && !v.isIndoors(a) && !a.on.at.After(at)
	})
}

// fireFact is when the fire was lit, and when fuel was added for the first time,
// the second and so on.
func (v *Revision) fireFact(s schedule.Step) (time.Time, bool) {
	if s.Kind == schedule.StepRefuel {
		if told, n := v.fedAt(), v.refuelNumber(s.ID); n > 0 && n <= len(told) {
			return told[n-1], true
		}
	}
	if s.Kind == schedule.StepCloseDown {
		return v.shutDown(s.Phase)
	}
	for _, at := range v.told(schedule.LogLit) {
		if s.Kind == schedule.StepLight && s.Phase == v.lights(at)+1 && s.ID == plans.StepID(v.first.ID, "", s.Phase, s.Kind, 1) { // what is lit later feeds it
			return at, true
		}
	}
	return time.Time{}, false
}

// followsFromFacts says whether a step stands at an instant that later readings
// do not move: the fire of phases that have begun, serving, and what follows a
// take-off that is logged. It is done when that instant has passed.
func (v *Revision) followsFromFacts(s schedule.Step, l remainder) bool {
	switch s.Kind {
	case schedule.StepServe:
		return true
	case schedule.StepSlice:
		return v.slicedByHour(l.of(s.Dish, s.Batch))
	case schedule.StepRefuel, schedule.StepCloseDown, schedule.StepWaking, schedule.StepBeforeSleep:
		return false
	case schedule.StepRest:
		a := l.of(s.Dish, s.Batch)
		return a != nil && a.off.logged
	}
	return s.Dish == "" && s.Phase <= v.phases
}

// slicedByHour says whether a piece is cut up once its hour for that has passed: not while its meal is still to come and may be
// put off for what is not off the fire.
func (v *Revision) slicedByHour(a *liveBatch) bool {
	return a == nil || a.served.set || !v.unserved() || !v.serve(a).After(v.now)
}

// wasDone says whether a step of the first plan that is due was done, for all
// that is known. What the log follows is done when the log says so.
func (v *Revision) wasDone(s schedule.Step) bool {
	if s.Kind == schedule.StepWaking { // it asks for readings: it is done when one is there
		return v.grateReadSince(s.At) || !v.anyCookingSince(s.At)
	}
	if v.staysForNight(s) || s.Kind == schedule.StepCloseDown && s.Phase >= v.phases { // nobody noted that the vents are shut
		return false
	}
	if s.Kind == schedule.StepRefuel && s.Phase == v.phases {
		return v.fedSince(s)
	}
	if s.Dish == "" {
		return s.Phase <= v.phases && !(s.Kind == schedule.StepCheckFire && v.litLate() > 0) // nobody looks at a fire that is not lit yet
	}
	for _, a := range v.batches {
		if a.batch.It.Dish.ID != s.Dish || a.batch.Number != s.Batch {
			continue
		}
		if a.thrownAway() && slices.Contains(afterTheHeat, s.Kind) {
			return false
		}
		switch s.Kind {
		case schedule.StepPutOn:
			return a.on.set
		case schedule.StepWrap:
			return a.wrap.set
		case schedule.StepTakeOff, schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepHold:
			return a.where == off && !a.off.logged
		case schedule.StepCheckOven: // what was to be read on waking is read, or still to be
			return s.CoreC == 0 || a.readSince(s.At)
		case schedule.StepStallBegins, schedule.StepStallEnds:
			return a.on.set && len(a.readings) == 0 && (a.where != off || !s.At.After(a.off.at))
		case schedule.StepSlice:
			return a.on.set && v.slicedByHour(a)
		case schedule.StepThaw, schedule.StepSalt, schedule.StepTakeOut:
			return a.on.set // it came out of the refrigerator to go on
		}
		return a.on.set && !s.At.Before(a.on.at)
	}
	for _, c := range v.called { // of a dish that is no longer wanted
		if c.is(s.Dish, s.Batch) {
			return !s.At.After(v.calledOff(s.Dish)) && (c.on.set || s.Kind == schedule.StepThaw || s.Kind == schedule.StepTakeOut)
		}
	}
	return false // of what is left out, which is not on
}
