package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Whatever becomes of the rest of a day, food that is on has its clocks and limits: two pieces of one hour that must be thrown
// away want no hands for a wrap, and what finds no hour beside what cooks is left out and named. An invented day.
func TestClocksAreToldWhereTheRestCannotBeArranged(t *testing.T) {
	const dead = "time,dish,kind,value\n2027-07-02 21:00,,lit,\n2027-07-02 21:40,,grate,240 F\n2027-07-02 21:42,big,on,\n2027-07-02 21:42,small,on,\n2027-07-02 23:10,,grate,252 F\n2027-07-03 05:30,,grate,96 F\n2027-07-03 05:31,big,core,128 F\n2027-07-03 05:32,small,core,119 F\n"
	butts := "name: Day\nserve: {date: 2027-07-03, time: \"16:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\nweather: {air: 74 F, wind: 4 mph}\novernight: true\nquiet: [{from: \"23:30\", to: \"05:30\"}]\ndishes:\n  - {id: big, name: Big butt, cut: pork-butt, weight: 9.5 lb, level: 250 F}\n  - {id: small, name: Small butt, cut: pork-butt, weight: 6 lb, level: 250 F}\n"
	p := plantest.Plan(t, butts)
	for _, c := range []struct{ more, now string }{
		{"", "05:32"},
		{"2027-07-03 05:33,,fire-out,\n", "05:34"},
		{"2027-07-03 05:33,,fire-out,\n2027-07-03 05:50,,lit,\n", "06:00"},
	} {
		q := plantest.Revised(t, p, dead+c.more, "2027-07-03 "+c.now)
		thrown := 0
		for _, f := range q.Findings {
			if f.Severity == schedule.Danger && strings.Contains(f.Text, "Throw it away") {
				thrown++
			}
		}
		if thrown != 2 || q.Chance.All != 0 {
			t.Errorf("%s: %d of two are thrown away, chance %g: %v", c.now, thrown, q.Chance.All, q.Findings)
		}
		for _, s := range q.Steps {
			if !s.Done && (s.Kind == schedule.StepWrap || s.Kind == schedule.StepBeforeSleep || s.Kind == schedule.StepWaking) {
				t.Errorf("%s: nobody does that with what is thrown away: %s", c.now, s.Text)
			}
		}
	}
}
