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
	schedule.StepTakeOut: "Take out", schedule.StepLayFire: "Lay the fire", schedule.StepLight: "Light", schedule.StepFireReady: "Fire ready", schedule.StepSetVents: "Set the vents",
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

// dishBatch is the name of a step's dish, with its batch where there are several.
func (v *view) dishBatch(s schedule.Step) string {
	name := v.dish(s.Dish)
	i := slices.IndexFunc(v.Dishes, func(d schedule.DishPlan) bool { return d.ID == s.Dish })
	if i >= 0 && len(v.Dishes[i].Batches) > 1 && s.Batch > 0 {
		return fmt.Sprintf("%s, batch %d", name, s.Batch)
	}
	return name
}
