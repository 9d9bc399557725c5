package ahead

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

// Odds that somebody asked for and that cannot be had are said, with the dishes that fall short;
// of the usual odds nothing is.
func TestOddsThatCannotBeHadAreSaid(t *testing.T) {
	p := schedule.Plan{Feasible: true, Dishes: []schedule.DishPlan{{ID: "a", Name: "Butt", Chance: 0.97}, {ID: "b", Name: "Wings", Chance: 0.81}}}
	p.Request.Confidence = 0.95
	f := belowAsked(p)
	if len(f) != 1 || !strings.Contains(f[0].Text, "95% for each dish. Not had: Wings 81%.") || len(f[0].Dishes) != 1 {
		t.Errorf("%v", f)
	}
	p.Request.Confidence = 0.9
	if f := belowAsked(p); f != nil {
		t.Errorf("nobody asked: %v", f)
	}
	p.Request.Confidence, p.Dishes[1].Chance = 0.95, 0.95
	if f := belowAsked(p); f != nil {
		t.Errorf("all is had: %v", f)
	}
}
