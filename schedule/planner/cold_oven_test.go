package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What waits in an oven is asked after where the oven does not hold it: by the oven's own
// thermometer, for the meat falls, or for its outside is far below the oven after hours in it.
// An oven that holds, and meat that has only just gone in, ask for nothing. An invented day.
func TestAnOvenThatDoesNotHoldIsAskedAbout(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, "{name: Butt, cut: pork-butt, weight: 6 lb}"))
	log := "time,dish,kind,value\n2027-07-03 05:30,,lit,\n2027-07-03 06:00,butt,on,\n2027-07-03 12:30,butt,core,200 F\n2027-07-03 12:35,butt,pulled,\n2027-07-03 12:45,butt,boxed,oven\n"
	for _, c := range []struct {
		name, lines, now string
		asked            bool
	}{
		{"the oven is read, cold", "2027-07-03 14:00,,oven,105 F\n", "14:01", true},
		{"the oven is read, and holds", "2027-07-03 14:00,,oven,170 F\n", "14:01", false},
		{"the oven went off", "2027-07-03 14:00,,oven-off,\n", "14:01", true},
		{"the oven went off, and holds again", "2027-07-03 14:00,,oven-off,\n2027-07-03 14:20,,oven,172 F\n", "14:21", false},
		{"the meat falls", "2027-07-03 13:45,butt,outer,166 F\n2027-07-03 14:45,butt,outer,153 F\n", "14:46", true},
		{"the meat settles at the oven's heat", "2027-07-03 13:45,butt,outer,176 F\n2027-07-03 14:45,butt,outer,170 F\n", "14:46", false},
		{"the outside is far below after two hours", "2027-07-03 14:45,butt,outer,152 F\n", "14:46", true},
		{"the outside is near the oven after two hours", "2027-07-03 14:45,butt,outer,166 F\n", "14:46", false},
		{"it has only just gone in", "2027-07-03 13:00,butt,outer,152 F\n", "13:01", false},
	} {
		q := plantest.Revised(t, p, log+c.lines, "2027-07-03 "+c.now)
		asked := false
		for _, f := range q.Findings {
			asked = asked || f.Code == schedule.CodeHoldShort && strings.Contains(f.Text, "look at the oven: is it on?")
		}
		if asked != c.asked {
			t.Errorf("%s: asked %v: %v", c.name, asked, q.Findings)
		}
	}
}

// No way to keep a piece stands beside the order to throw it away.
func TestNothingKeepsWhatIsThrownAway(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, "{name: Butt, cut: pork-butt, weight: 6 lb}"))
	q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-03 04:30,,lit,\n2027-07-03 05:00,butt,on,\n2027-07-03 11:00,butt,core,200 F\n2027-07-03 11:05,butt,pulled,\n2027-07-03 11:15,butt,boxed,oven\n2027-07-03 11:30,butt,core,176 F\n2027-07-03 16:00,butt,core,125 F\n", "2027-07-03 16:01")
	thrown, kept := false, false
	for _, f := range q.Findings {
		thrown = thrown || strings.Contains(f.Text, "throw it away") && !strings.Contains(f.Text, "reheat") && !strings.Contains(f.Text, "325 °F")
		kept = kept || strings.Contains(f.Text, "look at the oven: is it on?")
	}
	if !thrown || kept {
		t.Errorf("thrown away %v, kept %v: %v", thrown, kept, q.Findings)
	}
}
