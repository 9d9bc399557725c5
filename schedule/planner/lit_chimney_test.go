package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A chimney lit to feed a fire that was read hot before and after it is no fire lit anew; one after which nobody knows is.
func TestAChimneyForAHotFireAsksForNoFireThatWentOut(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22, "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}"))
	const log = "time,dish,kind,value\n2027-07-03 15:43,,lit,\n2027-07-03 16:10,birds,on,\n"
	for _, c := range []struct {
		name, more string
		asked      bool
	}{
		{"hot on both sides", "2027-07-03 16:30,,grate,348 F\n2027-07-03 16:42,,lit,\n2027-07-03 16:43,,grate,352 F\n", false},
		{"cool before", "2027-07-03 16:30,,grate,150 F\n2027-07-03 16:42,,lit,\n2027-07-03 16:58,,grate,352 F\n", true},
		{"hot before, and nobody knows since", "2027-07-03 16:15,,grate,348 F\n2027-07-03 16:50,,lit,\n", true},
	} {
		q := plantest.Revised(t, p, log+c.more, "2027-07-03 17:00")
		if f, asked := plantest.Finding(q, schedule.FireRelit); asked != c.asked {
			t.Errorf("%s: asked %t: %s", c.name, asked, f.Text)
		}
	}
}
