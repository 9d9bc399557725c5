package export

import (
	"slices"
	"strings"

	"example.com/cookday/schedule"
)

// tools lists what the stages need besides food and fuel.
func (v *view) tools() string {
	var need []string
	add := func(word string) {
		if !slices.Contains(need, word) {
			need = append(need, word)
		}
	}
	dishes := v.Dishes
	if b := v.dayBefore(); b != nil {
		dishes = slices.Concat(b.Dishes, v.Dishes)
	}
	for _, d := range dishes {
		if d.TargetC > 0 {
			add("an instant-read thermometer")
		}
		if onPlank(d.Name) {
			add("a plank of cedar or alder (an hour in water first)")
		}
	}
	if v.has(schedule.StepLayFire) {
		add("a chimney starter")
	}
	if v.litRefuel() {
		add("long gloves")
	}
	if v.has(schedule.StepBeforeSleep) {
		add("a probe alarm for the grate and one for the meat")
		add("a carbon monoxide alarm in the house")
	} else if v.has(schedule.StepCheckOven) {
		add("a probe with an alarm")
	}
	if v.Request.Grill.WaterPan {
		add("a water pan, to fill before the lid goes on")
	}
	if v.Ahead != nil { // covered in the oven, in parcels on the grate
		add("foil")
	}
	for _, d := range dishes {
		for _, b := range d.Batches {
			for _, p := range b.Pieces {
				if p.Lies == schedule.LiesStanding {
					add("an upright rack")
				}
				if p.Grate > 1 {
					add("the raised grate")
				}
			}
			for _, s := range b.Stages {
				if s.Place == schedule.HoldOven || s.Place == schedule.PlaceOven {
					add("a rimmed pan for the oven")
				}
				switch {
				case s.With == schedule.WrapFoil:
					add("foil")
				case s.With == schedule.WrapPaper:
					add("butcher paper")
				case s.Place == schedule.HoldTent:
					add("foil")
				case s.Place == schedule.HoldBox:
					add("a cooler with dry towels")
				}
			}
		}
	}
	return list(need)
}

// onPlank says of a dish that its cook named it by the plank that it lies on (common practice, no source: soaked for an hour,
// so that it smokes and does not burn).
func onPlank(name string) bool {
	return slices.Contains(strings.Fields(strings.ToLower(name)), "plank") || strings.Contains(strings.ToLower(name), "planked")
}

// has says whether the day has a step of a kind.
func (v *view) has(kind schedule.StepKind) bool {
	return slices.ContainsFunc(v.Steps, func(s schedule.Step) bool { return s.Kind == kind })
}

// litRefuel says whether coals are added lit.
func (v *view) litRefuel() bool {
	return slices.ContainsFunc(v.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepChangeFire && strings.Contains(s.Text, "lit") || s.Kind == schedule.StepRefuel && strings.Contains(s.Text, "gloves")
	})
}
