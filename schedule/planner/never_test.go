package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// A dish that goes by the clock has no core temperature: where no fire has the heat for
// it, that is said, and no temperature of a core.
func TestATimedDishWithoutItsHeatIsSaidInItsWords(t *testing.T) {
	const oneHotZone = "grill: {kind: other, zones: [{name: hot, width: 0.5 m, depth: 0.5 m, min: 360 C, max: 390 C}]}\n"
	p := plantest.Plan(t, plantest.Evening(oneHotZone, "{cut: beans-pan, level: 561 F}"))
	f, ok := p.Finding("never-arrives")
	if p.Feasible || !ok {
		t.Fatalf("feasible %v, findings %v", p.Feasible, p.Findings)
	}
	if strings.Contains(f.Text, "core") || !strings.Contains(f.Text, "by the clock") {
		t.Errorf("%q", f.Text)
	}
}

// A level that is a little outside of what a layout is made for is near enough: the
// judge and the plan agree on how near.
func TestALevelNearTheEndOfALayoutIsPlanned(t *testing.T) {
	for _, level := range []string{"200 F", "202 F", "210 F", "215 F", "223 F", "330 F", "345 F", "420 F", "430 F"} {
		plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{cut: ham-portion, weight: 2 lb, level: "+level+"}"))
		plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{cut: brisket-flat, weight: 4 lb, level: "+level+"}"))
	}
}
