package assemble_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// At a change of fire what is left of the first counts: never more is to be lit than
// if nothing were left.
func TestChangeOfFireCountsWhatIsLeft(t *testing.T) {
	p := plantest.Party(t, "../../../..")
	for i, ph := range p.Phases[:len(p.Phases)-1] {
		if ph.Burn.LeftKg < 0 || ph.Burn.LeftKg > ph.Burn.LayKg {
			t.Errorf("phase %d: %g kg left of %g laid", i+1, ph.Burn.LeftKg, ph.Burn.LayKg)
		}
	}
	change, vents := 0, 0
	for _, s := range p.Steps {
		switch {
		case s.Kind == schedule.StepChangeFire:
			change++
		case s.Kind == schedule.StepSetVents && s.Phase > 1:
			vents++
		}
	}
	if change != len(p.Phases)-1 || vents != change {
		t.Errorf("%d changes, %d settings of vents after them, %d phases", change, vents, len(p.Phases))
	}
}
