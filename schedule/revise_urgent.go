package schedule

import (
	"fmt"
	"slices"
	"strings"
)

// rebuildMinutes are hands: ash out, coals lit in the chimney (common practice, no source).
const rebuildMinutes = 15

// rebuild is what has to be done now if the fire is out. Fuel that was due soon
// waits for that fire.
func (v *revision) rebuild(p *Plan, steps []Step) []Step {
	if _, dead := v.grate.dead(); !dead || v.phases == 0 || !v.fireWanted() {
		return steps
	}
	for i, s := range steps {
		if s.Kind == StepRefuel && !s.Done && s.Phase == v.phases && s.At.Sub(v.now) < rebuiltLasts {
			steps[i].Text = "If the rebuilt fire wants it by then: " + s.Text
		}
	}
	return append(steps, Step{
		ID: stepID(p.ID, "", v.phases, StepRefuel, 0), At: v.now, Window: fixedWindow(v.now), Kind: StepRefuel, Phase: v.phases,
		Attended: true, Minutes: rebuildMinutes, GrateC: v.plannedLevel(v.now), Why: "the fire is out",
		Text: "Rebuild the fire now: food aside or indoors, ash out, bottom vent open. Light a chimney of coals, and pour them where the others were.",
	})
}

// fireWanted says whether something that may be served still needs a fire.
func (v *revision) fireWanted() bool {
	for _, a := range v.afoot {
		if a.where != off && !a.condemned {
			return true
		}
	}
	return false
}

// unfit are the names of dishes outside the published limits, in order of the menu.
func (v *revision) unfit(l left) (ids, names []string) {
	for _, a := range l.bound {
		if a.condemned && !slices.Contains(ids, a.batch.it.dish.ID) {
			ids, names = append(ids, a.batch.it.dish.ID), append(names, a.batch.it.dish.Name)
		}
	}
	return ids, names
}

// isUnfit says whether a dish is outside the published limits.
func (v *revision) isUnfit(dish string) bool {
	return slices.ContainsFunc(v.afoot, func(a *afoot) bool { return a.batch.it.dish.ID == dish && a.condemned })
}

// withdraw takes dishes that must not be served out of the steps to come: what is
// only expected of them or done for the table falls away, the rest says why it is
// not to be done.
func (v *revision) withdraw(steps []Step, l left) []Step {
	ids, names := v.unfit(l)
	if len(ids) == 0 {
		return steps
	}
	out, wanted := steps[:0], v.fireWanted()
	for _, s := range steps {
		at := slices.Index(ids, s.Dish)
		switch {
		case s.Done:
		case !wanted && s.Kind == StepCheckFire:
			continue
		case !wanted && s.Kind == StepRefuel:
			s.Text = "Leave this out: nothing on this fire may be served."
		case at >= 0 && slices.Contains([]string{StepLook, StepStallBegins, StepStallEnds, StepRest, StepBox, StepToOven, StepHold, StepFlip, StepSlice}, s.Kind):
			continue
		case at >= 0:
			s.Text = fmt.Sprintf("%s is outside the published limits: throw it away now, and leave this out.", names[at])
		case s.Kind == StepServe:
			s.Text = v.serveWithout(s, l)
		}
		out = append(out, s)
	}
	return out
}

// serveWithout is the text of a serving without the dishes that are not fit for it.
func (v *revision) serveWithout(s Step, l left) string {
	var fit, unfit []string
	for i, a := range l.bound {
		name := a.batch.it.dish.Name
		switch {
		case !v.day.at(float64(l.all[i].it.serve)).Equal(s.At) || slices.Contains(fit, name) || slices.Contains(unfit, name):
		case a.condemned:
			unfit = append(unfit, name)
		default:
			fit = append(fit, name)
		}
	}
	var text []string
	if len(fit) > 0 {
		text = append(text, "Serve: "+listed(fit, "and")+".")
	}
	if len(unfit) > 0 {
		text = append(text, "Do not serve "+listed(unfit, "or")+": outside the published limits.")
	}
	if len(text) == 0 {
		return s.Text
	}
	return strings.Join(text, " ")
}
