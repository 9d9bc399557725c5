package planner_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Two racks of 3.5 lb miss the room beside the coals of a 22 in kettle by little (82 sq
// in a rack by our estimate of its size, 171 by the rule of room): a little smaller
// ones are offered before one rack alone, and they lead to a plan.
func TestRacksThatMissTheRoomByLittle(t *testing.T) {
	r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: spare-ribs, weight: 3.5 lb, count: 2}")))
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(p.Remedies, func(m schedule.Remedy) bool {
		return strings.HasPrefix(m.Text, "Take Ribs of 3.3 lb each instead of 3.5 lb")
	})
	if p.Feasible || i != 0 {
		t.Fatalf("feasible %t, remedies %+v", p.Feasible, p.Remedies)
	}
	if p = plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: spare-ribs, weight: 3.3 lb, count: 2}")); !p.Feasible {
		t.Errorf("racks of 3.3 lb: %v", p.Findings)
	}
}
