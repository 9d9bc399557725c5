package planner_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

var heatless = regexp.MustCompile(`(?:(\d+) hr )?(?:(\d+) min )?without heat`)

// heatlessMinutes is the longest time without heat that a plan tells of.
func heatlessMinutes(p schedule.Plan) (most int) {
	for _, f := range p.Findings {
		if m := heatless.FindStringSubmatch(f.Text); m != nil {
			h, _ := strconv.Atoi(m[1])
			min, _ := strconv.Atoi(m[2])
			most = max(most, 60*h+min)
		}
	}
	return most
}

// A fire that nobody watched all night and that is found cold had been out for hours, as far as
// its core tells: the word for it, fire-out, noted then and a new fire lit make that no shorter.
// 4 hr 49 min without heat fell to 2 hr 11 min by that word; and a grate of 150 °F, which is no
// heat for raw meat, was a fire that sinks, at 70%.
func TestTellingThatAFireIsOutMakesNoClockShorter(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-09-05, time: \"16:00\", tz: America/Chicago}\ngrill: {kind: upright, diameter: 22 in, levels: 2, water_pan: true}\nguests: {adults: 14, frail: false}\nweather: {air: 86 F, night: 68 F, wind: 5 mph}\novernight: true\nquiet: [{from: \"23:00\", to: \"05:30\"}]\noven: {hold: 170 F}\ndishes:\n  - {cut: brisket, weight: 13 lb, prep: [injected], level: 250 F}\n")
	const night = "time,dish,kind,value\n2027-09-04 21:30,,lit,\n2027-09-04 22:20,,grate,239 F\n2027-09-04 22:26,brisket,on,\n2027-09-04 22:50,,grate,232 F\n"
	for _, found := range []string{
		"2027-09-05 05:35,,grate,118 F\n2027-09-05 05:36,brisket,core,131 F\n",
		"2027-09-05 05:35,,grate,150 F\n2027-09-05 05:36,brisket,core,136 F\n",
	} {
		before := 0
		for _, more := range []struct{ lines, now string }{
			{"", "05:37"}, {"2027-09-05 05:38,,fire-out,\n", "05:41"},
			{"2027-09-05 05:38,,fire-out,\n2027-09-05 05:50,,lit,\n2027-09-05 06:20,,grate,252 F\n2027-09-05 06:20,brisket,core,132 F\n", "06:21"},
		} {
			q := plantest.Revised(t, p, night+found+more.lines, "2027-09-05 "+more.now)
			clock := heatlessMinutes(q)
			if clock <= 120 || clock < before {
				t.Errorf("%s%s: %d min without heat after %d: %v", found, more.now, clock, before, q.Findings)
			}
			if s := strings.Join(dueTexts(q), " "); strings.Contains(s, "Serve: ") {
				t.Errorf("%s: served: %s", more.now, s)
			}
			before = max(before, clock)
		}
	}
}
