package planner_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Each take-off of what went on raw names a clean plate and clean tongs, those before a sear
// too; corn and bread want none. Sauce that met raw meat is warned of where there is meat.
func TestACleanPlateAtEachTakeOff(t *testing.T) {
	for _, dishes := range [][]string{
		{"{name: Meat, cut: brisket, weight: 12 lb}", "{name: Meat, cut: burger, weight: 6 oz, count: 6}"},
		{"{name: Meat, cut: chicken, weight: 4 lb}", "{name: Corn, cut: corn, weight: 11 oz, count: 4}"},
		{"{name: Meat, cut: tri-tip, weight: 2 lb, level: 275 F, finish: sear}", "{name: Corn, cut: flatbread, weight: 4 oz, count: 2}"},
		{"{name: Meat, cut: salmon-side, weight: 2.5 lb}"},
		{"{name: Corn, cut: corn, weight: 11 oz, count: 4}"},
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, dishes...))
		offs := 0
		for _, s := range p.Steps {
			if s.Kind != schedule.StepTakeOff {
				continue
			}
			offs++
			if raw := strings.HasPrefix(s.Text, "Meat"); raw != strings.Contains(s.Text, "Clean plate, clean tongs.") {
				t.Errorf("%s", s.Text)
			}
		}
		if offs < len(dishes) {
			t.Errorf("%v: %d take-offs", dishes, offs)
		}
		meat := strings.Contains(dishes[0], "Meat") && !strings.Contains(dishes[0], "salmon")
		if said := slices.ContainsFunc(p.Cautions, func(c schedule.Caution) bool { return c.Code == "sauce-apart" }); meat && !said || said && !strings.Contains(dishes[0], "Meat") {
			t.Errorf("%v: sauce is spoken of: %t", dishes, said)
		}
	}
}

// A wrap is opened over a pan, away from the fire.
func TestAWrapIsOpenedOverAPan(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, "{cut: pork-butt, weight: 8 lb}"))
	if got := stepTexts(p, schedule.StepRest); !strings.Contains(got, "open the wrap over a pan, away from the fire") {
		t.Errorf("%s", got)
	}
}

// Where pieces lie close they are measured on the side where they touch.
func TestWherePiecesTouchTheyAreMeasured(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{cut: brisket, weight: 14 lb, level: 250 F}"))
	f, tight := plantest.Finding(p, "tight")
	if !tight || !strings.Contains(f.Text, "measure on the side where it touches") {
		t.Errorf("tight: %t, %q", tight, f.Text)
	}
}
