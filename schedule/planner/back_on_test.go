package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What came with the kitchen oven ends when a piece is back on the grate: its fire is not shut down under it, it is not shown
// indoors, and vents that were shut meanwhile are opened first of all. A piece that was only measured outside the oven is in
// there still. An invented day.
func TestBackOnTheGrateEndsTheOven(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22, "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}"))
	const log = "time,dish,kind,value\n2027-07-03 15:43,,lit,\n2027-07-03 15:50,birds,on,\n2027-07-03 16:30,,grate,301 F\n2027-07-03 17:05,,grate,268 F\n2027-07-03 17:06,birds,core,84 F\n2027-07-03 17:10,birds,to-oven,325 F\n"
	for _, c := range []struct {
		name, more, now string
		over            bool     // it is over the fire
		first           []string // in the step that is due, nil for none of vents
	}{
		{"in the oven", "", "17:11", false, nil},
		{"back", "2027-07-03 17:30,birds,restarted,\n2027-07-03 17:31,,grate,340 F\n2027-07-03 17:32,birds,core,128 F\n", "17:33", true, nil},
		{"back over shut vents", "2027-07-03 17:12,,vents,both shut\n2027-07-03 17:30,birds,restarted,\n", "17:31", true, []string{"shut since 5:12 PM", "open both fully", "Read the grate", "back into the oven at 325 °F"}},
		{"and read warm yet", "2027-07-03 17:12,,vents,both shut\n2027-07-03 17:30,birds,restarted,\n2027-07-03 17:31,,grate,340 F\n", "17:33", true, []string{"shut since 5:12 PM", "open both fully"}},
		{"back when it must be out", "2027-07-03 17:12,,vents,both shut\n2027-07-03 18:10,birds,core,120 F\n2027-07-03 18:40,birds,restarted,\n", "18:41", true, nil},
		{"opened since", "2027-07-03 17:12,,vents,both shut\n2027-07-03 17:28,,vents,both open\n2027-07-03 17:30,birds,restarted,\n2027-07-03 17:31,,grate,340 F\n", "17:33", true, nil},
		{"out of the oven for a look", "2027-07-03 17:40,birds,stopped,\n2027-07-03 17:44,birds,restarted,\n", "17:45", false, nil},
		{"and in again", "2027-07-03 17:30,birds,restarted,\n2027-07-03 17:40,birds,to-oven,325 F\n", "17:41", false, nil},
	} {
		q := plantest.Revised(t, p, log+c.more, "2027-07-03 "+c.now)
		over, vents := false, ""
		for _, s := range q.Dishes[0].Batches[0].Stages {
			over = over || s.Phase > 0 && s.To.After(*q.RevisedAt)
		}
		for _, s := range q.Steps {
			if s.Done || s.At.After(*q.RevisedAt) {
				continue
			}
			switch s.Kind {
			case schedule.StepCloseDown:
				if c.over {
					t.Errorf("%s: under the food: %s", c.name, s.Text)
				}
			case schedule.StepSetVents:
				vents = s.Text
			}
		}
		if over != c.over {
			t.Errorf("%s: over the fire %v, want %v", c.name, over, c.over)
		}
		if (vents != "") != (c.first != nil) {
			t.Errorf("%s: vents %q", c.name, vents)
		}
		for _, says := range c.first {
			if !strings.Contains(vents, says) {
				t.Errorf("%s: %q does not say %q", c.name, vents, says)
			}
		}
	}
}
