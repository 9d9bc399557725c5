package revise

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
)

// stay is where a piece was held from an instant on, as told: one of schedule.HeldIn*, or
// anything else for where the plan has it.
type stay struct {
	from  time.Time
	place string
}

// hold notes where a piece waits, and since when it does. Told again it has not moved.
func (a *liveBatch) hold(fact known, place string) {
	if !a.boxed.set {
		a.boxed = fact
	}
	if n := len(a.held); n == 0 || a.held[n-1].place != place {
		a.held = append(a.held, stay{fact.at, place})
	}
}

// heldIn is where it is held as told last; "" for nothing told of that.
func (a *liveBatch) heldIn() string {
	if len(a.held) == 0 {
		return ""
	}
	return a.held[len(a.held)-1].place
}

// heldFrom is since when it is held there; it must be held.
func (a *liveBatch) heldFrom() time.Time { return a.held[len(a.held)-1].from }

// setHold is how a batch waits: where it was put last, else where the first plan has it, which
// does not move with the hour of the meal; where it cooks still, only if that lasts.
func (v *Revision) setHold(a *liveBatch, p *arrange.Placed) {
	v.day.SetHold(p, p.EarlyGap())
	defer func() {
		if p.Hold >= 0 && v.neverPutAway(a, p.Options[p.Hold].Method) {
			p.Hold = -1
		}
	}()
	if method := a.methodIn(a.heldIn(), ""); method != "" {
		v.holdIn(p, method)
		return
	}
	first := v.firstHold(a)
	lasts := slices.ContainsFunc(p.Options, func(o day.HoldOption) bool { return o.Method == first && o.Minutes >= p.EarlyGap() })
	if a.where == off && first != "" || a.where == cooking && p.Hold >= 0 && lasts {
		p.UseHold(first)
	}
}

// neverPutAway says of a piece that is off, and of which nobody logged that it was put anywhere until
// its meal was past, that nobody puts it away any more.
func (v *Revision) neverPutAway(a *liveBatch, method string) bool {
	if a.where != off || a.boxed.set || a.placeAsked || v.now.Before(v.serve(a)) {
		return false
	}
	n := len(a.stands)
	if open := n > 0 && a.stands[n-1].open; !open && !a.served.set && v.now.Sub(a.off.at).Minutes() > placeAskedFrom {
		return false // where it is, is asked
	}
	kind := schedule.StepHold
	for k, m := range holdSteps {
		if m == method {
			kind = k
		}
	}
	_, put := v.putAway(a, kind)
	return !put
}

// methodIn is the way of waiting of a place; that of the plan for any that is none.
func (a *liveBatch) methodIn(place, planned string) string {
	switch place {
	case schedule.HeldInCooler:
		return schedule.HoldBox
	case schedule.HeldInOven:
		return schedule.HoldOven
	}
	return planned
}

// firstHold is how a batch waits in the first plan; "" for not at all.
func (v *Revision) firstHold(a *liveBatch) string {
	if a.first == nil || a.first.Hold < 0 {
		return ""
	}
	return a.first.Options[a.first.Hold].Method
}

// holdIn has a batch wait where the log says that it does, whether or not the plan would.
func (v *Revision) holdIn(p *arrange.Placed, method string) {
	if !slices.ContainsFunc(p.Options, func(o day.HoldOption) bool { return o.Method == method }) {
		o := v.day.HoldBy(p.It, p.Way, day.Lot{MassKg: p.MassKg, Count: p.Count}, method, 0)
		p.Options = append(slices.Clone(p.Options), o) // the day's answer is kept for others
	}
	p.UseHold(method)
}

// staysTold are the steps of waiting of what was put away as the log tells: where it was before it
// was moved on, and of dishes that were off before they were called off. A revision may have
// planned another way to wait than the first plan.
func (v *Revision) staysTold(p *schedule.Plan, l remainder) []schedule.Step {
	var out []schedule.Step
	for _, a := range slices.Concat(v.called, v.batches) {
		for _, method := range v.methodsTold(a) {
			b := v.placedBefore(a, len(l.a.Solution.Phases))
			v.setHold(a, b)
			v.holdIn(b, method)
			it := &assemble.Itinerary{D: v.day, Plan: p, A: l.a, Count: map[string]int{}}
			it.Wait(b)
			out = append(out, it.Steps...)
		}
	}
	return slices.DeleteFunc(out, func(s schedule.Step) bool { _, told := v.fact(s, l); return !told })
}

// methodsTold are the ways in which a piece that is off was held, as told, but for how it waits
// now if it is on the menu still.
func (v *Revision) methodsTold(a *liveBatch) (all []string) {
	if !a.off.set {
		return nil
	}
	for i, h := range a.held {
		if m := a.methodIn(h.place, v.firstHold(a)); m != "" && !slices.Contains(all, m) && (i < len(a.held)-1 || slices.Contains(v.called, a)) {
			all = append(all, m)
		}
	}
	return all
}

// holdSteps are the steps by which a piece is put where it waits, and the way of waiting of each.
var holdSteps = map[schedule.StepKind]string{schedule.StepBox: schedule.HoldBox, schedule.StepToOven: schedule.HoldOven, schedule.StepHold: ""}

// putAway is when a piece was first put where a step has it, as told; or, where nothing else is
// told, as the first plan had it from the take-off on, of what rests in the open or is asked after.
func (v *Revision) putAway(a *liveBatch, kind schedule.StepKind) (time.Time, bool) {
	is := func(method string) bool {
		if method != schedule.HoldBox && method != schedule.HoldOven {
			return kind == schedule.StepHold
		}
		return holdSteps[kind] == method
	}
	for _, h := range a.held {
		if is(a.methodIn(h.place, v.firstHold(a))) {
			return h.from, true
		}
	}
	if len(a.held) > 0 || !a.off.logged || v.loose || a.first == nil || kind != schedule.StepHold && !a.placeAsked || !is(v.firstHold(a)) {
		return time.Time{}, false
	}
	if a.placeAsked {
		return a.off.at, true
	}
	if after, ok := v.waitsAfter(a, kind); ok {
		at := a.off.at.Add(after)
		return at, !at.After(instant.Earlier(v.now, v.askedServe(a)))
	}
	return time.Time{}, false
}

// waitsAfter is how long after its take-off the first plan has a piece put where it waits, by a
// step of a kind; of any for none.
func (v *Revision) waitsAfter(a *liveBatch, kind schedule.StepKind) (time.Duration, bool) {
	if a.first == nil || v.loose {
		return 0, false
	}
	for _, s := range v.first.Steps {
		_, puts := holdSteps[s.Kind]
		if a.is(s.Dish, s.Batch) && puts && (kind == "" || s.Kind == kind) {
			return max(s.At.Sub(v.base.At(a.first.On-a.first.Took().Expected)), 0).Truncate(time.Minute), true
		}
	}
	return 0, false
}

// askedServe is when a batch was to be eaten by all that is told, whatever the day comes to.
func (v *Revision) askedServe(a *liveBatch) time.Time {
	for i := range v.asking.Items {
		if it := &v.asking.Items[i]; it.Dish.ID == a.batch.It.Dish.ID {
			return v.asking.At(float64(it.Serve))
		}
	}
	return v.serve(a) // called off
}
