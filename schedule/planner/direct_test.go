package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A piece that is smoked first and seared at the end leaves the smoke 5 to 15 F below its
// target (common practice, no source), and the sear brings the rest.
func TestSmokeEndsBelowTheTargetOfASear(t *testing.T) {
	p := plantest.Plan(t, plantest.Days["sear"])
	b := p.Dishes[0].Batches[0]
	if b.Stages[0].Kind != schedule.StageBare || b.Stages[1].Kind != schedule.StageSear {
		t.Fatalf("stages %s and %s", b.Stages[0].Kind, b.Stages[1].Kind)
	}
	below := p.Dishes[0].TargetC - b.Stages[0].CoreC
	if below*1.8 < 5-0.05 || below*1.8 > 15+0.05 {
		t.Errorf("comes off the smoke %.1f F below its target, want 5 to 15", below*1.8)
	}
	if seared := b.Stages[1].CoreC; seared < b.Stages[0].CoreC || seared > p.Dishes[0].TargetC+0.5 {
		t.Errorf("%.1f C off the smoke, %.1f C off the sear, target %.1f C", b.Stages[0].CoreC, seared, p.Dishes[0].TargetC)
	}
	t.Log(b.Stages[0].CoreC, b.Stages[1].CoreC, b.Stages[2].CoreC, p.Dishes[0].TargetC)
}
