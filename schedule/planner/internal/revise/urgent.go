package revise

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
)

// fedAnyway is how soon after a fire is fed another refuel of it is left out (judgment).
const fedAnyway = 20 * time.Minute

// rebuildMinutes are hands: ash out, coals lit in the chimney (common practice, no source).
const rebuildMinutes = 15

// pastWrapK is how far beyond the core of its wrap a piece is asked about, K.
const pastWrapK = 5

// shutSoon is how near a shutting down is to now for food on the grate to be named with it (judgment).
const shutSoon = 2 * time.Minute

// onlyOnceBare and onlyOnceDone begin an order that waits for an empty grate, and for what has to go back on it.
const (
	onlyOnceBare = "When the grate is empty: "
	onlyOnceDone = "When nothing has to go back on the grate: "
)

// asItIs fits steps to what is seen: it asks for the wrap of what was read well past it,
// which may be on and not logged; and closes no vent under food that is to make room.
func (v *Revision) asItIs(steps []schedule.Step, l remainder) []schedule.Step {
	for i, s := range steps {
		if s.Kind == schedule.StepCloseDown && !s.Done && (v.attempt.aside || v.sends() || !s.At.After(v.now.Add(shutSoon))) && v.foodOn() {
			steps[i].Text = onlyOnceBare + say.Lower(strings.TrimPrefix(s.Text, onlyOnceDone))
			continue
		}
		a := l.of(s.Dish, s.Batch)
		if a != nil && !s.Done && (s.Kind == schedule.StepTakeOff || s.Kind == schedule.StepLook || s.Kind == schedule.StepFlip) {
			if _, lies := a.lies(v.now); lies && !a.stands[len(a.stands)-1].sears {
				steps[i].Text = "Once it was back in heat: " + s.Text
			}
		}
		if s.Kind != schedule.StepWrap || s.Done || s.CoreC == 0 || a == nil || len(a.cores) == 0 || a.batch.It.Dish.Wrap != nil && a.batch.It.Dish.Wrap.After != nil {
			continue
		}
		if last := a.cores[len(a.cores)-1]; last.C > s.CoreC+pastWrapK {
			steps[i].Text = fmt.Sprintf("Is %s wrapped? Then log it (wrapped). If not, wrap it now in %s: it was at %s, past the %s of its wrap.", a.batch.It.Dish.Name, a.way().With, v.day.Core(last.C), v.day.Core(s.CoreC))
		}
	}
	return steps
}

// rebuild is what has to be done now if the fire is out. Fuel that was due soon
// waits for that fire.
func (v *Revision) rebuild(p *schedule.Plan, steps []schedule.Step) []schedule.Step {
	o, dead := v.grate.dead()
	sinks := v.grate.sinks()
	if !dead && !sinks || o.asked || o.unread && v.allSuspect() || v.phases == 0 || !v.fireWanted() || !v.feeds(p) || !v.wantedSoon(p) {
		return steps
	}
	lasts := time.Duration(rebuiltLasts)
	if sinks && !dead {
		if v.burnsOnlyUntil(v.now.Add(feedTells)) {
			return steps
		}
		lasts = feedsFor - rebuiltLasts
	}
	for i, s := range steps {
		if s.Kind == schedule.StepRefuel && !s.Done && s.Phase == v.phases && s.At.Sub(v.now) < lasts {
			steps[i].Text = "If the fire wants it by then: " + s.Text
			if !s.At.After(v.now.Add(fedAnyway)) {
				steps[i].Text = "Leave this out, even with food still on: the fire is fed anyway, now." // one order for one fire
			}
		}
	}
	if v.airFirst() {
		return steps
	}
	if s, ok := v.smotheredFire(); ok && (sinks || o.seen) && !v.noFuel() {
		return append(steps, v.smotheredStep(p, s))
	}
	text := "Rebuild the fire now: food aside or indoors, ash out, bottom vent open. Light a chimney of coals, and pour them where the others were."
	why := "the fire is out"
	if v.noFuel() {
		if !slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == cooking && v.needsFire(a) }) {
			return steps // the coals that come are told of
		}
		text = fmt.Sprintf("No coals are left: the food goes into the kitchen oven at %s now, straight from the grate.", v.day.Grate(undoneOvenC))
	} else if sinks || v.stillHot() {
		text, why = "The fire is sinking. "+v.feedNow(p), "the fire is sinking"
		if v.allOpenTold() {
			why = "the fire is sinking, and air is not what it lacks at the vents"
		}
	}
	return append(steps, schedule.Step{
		ID: plans.StepID(p.ID, "", v.phases, schedule.StepRefuel, 0), At: v.now, Window: plans.FixedWindow(v.now), Kind: schedule.StepRefuel, Phase: v.phases,
		Attended: true, Minutes: rebuildMinutes, GrateC: v.plannedLevel(v.now), Why: why,
		Text: text,
	})
}

// wantedSoon says whether something that may be served is over the fire, or goes on so soon that
// a fire which is made anew now is there for it.
func (v *Revision) wantedSoon(p *schedule.Plan) bool {
	if slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == cooking && !a.condemned && v.needsFire(a) }) {
		return true
	}
	by := v.now.Add(instant.Minutes(2 * newFireTakes))
	return slices.ContainsFunc(p.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepPutOn && !s.Done && !s.At.After(by) && !v.isUnfit(s.Dish)
	}) || slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where == waiting && !v.serve(a).After(by) })
}

// allSuspect says whether all that is on the fire is measured before anything else.
func (v *Revision) allSuspect() bool {
	return !slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.where != off && !a.suspect })
}

// feeds says whether the fire that burns, or is out, has food to come, or becomes the next.
func (v *Revision) feeds(p *schedule.Plan) bool {
	if v.phases < len(p.Phases) && !p.Phases[v.phases].Relit {
		return true
	}
	return v.cooksAt(p, v.now.Add(time.Minute))
}

// cooksAt says whether something is over the fire that burns at an instant or later.
func (v *Revision) cooksAt(p *schedule.Plan, at time.Time) bool {
	for _, d := range p.Dishes {
		for _, b := range d.Batches {
			for _, s := range b.Stages {
				if s.Phase > 0 && s.Phase <= v.phases && v.phases <= s.PhaseTo && !s.To.Before(at) {
					return true
				}
			}
		}
	}
	return false
}

// fireWanted says whether something that may be served still needs a fire: what is in the
// kitchen oven does not.
func (v *Revision) fireWanted() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return !a.condemned && v.needsFire(a) })
}

// needsFire says whether a piece is on the fire, or is to go on it.
func (v *Revision) needsFire(a *liveBatch) bool {
	return a.where == waiting || a.where == cooking && !v.inOven(a)
}

// unfit are the names of dishes outside the published limits, in order of the menu.
func (v *Revision) unfit(l remainder) (ids, names []string) {
	for _, a := range l.bound {
		if a.condemned && !slices.Contains(ids, a.batch.It.Dish.ID) {
			ids, names = append(ids, a.batch.It.Dish.ID), append(names, a.batch.It.Dish.Name)
		}
	}
	return ids, names
}

// isUnfit says whether a dish is outside the published limits.
func (v *Revision) isUnfit(dish string) bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.batch.It.Dish.ID == dish && a.condemned })
}

// isSuspect says whether a dish is to be measured before anything else.
func (v *Revision) isSuspect(dish string) bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.batch.It.Dish.ID == dish && a.suspect && !a.condemned })
}

// afterTheHeat are the steps that nobody takes with what does not come to the table.
var afterTheHeat = []schedule.StepKind{schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepCheckOven, schedule.StepHold, schedule.StepSlice, schedule.StepChill}

// onlyExpected are the steps of a dish that nobody waits for once it must not be eaten.
var onlyExpected = []schedule.StepKind{schedule.StepLook, schedule.StepStallBegins, schedule.StepStallEnds, schedule.StepFlip}

// makesFire are the steps by which a fire is made, which nobody makes for what is thrown away.
var makesFire = []schedule.StepKind{schedule.StepLayFire, schedule.StepLight, schedule.StepSetVents, schedule.StepFireReady}

// withdraw takes dishes that must not be served, and those that do not get done as
// things stand, out of the steps to come: what is only expected of them or done for the
// table falls away, the rest says why it is not to be done.
func (v *Revision) withdraw(steps []schedule.Step, l remainder) []schedule.Step {
	ids, names := v.unfit(l)
	never := v.neverDone(l)
	unsure, _ := suspects(l)
	wanted := v.fireWanted()
	unshown := slices.ContainsFunc(l.bound, func(a *liveBatch) bool { return a.unshown() })
	if len(ids)+len(never)+len(unsure) == 0 && wanted && !unshown {
		return steps
	}
	out := steps[:0]
	for _, s := range steps {
		at := slices.Index(ids, s.Dish)
		a := l.of(s.Dish, s.Batch)
		switch {
		case s.Done, a != nil && a.served.set: // what was served went through all of it
		case !wanted && s.Kind == schedule.StepCheckFire, !wanted && len(ids) > 0 && (s.Kind == schedule.StepWaking || s.Kind == schedule.StepBeforeSleep):
			continue
		case !wanted && len(ids) > 0 && s.Dish == "" && slices.Contains(makesFire, s.Kind):
			s.Text = "Leave this out: nothing on this fire may be served."
		case !wanted && s.Kind == schedule.StepRefuel && len(ids) == 0:
			s.Text = "Leave this out: nothing is on this fire any more."
		case !wanted && s.Kind == schedule.StepRefuel:
			s.Text = "Leave this out: nothing on this fire may be served."
		case at >= 0 && (s.Kind == schedule.StepWrap || slices.Contains(afterTheHeat, s.Kind) || slices.Contains(onlyExpected, s.Kind)):
			continue
		case at >= 0 && s.Kind == schedule.StepTakeOff:
			s.Text = fmt.Sprintf("Take %s off and throw it away: it is outside the published limits.", names[at])
		case at >= 0:
			s.Text = fmt.Sprintf("%s is outside the published limits: throw it away now, and leave this out.", names[at])
		case slices.ContainsFunc(never, func(a *liveBatch) bool { return a.is(s.Dish, s.Batch) }) && (s.Kind == schedule.StepTakeOff || slices.Contains(afterTheHeat, s.Kind)):
			continue
		case s.Kind == schedule.StepServe:
			s.Text = v.serveWithout(s, l)
		}
		out = append(out, s)
	}
	return out
}

// neverDone are the pieces that do not get done as things stand.
func (v *Revision) neverDone(l remainder) []*liveBatch {
	return slices.DeleteFunc(slices.Clone(l.bound), func(a *liveBatch) bool { return !a.outOfReach() || a.condemned })
}

// is says whether the batch is that one of a dish.
func (a *liveBatch) is(dish string, number int) bool {
	return a.batch.It.Dish.ID == dish && a.batch.Number == number
}

// serveWithout is the text of a serving without the dishes that are not fit for it.
func (v *Revision) serveWithout(s schedule.Step, l remainder) string {
	var fit, unfit, unsure, undone, heat []string
	never := v.neverDone(l)
	for i, a := range l.bound {
		name := a.batch.It.Dish.Name
		switch {
		case !v.day.At(float64(l.all[i].It.Serve)).Equal(s.At) || slices.Contains(fit, name) || slices.Contains(unfit, name) || slices.Contains(unsure, name) || slices.Contains(undone, name) || slices.Contains(heat, name):
		case a.condemned && a.mends:
			heat = append(heat, name)
		case a.condemned:
			unfit = append(unfit, name)
		case a.suspect || a.unshown():
			unsure = append(unsure, name)
		case slices.Contains(never, a):
			undone = append(undone, name)
		default:
			fit = append(fit, name)
		}
	}
	var text []string
	if len(fit) > 0 {
		text = append(text, "Serve: "+say.Listed(fit, "and")+".")
	}
	if len(unfit) > 0 {
		text = append(text, "Do not serve "+say.Listed(unfit, "or")+": outside the published limits.")
	}
	if len(heat) > 0 {
		text = append(text, "Do not serve "+say.Listed(heat, "or")+" yet: first make it hot in time, as its own line says.")
	}
	if len(unsure) > 0 {
		text = append(text, "Do not serve "+say.Listed(unsure, "or")+" yet: measure the coldest place first, log it, and ask again.")
	}
	if len(undone) > 0 {
		text = append(text, "Not yet done: "+say.Listed(undone, "and")+".")
	}
	if len(text) == 0 {
		return s.Text
	}
	return strings.Join(text, " ")
}
