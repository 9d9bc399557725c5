package arrange

import (
	"testing"

	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// Where only quality goes, a minute too long costs little and twice as long all; a hold that
// a rule of safety ends is lost at its end.
func TestQualityGoesAndSafetyEnds(t *testing.T) {
	steak := day.Way{First: spread.Pace{Early: 9, Expected: 10, Late: 11, Planned: 11}}
	stands, ruled := Keeps{Good: 10, Most: 20}, Keeps{Good: 10, Most: 10}
	last := 0.0
	for over := -2.0; over <= 14; over++ {
		before := 10 + 10 + over // expected off so many minutes beyond what it is good for
		lost := stands.lost(steak, before)
		if lost < last {
			t.Errorf("%.0f min over: %.2f lost, less than a minute sooner", over, lost)
		}
		if step := lost - last; step > 0.12 {
			t.Errorf("%.0f min over: %.2f lost, %.2f more than a minute sooner", over, lost, step)
		}
		last = lost
	}
	if one := stands.lost(steak, 21); one > 0.15 {
		t.Errorf("a minute over costs %.2f", one)
	}
	if last < 0.85 {
		t.Errorf("long past twice what it is good for %.2f is lost", last)
	}
	if one := ruled.lost(steak, 21); one < 0.7 {
		t.Errorf("a minute past the end of a rule costs %.2f only", one)
	}
	if cut := (Keeps{Good: 10, Most: 12}).lost(steak, 24); cut < 0.85 {
		t.Errorf("beyond the clock of food in the open only %.2f is lost", cut)
	}
}
