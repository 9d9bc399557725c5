package planner_test

import (
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

const buttAhead = `format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
dishes:
  - {name: Butt, cut: pork-butt, weight: 8 lb, ready: day-before}
  - {name: Hot dogs, cut: hot-dog, weight: 2 oz, count: 8}
`

// A revision of the day of serving keeps what was cooked the day before and how it is
// warmed for the table, at the hour to which serving was moved.
func TestARevisionKeepsTheDayBefore(t *testing.T) {
	p := plantest.Plan(t, buttAhead)
	warmAt := func(q schedule.Plan) string {
		for _, s := range plantest.StepsOf(q, schedule.StepToOven, "") {
			return s.At.Format("15:04")
		}
		return "never"
	}
	const head = "time,dish,kind,value\n"
	const moved = head + "2027-07-03T14:00:00-05:00,,serving-moved,2027-07-03T19:00:00-05:00\n"
	for _, c := range []struct{ log, now, warm string }{
		{head, "2027-07-03 15:00", warmAt(p)},
		{head, "2027-07-02 15:00", warmAt(p)},
		{moved, "2027-07-03 15:00", "17:45"},
		{moved, "2027-07-03 18:30", "17:45"},
	} {
		q := plantest.Revised(t, p, c.log, c.now)
		for _, q := range []schedule.Plan{q, plantest.Revised(t, q, head, c.now)} { // a revision of it keeps it too
			plantest.Judge(t, q)
			if q.Ahead == nil || len(q.Steps) < len(p.Steps)-3 || warmAt(q) != c.warm {
				t.Errorf("at %s: %d steps of %d, warmed from %s on, want %s", c.now, len(q.Steps), len(p.Steps), warmAt(q), c.warm)
			}
		}
	}
}
