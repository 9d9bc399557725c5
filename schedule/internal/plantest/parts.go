package plantest

import (
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// StepAt is the instant of the first step of a kind and dish.
func StepAt(t testing.TB, p schedule.Plan, kind schedule.StepKind, dish string) time.Time {
	t.Helper()
	return Step(t, p, kind, dish).At
}

// Step is the first step of a kind and dish.
func Step(t testing.TB, p schedule.Plan, kind schedule.StepKind, dish string) schedule.Step {
	t.Helper()
	for _, s := range p.Steps {
		if s.Kind == kind && s.Dish == dish {
			return s
		}
	}
	t.Fatalf("no step %s of %s", kind, dish)
	return schedule.Step{}
}

// Steps are all steps of a kind.
func Steps(p schedule.Plan, kind schedule.StepKind) []schedule.Step {
	var out []schedule.Step
	for _, s := range p.Steps {
		if s.Kind == kind {
			out = append(out, s)
		}
	}
	return out
}

// TakeOff is the window in which a dish's first batch comes off.
func TakeOff(t testing.TB, p schedule.Plan, dish string) schedule.Window {
	t.Helper()
	for _, d := range p.Dishes {
		if d.ID != dish {
			continue
		}
		for _, m := range d.Batches[0].Milestones {
			if m.Kind == schedule.MilestoneTakeOff {
				return m.Window
			}
		}
	}
	t.Fatalf("no take-off of %s", dish)
	return schedule.Window{}
}

// Finding is the first finding of a code.
func Finding(p schedule.Plan, code string) (schedule.Finding, bool) {
	for _, f := range p.Findings {
		if f.Code == code {
			return f, true
		}
	}
	return schedule.Finding{}, false
}
