package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A bird that was read below 140 °F when its 4 h were over is thrown away, and that is said before all else, also once it is
// hot; a bird that is slow as yet is not, nor one of which only a forecast is so slow, nor a joint. An invented day.
func TestABirdThatWasTooSlowIsNotServed(t *testing.T) {
	const log = "time,dish,kind,value\n2027-07-03 15:13,,lit,\n2027-07-03 15:50,DISH,on,\n2027-07-03 17:06,DISH,core,84 F\n2027-07-03 17:15,DISH,to-oven,200 F\n"
	for _, c := range []struct {
		name, dish, id, more, now string
		over                      bool
	}{
		{"at 121 after 4 h and a half", "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}", "birds", "20:20,birds,coldest,121 F\n", "20:21", true},
		{"hot by now", "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}", "birds", "20:00,birds,coldest,131 F\n2027-07-03 22:00,birds,coldest,165 F\n", "22:01", true},
		{"at 121 in time", "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}", "birds", "19:00,birds,coldest,121 F\n", "19:01", false},
		{"hot in time", "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}", "birds", "18:30,birds,coldest,131 F\n2027-07-03 19:00,birds,coldest,150 F\n", "19:01", false},
		{"not read", "{name: Birds, cut: chicken, weight: 4.5 lb, count: 2}", "birds", "18:00,birds,coldest,110 F\n", "20:31", false},
		{"a joint", "{name: Butt, cut: pork-butt, weight: 6 lb}", "butt", "20:20,butt,coldest,121 F\n", "20:21", false},
	} {
		p := plantest.Day(t, plantest.Evening(plantest.Kettle22, c.dish))
		q := plantest.Revised(t, p, strings.ReplaceAll(log, "DISH", c.id)+"2027-07-03 "+c.more, "2027-07-03 "+c.now)
		f, over := plantest.Finding(q, "slow-over")
		if over != c.over {
			t.Errorf("%s: over %t: %v", c.name, over, q.Findings)
			continue
		}
		if over && (q.Findings[0].Code != f.Code || f.Severity != schedule.Danger || q.Chance.All != 0) {
			t.Errorf("%s: not first, or a chance of %g: %v", c.name, q.Chance.All, q.Findings)
		}
	}
}
