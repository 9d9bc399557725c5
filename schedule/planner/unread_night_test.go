package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// The question after a night that nobody read hangs on the core and on the hours, not on what the grate shows in the morning: a
// core 30 °F behind after seven hours is measured, and its fire looked at, whether the grate was read hot, weak or not at all;
// and it is not thrown away before that. A core that was read alone leaves the grate still to be read.
func TestANightThatNobodyReadIsAskedAfterByTheCore(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-10-09, time: \"15:00\", tz: America/New_York}\ngrill: {kind: kettle, diameter: 22 in}\nguests: 8\nweather: {air: 58 F, night: 46 F, wind: 4 mph}\n"+
		"overnight: true\nquiet: [{from: \"22:30\", to: \"05:00\"}]\noven: {hold: 170 F}\ndishes: [{cut: pork-butt, weight: 8 lb, prep: [], level: 250 F}]\n")
	const night = "time,dish,kind,value\n2027-10-08 21:14,,lit,\n2027-10-08 21:50,,grate,240 F\n2027-10-08 21:55,pork-butt,on,\n2027-10-08 22:20,,grate,231 F\n"
	for _, c := range []struct {
		grate, core    int
		measured, read bool // the piece is measured first; the grate is asked for
	}{
		{0, 131, true, true}, {178, 131, true, true}, {201, 131, true, true}, {240, 131, true, true}, {168, 146, true, true}, {178, 141, true, true},
		{0, 155, false, true}, {245, 160, false, false},
	} {
		log := night
		if c.grate > 0 {
			log += fmt.Sprintf("2027-10-09 05:00,,grate,%d F\n", c.grate)
		}
		q := plantest.Revised(t, p, log+fmt.Sprintf("2027-10-09 05:01,pork-butt,core,%d F\n", c.core), "2027-10-09 05:02")
		measured, read := false, false
		for _, s := range q.Steps {
			if s.Done {
				continue
			}
			due := !s.At.After(*q.RevisedAt)
			measured = measured || due && s.Kind == schedule.StepLook && strings.Contains(s.Text, "push the probe through the whole of it")
			read = read || due && (strings.Contains(s.Text, "Read the grate") || strings.Contains(s.Text, "read the grate"))
			if strings.Contains(s.Text, "throw it away") {
				t.Errorf("grate %d, core %d: nobody knows yet: %s", c.grate, c.core, s.Text)
			}
		}
		if measured != c.measured || c.read && !read {
			t.Errorf("grate %d, core %d: measured %t, the grate read %t", c.grate, c.core, measured, read)
		}
		if c.measured && q.Dishes[0].Chance > 0.2 {
			t.Errorf("grate %d, core %d: %.2f", c.grate, c.core, q.Dishes[0].Chance)
		}
	}
}
