package revise

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
)

// rebuildMinutes are hands: ash out, coals lit in the chimney (common practice, no source).
const rebuildMinutes = 15

// rebuild is what has to be done now if the fire is out. Fuel that was due soon
// waits for that fire.
func (v *Revision) rebuild(p *schedule.Plan, steps []schedule.Step) []schedule.Step {
	if _, dead := v.grate.dead(); !dead || v.phases == 0 || !v.fireWanted() {
		return steps
	}
	for i, s := range steps {
		if s.Kind == schedule.StepRefuel && !s.Done && s.Phase == v.phases && s.At.Sub(v.now) < rebuiltLasts {
			steps[i].Text = "If the rebuilt fire wants it by then: " + s.Text
		}
	}
	return append(steps, schedule.Step{
		ID: plans.StepID(p.ID, "", v.phases, schedule.StepRefuel, 0), At: v.now, Window: plans.FixedWindow(v.now), Kind: schedule.StepRefuel, Phase: v.phases,
		Attended: true, Minutes: rebuildMinutes, GrateC: v.plannedLevel(v.now), Why: "the fire is out",
		Text: "Rebuild the fire now: food aside or indoors, ash out, bottom vent open. Light a chimney of coals, and pour them where the others were.",
	})
}

// fireWanted says whether something that may be served still needs a fire.
func (v *Revision) fireWanted() bool {
	for _, a := range v.batches {
		if a.where != off && !a.condemned {
			return true
		}
	}
	return false
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

// withdraw takes dishes that must not be served out of the steps to come: what is
// only expected of them or done for the table falls away, the rest says why it is
// not to be done.
func (v *Revision) withdraw(steps []schedule.Step, l remainder) []schedule.Step {
	ids, names := v.unfit(l)
	if len(ids) == 0 {
		return steps
	}
	out, wanted := steps[:0], v.fireWanted()
	for _, s := range steps {
		at := slices.Index(ids, s.Dish)
		switch {
		case s.Done:
		case !wanted && s.Kind == schedule.StepCheckFire:
			continue
		case !wanted && s.Kind == schedule.StepRefuel:
			s.Text = "Leave this out: nothing on this fire may be served."
		case at >= 0 && slices.Contains([]schedule.StepKind{schedule.StepLook, schedule.StepStallBegins, schedule.StepStallEnds, schedule.StepRest, schedule.StepBox, schedule.StepToOven, schedule.StepHold, schedule.StepFlip, schedule.StepSlice}, s.Kind):
			continue
		case at >= 0:
			s.Text = fmt.Sprintf("%s is outside the published limits: throw it away now, and leave this out.", names[at])
		case s.Kind == schedule.StepServe:
			s.Text = v.serveWithout(s, l)
		}
		out = append(out, s)
	}
	return out
}

// serveWithout is the text of a serving without the dishes that are not fit for it.
func (v *Revision) serveWithout(s schedule.Step, l remainder) string {
	var fit, unfit []string
	for i, a := range l.bound {
		name := a.batch.It.Dish.Name
		switch {
		case !v.day.At(float64(l.all[i].It.Serve)).Equal(s.At) || slices.Contains(fit, name) || slices.Contains(unfit, name):
		case a.condemned:
			unfit = append(unfit, name)
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
	if len(text) == 0 {
		return s.Text
	}
	return strings.Join(text, " ")
}
