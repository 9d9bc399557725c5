package planner_test

import (
	"testing"

	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
)

// What the plan itself advises, done and logged, makes no plan that breaks a rule, and is never
// blamed for one: into the kitchen oven from a cooker with two grates, onto the counter, off for
// the sear a degree short on a cold day. Invented days.
func TestWhatWasAdvisedKeepsTheRules(t *testing.T) {
	const upright = "grill: {kind: upright, diameter: 22 in, levels: 2}\noven: yes\n"
	turkey := "2027-07-03 11:13,,lit,\n2027-07-03 12:00,bird,on,\n2027-07-03 15:00,bird,core,128 F breast\n2027-07-03 15:10,bird,to-oven,325 F\n"
	counter := "2027-07-03 15:13,,lit,\n2027-07-03 15:50,birds,on,\n2027-07-03 18:17,birds,coldest,166 F\n2027-07-03 18:18,birds,pulled,\n2027-07-03 18:20,birds,counter,\n"
	steak := "serve: {date: 2027-03-13, time: \"19:00\", tz: Europe/Berlin}\nunits: metric\ngrill: {kind: kettle, diameter: 57 cm}\nweather: {air: 7 C}\ndishes:\n  - {id: steak, cut: porterhouse, thickness: 5 cm, count: 2, target: medium-rare, finish: sear, level: 120 C}\n"
	seared := "2027-03-13 16:00,,lit,\n2027-03-13 16:28,steak,on,\n2027-03-13 17:50,steak,core,46 C\n2027-03-13 17:58,steak,core,50 C\n2027-03-13 17:58,steak,pulled,\n"
	for name, c := range map[string]struct{ request, log, now string }{
		"indoors":             {plantest.Evening(upright, "{id: bird, cut: turkey, weight: 12 lb}"), turkey, "2027-07-03 15:11"},
		"indoors, read":       {plantest.Evening(upright, "{id: bird, cut: turkey, weight: 12 lb}"), turkey + "2027-07-03 15:45,bird,core,156 F\n", "2027-07-03 15:46"},
		"on the counter":      {plantest.Evening(plantest.Kettle22, "{id: birds, cut: chicken, weight: 4.5 lb, count: 2}"), counter, "2027-07-03 18:21"},
		"and for long":        {plantest.Evening(plantest.Kettle22, "{id: birds, cut: chicken, weight: 4.5 lb, count: 2}"), counter, "2027-07-03 19:55"},
		"off for the sear":    {steak, seared, "2027-03-13 17:59"},
		"and minutes later":   {steak, seared, "2027-03-13 18:10"},
		"the sear is overdue": {steak, seared, "2027-03-13 18:31"},
	} {
		q := plantest.Revised(t, plantest.Plan(t, c.request), "time,dish,kind,value\n"+c.log, c.now)
		for _, f := range check.Plan(q) {
			t.Errorf("%s: %v", name, f)
		}
		if f, is := plantest.Finding(q, "unsound"); is {
			t.Errorf("%s: %s", name, f.Text)
		}
	}
}
