package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// An injected piece that will be between 40 and 140 °F for more than four hours is told to get
// more heat while there is time for it: nothing was said before the fire was out. Of an intact
// one nothing is said.
func TestASlowPieceIsToldInTime(t *testing.T) {
	const of = "serve: {date: 2027-11-13, time: \"13:00\", tz: America/New_York}\ngrill: kettle 22 in\nguests: 12\novernight: true\noven: {hold: 170 F}\nweather: {air: 52 F, night: 38 F, wind: 5 mph}\ndishes: [{cut: pork-butt, weight: 8 lb, prep: "
	const log = "time,dish,kind,value\n2027-11-12 20:00,,lit,\n2027-11-12 20:45,pork-butt,on,\n2027-11-12 22:30,,grate,241 F\n2027-11-12 22:30,pork-butt,core,70 F\n"
	for prep, told := range map[string]bool{"[injected]}]\n": true, "[]}]\n": false} {
		p := plantest.Plan(t, of+prep)
		for _, now := range []string{"2027-11-12 22:31", "2027-11-13 00:20"} {
			q := plantest.Revised(t, p, log, now)
			f, slow := plantest.Finding(q, "slow-through-danger-zone")
			if slow != told || slow && (!strings.Contains(f.Text, "bring the grate to 300 °F now") || !strings.Contains(f.Text, ", by ")) {
				t.Errorf("%s at %s: %v", prep, now, f)
			}
		}
	}
}
