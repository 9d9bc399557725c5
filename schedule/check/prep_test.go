package check_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

// The judge refuses a target below the minimum for what is rolled, whether the request
// says so or the name of the cut.
func TestRolledByNameIsJudgedAsRolled(t *testing.T) {
	for _, dish := range []string{
		"{name: Roast, cut: lamb-leg-rolled, weight: 4 lb}",
		"{name: Roast, cut: rib-roast-boneless, weight: 4 lb, prep: [rolled], target: 145 F}",
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, dish))
		asked := unit.FromFahrenheit(140)
		p.Dishes[0].TargetC, p.Dishes[0].Doneness = float64(asked), ""
		p.Request.Dishes[0].Target = &schedule.Target{Core: &asked}
		faults := check.Plan(p)
		if !slices.ContainsFunc(faults, func(f schedule.Fault) bool { return strings.Contains(f.Sentence, "its surface inside") }) {
			t.Errorf("%s at 140 F: %v", dish, faults)
		}
	}
}

// What may carry its surface inside is at its minimum before it is seared.
func TestSearedBelowItsMinimum(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Halves, cut: chicken-half, weight: 2 lb, count: 2, finish: sear}"))
	stages := p.Dishes[0].Batches[0].Stages
	stages[0].CoreC = p.Dishes[0].MinimumC - 5
	if !slices.Contains(rulesOf(p), "stages") {
		t.Errorf("seared at %.1f C: only %v spoke up", stages[0].CoreC, rulesOf(p))
	}
}
