package planner_test

import (
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What asks for a gentle level, or for the side away from the coals, cooks there
// even where its habit is over them: a fire of 250 F has no place over its coals.
func TestGentleLevelCooksBesideTheCoals(t *testing.T) {
	for _, dish := range []string{
		"{name: Steaks, cut: steak, thickness: 1.5 in, count: 4, level: 250 F}",
		"{name: Burgers, cut: burger, weight: 6 oz, count: 4, level: 275 F}",
		"{name: Burgers, cut: burger, weight: 6 oz, count: 4, zone: indirect}",
		"{name: Corn, cut: corn, count: 4, zone: indirect}",
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, dish))
		if !p.Feasible {
			t.Errorf("%s: no plan: %v", dish, p.Findings)
			continue
		}
		first := p.Dishes[0].Batches[0].Stages[0]
		if first.Direct {
			t.Errorf("%s: cooks over the coals", dish)
		}
		if asked := p.Request.Dishes[0].Level; asked != nil && math.Abs(first.LevelC-float64(*asked)) > 0.5 {
			t.Errorf("%s: cooks at %.0f degC", dish, first.LevelC)
		}
	}
}

func TestNoFireIsAsCoolOverItsCoals(t *testing.T) {
	_, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22, "{name: Steaks, cut: steak, thickness: 1.5 in, level: 250 F, zone: direct}")))
	if err == nil || !strings.Contains(err.Error(), "dishes[0].level") {
		t.Errorf("a level of 250 F over the coals: %v", err)
	}
}
