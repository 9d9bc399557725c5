package check_test

import (
	"slices"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A piece that is seared on the fire that burns lies in two places of one phase, first
// beside the coals and then over them. Its second place is free before its sear, and taken
// during it.
func TestSearedPieceLiesWhereItIsThen(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Thick steaks, cut: steak, weight: 2 lb, thickness: 2 in, count: 2, finish: sear}",
		"{name: Sirloins, cut: steak-sirloin, weight: 1 lb, count: 2}"))
	seared, other := &p.Dishes[0].Batches[0], &p.Dishes[1].Batches[0]
	i := slices.IndexFunc(seared.Stages, func(s schedule.Stage) bool { return s.Kind == schedule.StageSear })
	if i < 0 || len(seared.Pieces[0].Spots) != 2 {
		t.Fatalf("not seared on the fire that burns: the day tests nothing: %+v", seared)
	}
	seared.Pieces[0].Spots[1] = other.Pieces[0].Spots[0]
	seared.Stages[i].From = other.Stages[0].To.Add(-3 * time.Minute)
	if !slices.Contains(rulesOf(p), "spots") {
		t.Errorf("seared on another piece: only %v spoke up", rulesOf(p))
	}
}
