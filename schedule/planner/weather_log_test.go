package planner_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

const buttSinking = "2027-07-03 00:20,,lit,\n2027-07-03 00:40,butt,on,\n2027-07-03 04:00,butt,core,140 F\n2027-07-03 04:00,,grate,250 F\n"

// An empty bag is an answer to every order of coals: none is added, none promised, and the
// food goes into the oven when the grate no longer cooks. Coals that come put all of it back.
func TestAnEmptyBagIsNotFed(t *testing.T) {
	c := trouble{served("16:00") + "quiet: []\n", troubledButt, buttSinking + "2027-07-03 05:30,,grate,212 F\n2027-07-03 05:31,,no-fuel,\n", "2027-07-03 05:32"}
	q := c.revised(t)
	q.wants(t, schedule.NoFuel, "the food goes on in the kitchen oven")
	if s := q.first(schedule.StepIndoors); !strings.Contains(s.Text, "into the kitchen oven at") || !s.At.Equal(*q.RevisedAt) {
		t.Errorf("the order: %q at %v", s.Text, s.At)
	}
	for _, s := range q.Steps {
		if s.Kind == schedule.StepRefuel && !s.Done && !strings.HasPrefix(s.Text, "Leave this out") && !strings.HasPrefix(s.Text, "No coals are left") {
			t.Errorf("fed from an empty bag: %s", s.Text)
		}
	}
	for _, r := range q.Remedies {
		if slices.Contains([]string{"hotter", "back-to-level", "rebuild"}, r.Code) {
			t.Errorf("offered: %s", r.Text)
		}
	}
	c.log += "2027-07-03 05:40,,lit-coals,30\n"
	c.now = "2027-07-03 05:41"
	c.revised(t).lacks(t, schedule.NoFuel)
}

// A strong wind is told with its sparks, and rain with where the grill stays; neither where
// nothing burns any more, or it is over.
func TestWindAndRainAreAnswered(t *testing.T) {
	c := trouble{served("16:00") + "quiet: []\n", troubledButt, buttSinking + "2027-07-03 05:00,,wind,24 mph\n2027-07-03 05:00,,rain,\n", "2027-07-03 05:05"}
	q := c.revised(t)
	q.wants(t, schedule.Sparks, "sparks and embers", "10 ft", "both vents shut")
	q.wants(t, schedule.InTheRain, "Never under a roof")
	c.log += "2027-07-03 06:00,,wind,calm\n2027-07-03 06:00,,rain,over\n"
	c.now = "2027-07-03 06:01"
	c.revised(t).lacks(t, schedule.Sparks, schedule.InTheRain)
}
