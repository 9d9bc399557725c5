package planner_test

import (
	"fmt"
	"slices"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What rides through a change of the fire takes room beside what goes on then: before, its
// place on the second fire was not seen, and ribs beside it were not said to be tight.
func TestTightBesideWhatRidesThroughAChange(t *testing.T) {
	for _, quiet := range []string{`{from: "12:20", to: "14:00"}`, `{from: "13:00", to: "14:40"}`} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+fmt.Sprintf("oven: {hold: 170 F}\nquiet: [%s]", quiet), "{name: Brisket, cut: brisket, weight: 12 lb, level: 225 F, hold: [oven]}", "{name: Ribs, cut: baby-backs, weight: 2 lb}"))
		if !p.Feasible || len(p.Phases) < 2 || p.Dishes[0].Batches[0].Stages[0].Zone != "centre" {
			t.Fatalf("quiet %s: the brisket rides through no change: the day tests nothing", quiet)
		}
		if !slices.ContainsFunc(p.Findings, func(f schedule.Finding) bool { return f.Code == "tight" && slices.Contains(f.Dishes, "ribs") }) {
			t.Errorf("quiet %s: nothing says that the ribs are tight: %v", quiet, p.Findings)
		}
	}
}

// It lies on the second fire too, on the side like its own: before, its place there was not
// drawn, for that side has another name.
func TestWhatRidesThroughAChangeLiesOnBothFires(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170+`quiet: [{from: "12:20", to: "14:00"}]`, "{name: Brisket, cut: brisket, weight: 12 lb, level: 225 F, hold: [oven]}", "{name: Ribs, cut: baby-backs, weight: 2 lb}"))
	b := p.Dishes[0].Batches[0]
	if len(p.Phases) < 2 || b.Stages[0].Zone != "centre" {
		t.Fatal("the brisket rides through no change: the day tests nothing")
	}
	for _, ph := range p.Phases {
		if !slices.ContainsFunc(b.Pieces[0].Spots, func(s schedule.Spot) bool { return s.Phase == ph.Number }) {
			t.Errorf("no place on fire %d: %+v", ph.Number, b.Pieces[0].Spots)
		}
	}
}
