package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Logs of good days fit together: a roast that comes off for its sear while the fire for that is
// made, one that waits for it, corn on the grate as dinner is moved. Each was called a log that
// does not fit. An entry that does not is named.
func TestGoodDaysFitTogether(t *testing.T) {
	roast := "serve: {date: 2027-12-25, time: \"17:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in, fuel: lump}\nguests: 9\nweather: {air: 19 F}\noven: yes\ndishes:\n  - {name: Roast, cut: rib-roast-bone-in, weight: 8 lb, target: {final: 132 F}, level: 250 F, finish: sear}\n"
	corn := plantest.Evening(plantest.Kettle22, "{name: Corn, cut: corn, count: 6}")
	on := "time,dish,kind,value\n2027-12-25 11:00,,lit,\n2027-12-25 11:34,roast,on,\n2027-12-25 13:00,roast,core,61 F\n"
	off := on + "2027-12-25 14:40,roast,core,117 F\n2027-12-25 14:41,roast,pulled,\n"
	for name, c := range map[string]struct{ request, log, now, says string }{
		"off for the sear as its fire is made": {roast, on, "2027-12-25 13:01", ""},
		"waits for its sear":                   {roast, off, "2027-12-25 14:42", "leave the coals burning"},
		"seared, as it reads":                  {roast, off + "2027-12-25 15:00,roast,core,124 F\n", "2027-12-25 15:01", ""},
		"guests are late":                      {corn, "time,dish,kind,value\n2027-07-03 16:50,,lit,\n2027-07-03 17:41,corn,on,\n2027-07-03 17:44,,serving-moved,2027-07-03 18:40\n", "2027-07-03 17:45", "best until"},
	} {
		q := plantest.Revised(t, plantest.Plan(t, c.request), c.log, c.now)
		if f, unsound := plantest.Finding(q, "unsound"); unsound {
			t.Errorf("%s: %s", name, f.Text)
		}
		told := c.says == ""
		for _, f := range q.Findings {
			told = told || strings.Contains(f.Text, c.says)
		}
		if !told {
			t.Errorf("%s: nothing says %q: %v", name, c.says, q.Findings)
		}
		if strings.Contains(name, "waits") {
			for _, s := range q.Steps {
				if s.Kind == schedule.StepCloseDown && s.At.Equal(*q.RevisedAt) && !strings.HasPrefix(s.Text, "Only once") {
					t.Errorf("%s: %s", name, s.Text)
				}
			}
			if len(plantest.StepsOf(q, schedule.StepSear, "roast")) == 0 {
				t.Errorf("%s: there is no sear to come", name)
			}
		}
	}
}
