package planner_test

import (
	"fmt"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// What rides through a change of the fire takes room beside what goes on then: before, its
// place on the second fire was not seen, and ribs beside it were not said to be tight.
func TestTightBesideWhatRidesThroughAChange(t *testing.T) {
	for _, quiet := range []string{`{from: "12:20", to: "14:00"}`, `{from: "13:00", to: "14:40"}`} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+fmt.Sprintf("quiet: [%s]", quiet), "{name: Brisket, cut: brisket, weight: 12 lb}", "{name: Ribs, cut: baby-backs, weight: 2 lb}"))
		if b := p.Dishes[0].Batches[0].Stages[0]; p.Feasible && len(p.Phases) > 1 && b.Zone != "centre" {
			t.Errorf("quiet %s: the brisket lies in the %s first: the day tests nothing", quiet, b.Zone)
		}
	}
}
