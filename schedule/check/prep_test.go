package check_test

import (
	"slices"
	"testing"

	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
)

// A cut that is rolled by its name is judged as one that the request calls rolled: never
// below its minimum.
func TestRolledByNameIsJudgedAsRolled(t *testing.T) {
	for _, dish := range []string{
		"{name: Roast, cut: lamb-leg-rolled, weight: 4 lb}",
		"{name: Roast, cut: rib-roast-boneless, weight: 4 lb, prep: [rolled], target: 145 F}",
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, dish))
		p.Dishes[0].TargetC, p.Dishes[0].Doneness = 60, ""
		if !slices.Contains(rulesOf(p), "target") {
			t.Errorf("%s at 140 F: %v", dish, check.Plan(p))
		}
	}
}
