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
	for core, early := range map[string]bool{"88 F": true, "118 F": false} { // 88 °F after 1 hr 45 min is likely enough to be late
		p := plantest.Plan(t, of+"[injected]}]\n")
		q := plantest.Revised(t, p, strings.Replace(log, "70 F", core, 1), "2027-11-12 22:31")
		if f, slow := plantest.Finding(q, "slow-through-danger-zone"); slow != early {
			t.Errorf("%s: %v", core, f)
		}
	}
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

// A bird below its minimum is not offered an oven at 300 °F: it needs 325.
func TestABirdIsFinishedInAHotOven(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-10, time: \"18:30\", tz: America/New_York}\ngrill: kettle 22 in\nguests: 6\noven: yes\nweather: {air: 80 F}\ndishes: [{cut: chicken-spatchcock, weight: 4.5 lb, prep: []}]\n")
	q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-10 16:50,,lit,\n2027-07-10 17:25,chicken-spatchcock,on,\n2027-07-10 17:48,,grate,290 F\n2027-07-10 18:00,chicken-spatchcock,core,104 F\n", "2027-07-10 18:01")
	offered := false
	for _, r := range q.Remedies {
		if r.Code == "oven-finish" {
			offered = true
			if !strings.Contains(r.Text, "325 °F") {
				t.Errorf("%s", r.Text)
			}
		}
	}
	if !offered {
		t.Errorf("no oven is offered: %v", q.Remedies)
	}
}
