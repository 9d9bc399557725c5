package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// A core of 151 °F after four hours over a fire that was hot all along is a plain stall: it was
// "ignored" as the reading of a probe that was moved, and moved the forecast all the same.
func TestAStallIsBelieved(t *testing.T) {
	const on = "time,dish,kind,value\n2027-07-11 09:20,,lit,\n2027-07-11 10:00,chuck-roast,on,\n2027-07-11 11:00,,grate,272 F\n2027-07-11 12:00,,grate,285 F\n2027-07-11 12:45,,grate,331 F\n2027-07-11 13:25,,grate,240 F\n2027-07-11 14:10,,grate,283 F\n"
	p := plantest.Plan(t, "serve: {date: 2027-07-11, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 7\nweather: {air: 88 F, wind: 8 mph}\ndishes: [{cut: chuck-roast, weight: 4 lb, level: 275 F}]\n")
	for _, core := range []string{"148", "151", "155"} {
		q := plantest.Revised(t, p, on+"2027-07-11 14:10,chuck-roast,core,"+core+" F\n", "2027-07-11 14:11")
		for _, f := range q.Findings {
			if strings.Contains(f.Text, "ignored") || strings.Contains(f.Text, "colder than it should be") {
				t.Errorf("%s °F: %s", core, f.Text)
			}
		}
	}
}
