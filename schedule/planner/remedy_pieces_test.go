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

// Three racks of 2.5 lb miss the room beside the coals of a 22 in kettle by little (71 sq
// in a rack by our estimate of its size, 204 by the rule of room). First come ways to lay
// them, then a little smaller ones, then fewer; each leads to a plan.
func TestRacksThatMissTheRoomByLittle(t *testing.T) {
	r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22, "{name: Ribs, cut: baby-backs, weight: 2.5 lb, count: 3}")))
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	at := -1
	for _, want := range []string{"Stand Ribs in an upright rack.", "Use a raised grate over", "Ribs: use 2.3 lb each instead of 2.5 lb", "Cook 2 of the 3 Ribs."} {
		i := slices.IndexFunc(p.Remedies, func(m schedule.Remedy) bool { return strings.HasPrefix(m.Text, want) })
		if i <= at {
			t.Fatalf("%q is at %d, not after %d: %+v", want, i, at, p.Remedies)
		}
		at = i
	}
	for _, f := range remedyFaults(documentOf(r), p.Remedies) {
		t.Error(f)
	}
}
