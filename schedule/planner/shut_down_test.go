package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A fire is not shut down by the hour: the step stays due until the log has the vents shut, or the
// fire out, however late the food came off. An invented day.
func TestTheGrillIsShutDownByHandsAlone(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22, "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}"))
	const log = "time,dish,kind,value\n2027-07-03 15:43,,lit,\n2027-07-03 16:20,birds,on,\n2027-07-03 18:17,birds,coldest,166 F\n2027-07-03 18:18,birds,pulled,\n"
	for _, c := range []struct {
		name, more, now string
		due             bool
	}{
		{"just off", "", "18:19", true},
		{"an hour later", "", "19:19", true},
		{"served", "2027-07-03 18:40,,served,\n", "19:40", true},
		{"shut", "2027-07-03 18:20,,vents,both shut\n", "18:21", false},
		{"shut, an hour later", "2027-07-03 18:20,,vents,both shut\n", "19:19", false},
		{"shut and opened again", "2027-07-03 18:20,,vents,both shut\n2027-07-03 18:40,,vents,both open\n", "18:41", true},
		{"out", "2027-07-03 18:40,,fire-out,\n", "18:41", false},
	} {
		q := plantest.Revised(t, p, log+c.more, "2027-07-03 "+c.now)
		due := false
		for _, s := range q.Steps {
			if s.Kind == schedule.StepCloseDown && !s.Done {
				due = true
				if !s.At.Equal(*q.RevisedAt) || !strings.Contains(s.Text, "lose all vents") {
					t.Errorf("%s: at %s %s", c.name, s.At, s.Text)
				}
			}
		}
		if due != c.due {
			t.Errorf("%s: due %v, want %v", c.name, due, c.due)
		}
	}
}
