package export

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// Every step is on the sheet exactly once: by itself or with the one it is done in one go with.
func TestNoStepIsLostInMerging(t *testing.T) {
	for _, day := range days {
		p := keptPlan(t, day)
		v, err := look(p, time.Time{})
		if err != nil {
			t.Fatal(err)
		}
		told := map[string]int{}
		for _, e := range v.merged(v.Steps) {
			told[e.step.ID]++
			for _, s := range e.also {
				told[s.ID]++
				if d := s.At.Sub(e.step.At); s.Kind != schedule.StepFlip && d > inOneGo {
					t.Errorf("%s: %s is told %s early", day, s.Kind, d)
				}
			}
		}
		for _, s := range v.Steps {
			if told[s.ID] != 1 {
				t.Errorf("%s: %s at %s is told %d times", day, s.Kind, v.clock(s.At), told[s.ID])
			}
		}
	}
}

// Several turns are how often to turn, one is when.
func TestTurnsAreToldWithThePuttingOn(t *testing.T) {
	for day, wants := range map[string][]string{"overnight": {"Grilled corn: onto the grate", "Turn every 3 min."}, "party": {"Burgers, batch 1 (6 of 12): onto the grate", "Turn at 5:37 PM."}} {
		sheet := strings.Join(strings.Fields(textOf(t, keptPlan(t, day), Options{})), " ")
		for _, want := range wants {
			if !strings.Contains(sheet, want) {
				t.Errorf("%s: no %q", day, want)
			}
		}
		if strings.Contains(sheet, " flip ") {
			t.Errorf("%s: a turn has a line of its own", day)
		}
	}
}

// Between the putting on and the turn the turn is what is still to be done: it does not
// vanish with what is past.
func TestTurnToComeIsNotMergedIntoThePast(t *testing.T) {
	p := keptPlan(t, "party")
	for _, s := range p.Steps {
		if s.Kind != schedule.StepFlip {
			continue
		}
		brief := textOf(t, p, Options{Now: s.At.Add(-time.Minute), Brief: 2})
		if !strings.Contains(brief, "turn.") {
			t.Errorf("a minute before the turn the brief form has\n%s", brief)
		}
	}
}
