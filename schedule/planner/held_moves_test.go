package planner_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
)

// What is kept in a cooler and then in an oven was in both, each since its own line of the log:
// a later line moves nothing that was done.
func TestEachPlaceOfAHoldKeepsItsInstant(t *testing.T) {
	const on = "time,dish,kind,value\n2027-07-03 07:54,brisket,on,\n"
	p := plantest.Party(t, "../..")
	for _, c := range []struct {
		name, first, then string
		kinds             []schedule.StepKind // in their order
	}{
		{"a cooler, then an oven", "15:30,brisket,boxed,cooler", "16:20,brisket,to-oven,170 F", []schedule.StepKind{schedule.StepBox, schedule.StepToOven}},
		{"an oven, then a cooler", "15:30,brisket,boxed,oven", "16:20,brisket,boxed,cooler", []schedule.StepKind{schedule.StepToOven, schedule.StepBox}},
		{"pulled, an oven, then a cooler", "15:00,brisket,pulled,\n2027-07-03 15:30,brisket,to-oven,170 F", "16:20,brisket,boxed,cooler", []schedule.StepKind{schedule.StepToOven, schedule.StepBox}},
		{"as the plan has it, an oven, then a cooler", "15:30,brisket,boxed,", "16:20,brisket,boxed,cooler", []schedule.StepKind{schedule.StepToOven, schedule.StepBox}},
	} {
		log := on + "2027-07-03 " + c.first + "\n"
		before := plantest.Revised(t, p, log, "2027-07-03 16:00")
		after := plantest.Revised(t, before, log+"2027-07-03 "+c.then+"\n", "2027-07-03 16:30")
		keepsThePast(t, before, after)
		var kinds []schedule.StepKind
		var at []time.Time
		for _, s := range after.Steps {
			if s.Dish == "brisket" && s.Done && (s.Kind == schedule.StepBox || s.Kind == schedule.StepToOven) {
				kinds, at = append(kinds, s.Kind), append(at, s.At)
			}
		}
		if len(kinds) != 2 || kinds[0] != c.kinds[0] || kinds[1] != c.kinds[1] || !at[0].Before(at[1]) {
			t.Errorf("%s: %v at %v", c.name, kinds, at)
		}
		for _, f := range check.Plan(after) {
			t.Errorf("%s: unsound: %v", c.name, f)
		}
	}
}

// A core that is read in a cooler tells no clock that ran out before anybody could know: what came
// off hot crossed the line between the take-off and that reading, and where it is expected to lie
// above it still, its clock ends after now.
func TestAColderCoreInABoxLooksAhead(t *testing.T) {
	p := plantest.Party(t, "../..")
	log := "time,dish,kind,value\n2027-07-03 07:54,brisket,on,\n2027-07-03 14:20,brisket,core,201 F\n2027-07-03 14:21,brisket,pulled,\n" +
		"2027-07-03 14:40,brisket,boxed,cooler\n2027-07-03 16:10,brisket,core,151 F\n"
	after := plantest.Revised(t, p, log, "2027-07-03 16:11")
	for _, f := range after.Findings {
		if strings.Contains(f.Text, "should be on the table by") {
			t.Errorf("under two hours in a cooler: %s", f.Text)
		}
	}
}
