package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What came off and of which nothing was logged for more than two hours stood without heat, for
// all that is known: chilling it, or putting it into an oven, hours later mends nothing, and it
// is not eaten. A butt that lay out for three hours and a half before it was chilled was served
// the next day at 92 %. Where nothing follows at all, it is asked about.
func TestWhatStoodUnloggedIsNotTakenForHeld(t *testing.T) {
	const of = "serve: {date: 2027-08-28, time: \"17:30\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: {adults: 8, frail: true}\nweather: {air: 83 F}\n"
	const on = "time,dish,kind,value\n2027-08-28 13:40,,lit,\n2027-08-28 14:20,turkey-breast,on,\n2027-08-28 15:00,,grate,345 F\n2027-08-28 16:25,turkey-breast,coldest,168 F\n2027-08-28 16:27,turkey-breast,pulled,\n"
	breast := plantest.Plan(t, of+"dishes: [{cut: turkey-breast, weight: 6 lb}]\n")
	for _, tt := range []struct {
		line string
		over bool
		code string
	}{
		{"19:30,turkey-breast,chilled,", true, "standing-over"},
		{"19:30,turkey-breast,boxed,oven", true, "standing-over"},
		{"19:30,turkey-breast,served,", true, "standing-over"},
		{"19:30,turkey-breast,counter,", true, "standing-over"},
		{"17:25,turkey-breast,served,", false, schedule.Leftovers},
		{"16:40,turkey-breast,boxed,oven", false, ""},
		{"", false, schedule.Leftovers},
	} {
		log := on
		if tt.line != "" {
			log += "2027-08-28 " + tt.line + "\n"
		}
		q := plantest.Revised(t, breast, log, "2027-08-28 19:31")
		f, over := plantest.Finding(q, "standing-over")
		if over != tt.over {
			t.Errorf("%q: %v", tt.line, q.Findings)
		}
		if _, ok := plantest.Finding(q, tt.code); tt.code != "" && !ok {
			t.Errorf("%q: no %s: %v", tt.line, tt.code, q.Findings)
		}
		if served := strings.Contains(tt.line, "served"); over && served != strings.Contains(f.Text, "Stop eating") {
			t.Errorf("%q: %s", tt.line, f.Text)
		}
		for _, f := range q.Findings {
			if strings.Contains(f.Text, "Eat it now") {
				t.Errorf("%q: %s", tt.line, f.Text)
			}
		}
	}
	butt := plantest.Plan(t, "serve: {date: 2027-08-01, time: \"13:00\", tz: America/Denver}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 86 F}\ndishes:\n  - {cut: pork-butt, weight: 8 lb, prep: [], ready: day-before}\n  - {cut: beans-pan}\n")
	q := plantest.Revised(t, butt, "time,dish,kind,value\n2027-07-31 05:30,,lit,\n2027-07-31 06:10,pork-butt,on,\n2027-07-31 16:30,pork-butt,core,203 F\n2027-07-31 16:40,pork-butt,pulled,\n2027-07-31 20:10,pork-butt,chilled,\n", "2027-07-31 20:11")
	if _, over := plantest.Finding(q, "standing-over"); !over {
		t.Errorf("chilled after three hours and a half: %v", q.Findings)
	}
	held := plantest.Plan(t, "serve: {date: 2027-07-31, time: \"21:00\", tz: America/Denver}\ngrill: kettle 22 in\nguests: 8\nweather: {air: 86 F}\ndishes: [{cut: pork-butt, weight: 8 lb, prep: []}]\noven: yes\n")
	q = plantest.Revised(t, held, "time,dish,kind,value\n2027-07-31 05:30,,lit,\n2027-07-31 06:10,pork-butt,on,\n2027-07-31 16:30,pork-butt,core,203 F\n2027-07-31 16:40,pork-butt,pulled,\n", "2027-07-31 20:10")
	if f, _ := plantest.Finding(q, schedule.StandsOpen); !strings.Contains(f.Text, "in the oven since") || !strings.Contains(f.Text, "6:40 PM") {
		t.Errorf("an oven that nobody logged: %v", q.Findings)
	}
}
