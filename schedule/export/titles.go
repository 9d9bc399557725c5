package export

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule"
)

// titleWords begin the title of a step. Where a dish or a temperature belongs to it, it
// follows a colon.
var titleWords = map[schedule.StepKind]string{
	schedule.StepTakeOut: "Out of the fridge", schedule.StepLayFire: "Lay the fire", schedule.StepLight: "Light", schedule.StepFireReady: "Fire ready", schedule.StepSetVents: "Set the vents",
	schedule.StepLook: "Start checking", schedule.StepCheckFire: "Check the grate", schedule.StepRefuel: "Add coals", schedule.StepBeforeSleep: "Before you sleep",
	schedule.StepWaking: "Read the grate, then the core", schedule.StepChangeFire: "Change the fire", schedule.StepFlip: "Turn", schedule.StepBox: "Into the cooler",
	schedule.StepToOven: "Into the oven", schedule.StepIndoors: "Finish in the oven", schedule.StepCheckOven: "Check the oven", schedule.StepCloseDown: "Shut the grill down",
}

// stepTitle says a step in a few words, with the temperature that decides it: "Take off: Brisket, 203 °F".
func (v *view) stepTitle(s schedule.Step) string {
	text := strings.TrimSuffix(sentence(s.Text), ".")
	switch s.Kind {
	case schedule.StepSlice, schedule.StepServe:
		if v.kind(s) != "chill" && !strings.Contains(text, ". ") && text != "" {
			return text
		}
	case schedule.StepSetVents:
		if poursCoals(s) {
			return "Pour the lit coals"
		}
	case schedule.StepLight:
		if s.Phase > 0 && s.Phase <= len(v.Phases) && !s.At.Equal(v.Phases[s.Phase-1].SetupFrom) { // for a change, or to be added
			return "Light the chimney"
		}
		return "Light the fire"
	}
	title := titleWords[s.Kind]
	if title == "" {
		title = capital(v.kind(s))
	}
	var about []string
	if s.Dish != "" {
		about = append(about, v.dishBatch(s))
	}
	if degrees := v.decides(s, text); degrees != "" {
		about = append(about, degrees)
	}
	if len(about) > 0 {
		title += ": " + strings.Join(about, ", ")
	}
	return title
}

// poursCoals says whether a step to set the vents is there because coals come into the grill.
func poursCoals(s schedule.Step) bool {
	return s.Kind == schedule.StepSetVents && (strings.HasPrefix(s.Text, "Pour the lit coals") || strings.HasPrefix(s.Text, "Set the lit coals"))
}

// decides is the temperature that a step is about: of the core where the step is told by it,
// of the grate where food or fire meets it.
func (v *view) decides(s schedule.Step, text string) string {
	switch s.Kind {
	case schedule.StepTakeOff, schedule.StepWrap:
		if core := v.core(s.CoreC); s.CoreC > 0 && strings.Contains(text, " at "+core) {
			return core
		}
	case schedule.StepPutOn, schedule.StepCheckFire, schedule.StepChangeFire, schedule.StepFireReady:
		if s.GrateC > 0 {
			return v.grate(s.GrateC)
		}
	}
	return ""
}

// titlesTold is how many steps an event has in its title: a phone shows no more.
const titlesTold = 3

// occasionTitle is the title of several steps: what cannot wait first, for a phone shows some
// forty letters; the same work on two dishes with its words said once.
func (v *view) occasionTitle(group []entry) string {
	var steps []schedule.Step
	for _, e := range group {
		steps = append(steps, e.step)
		for _, s := range e.also {
			if sameWork(e.step, s) {
				steps = append(steps, s)
			}
		}
	}
	slices.SortStableFunc(steps, func(a, b schedule.Step) int { return canWait(a) - canWait(b) })
	var titles []string
	said := ""
	for _, s := range steps {
		title := v.stepTitle(s)
		deed, rest, labeled := strings.Cut(title, ": ")
		if labeled && deed == said {
			titles[len(titles)-1] += "; " + rest
			continue
		}
		if said = ""; labeled {
			said = deed
		}
		titles = append(titles, title)
	}
	more := len(titles) - titlesTold
	title := strings.Join(titles[:min(len(titles), titlesTold)], "; ")
	if more > 0 {
		title += fmt.Sprintf("; and %d more", more)
	}
	return title
}

// canWait ranks what is done in one go: hot food first, what is cold or only looked at last.
func canWait(s schedule.Step) int {
	switch s.Kind {
	case schedule.StepTakeOut:
		return 2
	case schedule.StepCheckFire:
		return 1
	}
	return 0
}

// dishBatch is the name of a step's dish, with its batch where there are several.
func (v *view) dishBatch(s schedule.Step) string {
	name := v.dish(s.Dish)
	i := slices.IndexFunc(v.Dishes, func(d schedule.DishPlan) bool { return d.ID == s.Dish })
	if i >= 0 && len(v.Dishes[i].Batches) > 1 && s.Batch > 0 {
		name = fmt.Sprintf("%s, batch %d", name, s.Batch)
		for _, b := range v.Dishes[i].Batches {
			if b.Number == s.Batch && v.Dishes[i].Count > len(b.Pieces) && len(b.Pieces) > 0 {
				name += fmt.Sprintf(" (%d of %d)", len(b.Pieces), v.Dishes[i].Count)
			}
		}
	}
	return name
}
