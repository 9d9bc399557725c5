package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What may carry its surface inside comes off the slow side at its published minimum, never
// below it: a sear earns no credit (fsg_safemin_2019: poultry 165 °F, whole muscle 145 °F; injected
// and tenderised by fda_3_401_11). An intact steak comes off below its target, and is
// measured after the sear.
func TestMinimumBeforeTheSear(t *testing.T) {
	for _, c := range []struct {
		dish  string
		first bool // the minimum holds before the sear
	}{
		{"{name: Halves, cut: chicken-half, weight: 2 lb, count: 2, finish: sear}", true},
		{"{name: Chops, cut: pork-chop, weight: 14 oz, count: 2, thickness: 1.5 in, finish: sear, prep: [injected]}", true},
		{"{name: Tips, cut: tri-tip, weight: 2 lb, finish: sear, prep: [tenderised], target: 145 °F}", true},
		{"{name: Roast, cut: lamb-leg-rolled, weight: 4 lb, finish: sear}", true},
		{"{name: Tips, cut: tri-tip, weight: 2 lb, finish: sear, target: 145 °F}", false},
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, c.dish))
		d := p.Dishes[0]
		smoked := d.Batches[0].Stages[0]
		if smoked.Kind != schedule.StageBare || d.Batches[0].Stages[1].Kind != schedule.StageSear {
			t.Fatalf("%s: %+v", c.dish, d.Batches[0].Stages)
		}
		if before := smoked.CoreC >= d.MinimumC-1e-9; before != c.first {
			t.Errorf("%s: off the slow side at %.1f C, minimum %.1f C", c.dish, smoked.CoreC, d.MinimumC)
		}
	}
}

// After every sear the cook is told to measure, and against what: the published minimum, or
// the doneness that was asked for below it.
func TestMeasuredAfterEverySear(t *testing.T) {
	for dish, want := range map[string]string{
		"{name: Tips, cut: tri-tip, weight: 2 lb, finish: sear, target: 145 °F}":      "measure: 145 °F or more, the USDA minimum. Less? Back beside the coals",
		"{name: Tips, cut: tri-tip, weight: 2 lb, finish: sear, target: 130 °F}":      "measure: 130 °F or more, what was asked for, below the USDA minimum. Less? Back beside the coals",
		"{name: Halves, cut: chicken-half, weight: 2 lb, count: 2, finish: sear}":     "measure: 165 °F or more, the USDA minimum. Less? Back beside the coals",
		"{name: Steaks, cut: steak, weight: 1 lb, count: 2, finish: sear}":            "Less? Back beside the coals",
		"{name: Roast, cut: rib-roast-bone-in, weight: 7 lb, finish: sear, count: 1}": "Less? Back beside the coals",
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, dish))
		off := plantest.Steps(p, schedule.StepTakeOff)
		if last := off[len(off)-1].Text; !strings.Contains(last, want) {
			t.Errorf("%s: %s", dish, last)
		}
	}
}
