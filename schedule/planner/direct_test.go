package planner_test

import (
	"math"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A piece that is smoked first and seared at the end leaves the smoke about 15 F
// below its target, and the sear brings the rest (common practice, no source; to
// within 1 F, the rounding of a thermometer).
func TestSmokeEndsBelowTheTargetOfASear(t *testing.T) {
	p := plantest.Plan(t, plantest.Days["sear"])
	b := p.Dishes[0].Batches[0]
	if b.Stages[0].Kind != schedule.StageBare || b.Stages[1].Kind != schedule.StageSear {
		t.Fatalf("stages %s and %s", b.Stages[0].Kind, b.Stages[1].Kind)
	}
	below := p.Dishes[0].TargetC - b.Stages[0].CoreC
	if math.Abs(below*1.8-15) > 1 {
		t.Errorf("comes off the smoke %.1f F below its target, want about 15", below*1.8)
	}
	if left := p.Dishes[0].TargetC - b.Stages[1].CoreC; math.Abs(left) > 0.5 {
		t.Errorf("the sear ends %.1f K off the target", left)
	}
}
