package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A piece that came off for its sear, and of which nothing was logged since, may lie there at 117 °F: it is asked after
// with the end of its time without heat, and is no sure dinner. It was taken to be seared, sliced and served, at over 99 %.
func TestAPieceThatWaitsForItsSearIsNotTakenForSeared(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-12-25, time: \"17:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in, fuel: lump}\nguests: 9\nweather: {air: 19 F, wind: 11 mph}\noven: yes\n"+
		"dishes: [{cut: rib-roast-bone-in, weight: 8 lb, target: {final: 132 F}, level: 250 F, finish: sear}]\n")
	const log = "time,dish,kind,value\n2027-12-25 11:00,,lit,\n2027-12-25 11:34,rib-roast-bone-in,on,\n2027-12-25 13:00,,grate,246 F\n2027-12-25 14:10,rib-roast-bone-in,core,104 F\n2027-12-25 14:40,rib-roast-bone-in,core,117 F\n2027-12-25 14:41,rib-roast-bone-in,pulled,\n"
	for _, c := range []struct {
		name, more, now, want string
		most                  float64
	}{
		{"in its time without heat", "", "2027-12-25 16:31", "by 4:41 PM; past that it is thrown away", 0.6},
		{"past it", "", "2027-12-25 16:45", "throw it away", 0.6},
		{"read since", "2027-12-25 16:20,rib-roast-bone-in,core,136 F\n", "2027-12-25 16:31", "", 1},
	} {
		q := plantest.Revised(t, p, log+c.more, c.now)
		f, asked := plantest.Finding(q, schedule.OffUnread)
		asked = asked && strings.Contains(f.Text, "was it seared")
		if asked != (c.want != "") || !strings.Contains(f.Text, c.want) || q.Chance.All > c.most {
			t.Errorf("%s: chance %.2f: %v", c.name, q.Chance.All, q.Findings)
		}
	}
}

// A grate that stays at 210 to 220 °F where 350 was meant is a weak fire and not one that is out: the bird over it is short of
// heat, and is told to go into an oven before its four hours are over, and is thrown away when they are. It was told to be in
// heat within two hours more.
func TestABirdOverAWeakFireGoesIntoAnOven(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 9\nweather: {air: 44 F}\noven: yes\ndishes: [{cut: turkey, weight: 12 lb, level: 350 F}]\n")
	const log = "time,dish,kind,value\n2027-11-25 11:13,,lit,\n2027-11-25 12:00,turkey,on,\n2027-11-25 13:00,,grate,221 F\n2027-11-25 15:00,,grate,214 F\n2027-11-25 15:00,turkey,core,92 F\n"
	for _, c := range []struct{ more, now, code, want string }{
		{"", "2027-11-25 15:01", "slow-through-danger-zone", "an oven at 325 °F"},
		{"2027-11-25 15:45,,grate,209 F\n2027-11-25 15:45,turkey,coldest,116 F\n", "2027-11-25 15:46", "slow-through-danger-zone", "an oven at 325 °F"},
		{"2027-11-25 17:00,,grate,209 F\n2027-11-25 17:00,turkey,coldest,121 F\n", "2027-11-25 17:01", "slow-over", "Throw it away"},
	} {
		q := plantest.Revised(t, p, log+c.more, c.now)
		f, slow := plantest.Finding(q, c.code)
		if _, out := plantest.Finding(q, "fire-died"); out || !slow || !strings.Contains(f.Text, c.want) || c.code != "slow-over" && !strings.Contains(f.Text, " by ") {
			t.Errorf("%s: out %t, %v", c.now, out, q.Findings)
		}
	}
}
