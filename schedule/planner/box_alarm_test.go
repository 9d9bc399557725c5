package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A probe in the middle of what waits in a cooler is an alarm, at 170 °F for a butt (safety, 3): read
// there, the surface is measured now, and the sheet does not say that nothing is to be done. A
// reading just under the surface answers it. An invented day.
func TestTheAlarmInTheCoolerRings(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22, "{name: Butt, cut: pork-butt, weight: 6 lb}"))
	const log = "time,dish,kind,value\n2027-07-03 05:30,,lit,\n2027-07-03 06:00,butt,on,\n2027-07-03 15:30,butt,core,200 F\n2027-07-03 15:35,butt,pulled,\n2027-07-03 15:50,butt,boxed,cooler\n"
	for _, c := range []struct {
		name, more, now string
		rings           bool
	}{
		{"the middle is at 168", "2027-07-03 17:00,butt,core,168 F\n", "17:01", true},
		{"the middle is at 163", "2027-07-03 17:00,butt,core,163 F\n", "17:10", true},
		{"the middle is at 178", "2027-07-03 17:00,butt,core,178 F\n", "17:01", false},
		{"and the surface was read", "2027-07-03 17:00,butt,core,168 F\n2027-07-03 17:02,butt,outer,151 F\n", "17:03", false},
	} {
		q := plantest.Revised(t, p, log+c.more, "2027-07-03 "+c.now)
		rings := false
		for _, f := range q.Findings {
			rings = rings || f.Code == schedule.CodeHoldShort && strings.HasPrefix(f.Text, "Measure Butt just under the surface now")
		}
		if rings != c.rings {
			t.Errorf("%s: rings %v: %v", c.name, rings, q.Findings)
		}
	}
}
