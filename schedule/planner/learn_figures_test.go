package planner_test

import (
	"slices"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/steer"
)

// The figures of one's own grill that a request carries are those that the filter learns.
func TestOwnFiguresAreThoseThatAreLearned(t *testing.T) {
	if asked, learned := schedule.OwnFigures(), steer.FigureNames(); !slices.Equal(asked, learned) {
		t.Errorf("a request has %v, the filter learns %v", asked, learned)
	}
}
