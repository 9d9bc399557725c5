package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
)

// What may not be served, or not before it was measured, takes no part in any odds: those of the day, of the
// hour it has moved to, and of what could be done are of the rest. They were less than 1% in the text beside
// 83% in the headline.
func TestOddsAreOfTheRest(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\nguests: 6\ndishes:\n  - {id: chicken, cut: chicken, weight: 4.5 lb, level: 350 F, prep: []}\n  - {id: butt, cut: pork-butt, weight: 8 lb, level: 275 F}\n")
	const butt = "time,dish,kind,value\n2027-07-04 08:00,butt,on,\n2027-07-04 13:00,butt,core,148 F\n"
	const short = butt + "2027-07-04 15:00,chicken,on,\n2027-07-04 15:50,chicken,core,135 F\n2027-07-04 15:52,chicken,pulled,\n2027-07-04 15:53,butt,core,155 F\n"
	for name, now := range map[string]string{"goes back on the heat": "2027-07-04 15:54", "is thrown away": "2027-07-04 17:56"} {
		q := plantest.Revised(t, p, short, now)
		chicken, pork := q.Dishes[0], q.Dishes[1]
		if chicken.ID != "chicken" {
			chicken, pork = pork, chicken
		}
		if _, undone := plantest.Finding(q, schedule.OffUndone); !undone || chicken.Chance > 0 {
			t.Errorf("%s: %.3f; %v", name, chicken.Chance, q.Findings)
		}
		if q.Chance.All < pork.Chance-0.01 || pork.Chance <= 0.01 {
			t.Errorf("%s: %.3f of the rest, %.3f of the butt", name, q.Chance.All, pork.Chance)
		}
		if f, moved := plantest.Finding(q, "served-later"); !moved || strings.Contains(f.Text, ": less than 1%. The plan") {
			t.Errorf("%s: %s", name, f.Text)
		}
		for _, r := range q.Remedies {
			if r.Chance < 0.01 {
				t.Errorf("%s: %s: %.3f", name, r.Text, r.Chance)
			}
		}
		if faults := check.Plan(q); len(faults) > 0 {
			t.Errorf("%s: the judge: %v", name, faults)
		}
	}
}
