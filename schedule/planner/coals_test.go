package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A steak of more than an inch and a quarter over a grate of 450 °F or more gets 4 to 5
// minutes a side and ends beside the coals; a thinner one, or a cooler grate, is turned
// half-way (common practice, no source).
func TestThickPiecesEndBesideTheCoals(t *testing.T) {
	for _, c := range []struct {
		dish string
		ends bool
	}{
		{"thickness: 1.5 in, level: 475 °F", true},
		{"thickness: 1.5 in, level: 375 °F", false},
		{"thickness: 1 in, level: 475 °F", false},
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Steaks, cut: steak, weight: 16 oz, count: 2, target: medium, "+c.dish+"}"))
		moved := false
		for _, s := range plantest.Steps(p, schedule.StepFlip) {
			moved = moved || strings.HasPrefix(s.Text, "Steaks: move beside the coals")
		}
		if moved != c.ends {
			t.Errorf("%s: moved beside the coals: %t, want %t", c.dish, moved, c.ends)
		}
	}
}

// Skin and sausages are crisped and browned after they are measured, never before: the
// coals earn them no credit (safety: at their minimum first).
func TestCoalsComeAfterTheMeasure(t *testing.T) {
	for _, c := range []struct {
		dish, text string
		step       bool
	}{
		{"{name: Halves, cut: chicken-half, weight: 2 lb, count: 2, level: 300 °F}", "165 °F", true},
		{"{name: Halves, cut: chicken-half, weight: 2 lb, count: 2, level: 350 °F}", "", false},
		{"{name: Bird, cut: chicken, weight: 4 lb, level: 275 °F}", "165 °F", true},
		{"{name: Links, cut: sausage, weight: 4 oz, count: 6}", "160 °F", true},
		{"{name: Links, cut: sausage, weight: 4 oz, count: 6, zone: direct}", "", false},
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, c.dish))
		off, coals := plantest.Steps(p, schedule.StepTakeOff), plantest.Steps(p, schedule.StepSear)
		if !c.step {
			if len(coals) > 0 {
				t.Errorf("%s: %s", c.dish, coals[0].Text)
			}
			continue
		}
		if len(off) != 1 || len(coals) != 1 || coals[0].At.Before(off[0].At) || !strings.Contains(coals[0].Text, "only once") || !strings.Contains(coals[0].Text, c.text) {
			t.Errorf("%s: off %v, coals %v", c.dish, off, coals)
		}
	}
}
