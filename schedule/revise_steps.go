package schedule

import (
	"slices"
	"sort"
	"time"
)

// steps are those of the whole day: what is done where and when it was done,
// what is due and has not been said to be done at now, the rest as arranged.
func (v *revision) steps(p *Plan, l left) []Step {
	fresh := v.day.stepsFor(p, l)
	before := map[string]Step{}
	for _, s := range v.first.Steps {
		before[s.ID] = s
	}
	seen := map[string]bool{}
	more := v.moreFuel(p)
	out := slices.Clone(more)
	for _, s := range fresh {
		was := before[s.ID]
		if seen[s.ID] = true; v.takenBy(s, &more) || isStall(s) && was.ID == "" && v.isPast(s, l) {
			continue // the next revision may know nothing of it
		}
		if s = v.settled(p, s, was, l); s.Kind == StepLook && !s.Done && (v.day.inQuiet(s.At) || s.At.After(v.day.end)) {
			continue // put off into the night or beyond the meal, it is left out
		}
		out = append(out, s)
	}
	for _, s := range slices.Concat(v.first.Steps, v.waitsOfCalled(p, l)) { // done, and no part of the day as it is arranged now
		if seen[s.ID] {
			continue
		}
		seen[s.ID] = true
		if at, ok := v.fact(s, l); ok {
			s.At, s.Window, s.Done = at, fixedWindow(at), true
			out = append(out, s)
		} else if !s.At.After(v.now) && v.wasDone(s) {
			s.Done = true
			out = append(out, s)
		}
	}
	out = v.withdraw(v.rebuild(p, out), l)
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if !a.At.Equal(b.At) {
			return a.At.Before(b.At)
		}
		if a.Done != b.Done {
			return a.Done
		}
		return stepRank[a.Kind] < stepRank[b.Kind]
	})
	return out
}

// waitsOfCalled are the steps of waiting of dishes that were off before they were called
// off: a revision may have planned another way to wait than the first plan.
func (v *revision) waitsOfCalled(p *Plan, l left) []Step {
	it := &itinerary{d: v.day, plan: p, a: l.a, count: map[string]int{}}
	for _, a := range v.called {
		if !a.off.set || !a.boxed.set {
			continue
		}
		b := v.placedBefore(a, len(l.a.solution.Phases))
		v.day.setHold(b, b.earlyGap())
		it.wait(b)
	}
	return slices.DeleteFunc(it.steps, func(s Step) bool { _, told := v.fact(s, l); return !told })
}

// stepsFor lists the steps of an arrangement under the ids of a plan.
func (d *day) stepsFor(p *Plan, l left) []Step { return d.steps(p, l.a, l.all) }

// settled is a step as the log and the clock leave it.
func (v *revision) settled(p *Plan, s, before Step, l left) Step {
	if isStall(s) && before.ID != "" {
		told := before // where a stall lies is believed anew with each reading; what is told of it is not
		if at, ok := v.fact(told, l); ok {
			told.At, told.Window, told.Done = at, fixedWindow(at), true
			return told
		}
	} else if at, ok := v.fact(s, l); ok {
		s.At, s.Window, s.Done = at, fixedWindow(at), true
		return s
	}
	if v.followsFromFacts(s, l) {
		if !s.At.After(v.now) {
			s.Done = true
			return s
		}
	} else if before.ID != "" && !before.At.After(v.now) && v.wasDone(before) {
		before.Done = true
		return before
	}
	if s.Kind == StepRefuel && !p.Phases[s.Phase-1].To.After(v.now) {
		s.Done = true // with or without it, that fire is over
		return s
	}
	if s.At.Before(v.now) {
		s.At = v.now
	}
	s.Window = s.Window.notBefore(v.now)
	if s.At.Before(s.Window.Early) {
		s.At = s.Window.Early
	}
	return s
}

func isStall(s Step) bool { return s.Kind == StepStallBegins || s.Kind == StepStallEnds }

// isPast says whether a step has been, by the log or by the plan.
func (v *revision) isPast(s Step, l left) bool {
	_, told := v.fact(s, l)
	return told || !s.At.After(v.now)
}

func (w Window) notBefore(t time.Time) Window {
	return Window{Early: latest(w.Early, t), Expected: latest(w.Expected, t), Late: latest(w.Late, t)}
}

func latest(a, b time.Time) time.Time {
	if a.Before(b) {
		return b
	}
	return a
}

// fact is when the log says that a step was done.
func (v *revision) fact(s Step, l left) (time.Time, bool) {
	if s.Dish == "" {
		return v.fireFact(s)
	}
	a := l.of(s.Dish, s.Batch)
	for _, c := range v.called {
		if c.batch.it.dish.ID == s.Dish && c.batch.number == s.Batch {
			a = c
		}
	}
	if a == nil {
		return time.Time{}, false
	}
	switch s.Kind {
	case StepPutOn:
		return a.on.at, a.on.set
	case StepWrap:
		return a.wrap.at, a.wrap.set && a.wrap.logged && !a.wrap.at.After(v.now)
	case StepTakeOff, StepRest:
		return a.off.at, a.off.set && a.off.logged
	case StepBox, StepToOven, StepHold:
		return a.boxed.at, a.boxed.set
	case StepStallBegins, StepStallEnds:
		return a.firstAt(s.CoreC, v.now)
	}
	return time.Time{}, false
}

// of is the batch of a dish.
func (l left) of(dish string, number int) *afoot {
	for i, p := range l.all {
		if p.it.dish.ID == dish && p.number == number {
			return l.bound[i]
		}
	}
	return nil
}

// firstAt is when the core was first at a temperature by believed readings.
func (a *afoot) firstAt(coreC float64, now time.Time) (time.Time, bool) {
	var before reading
	for _, r := range a.readings {
		switch {
		case !r.counts():
		case r.coreC < coreC:
			before = r
		default:
			m := r.minute
			if before.minute > 0 { // on the line between the two
				m -= (r.minute - before.minute) * (r.coreC - coreC) / (r.coreC - before.coreC)
			}
			return a.on.at.Add(minutes(m)).Truncate(time.Minute), true
		}
	}
	return time.Time{}, false
}

// fireFact is when the fire was lit, and when fuel was added for the first time,
// the second and so on.
func (v *revision) fireFact(s Step) (time.Time, bool) {
	if s.Kind == StepRefuel {
		if told, n := v.told(LogRefuelled), v.refuelNumber(s.ID); n > 0 && n <= len(told) {
			return told[n-1], true
		}
	}
	for _, at := range v.told(LogLit) {
		if s.Kind == StepLight && s.Phase == v.lights(at)+1 {
			return at, true
		}
	}
	return time.Time{}, false
}

// followsFromFacts says whether a step stands at an instant that later readings
// do not move: the fire of phases that have begun, serving, and what follows a
// take-off that is logged. It is done when that instant has passed.
func (v *revision) followsFromFacts(s Step, l left) bool {
	switch s.Kind {
	case StepServe, StepSlice:
		return true
	case StepRefuel, StepCloseDown:
		return false
	case StepRest, StepBox, StepToOven, StepHold:
		a := l.of(s.Dish, s.Batch)
		return a != nil && a.off.logged
	}
	return s.Dish == "" && s.Phase <= v.phases
}

// wasDone says whether a step of the first plan that is due was done, for all
// that is known. What the log follows is done when the log says so.
func (v *revision) wasDone(s Step) bool {
	if s.Dish == "" {
		return s.Phase <= v.phases
	}
	for _, a := range v.afoot {
		if a.batch.it.dish.ID != s.Dish || a.batch.number != s.Batch {
			continue
		}
		switch s.Kind {
		case StepPutOn:
			return a.on.set
		case StepWrap:
			return a.wrap.set
		case StepTakeOff, StepRest, StepBox, StepToOven, StepHold:
			return a.where == off && !a.off.logged
		case StepStallBegins, StepStallEnds:
			return a.on.set && len(a.cores) == 0
		case StepThaw, StepTakeOut:
			return a.on.set // it came out of the refrigerator to go on
		}
		return a.on.set && !s.At.Before(a.on.at)
	}
	return true // of a dish that is no longer wanted
}
