package revise_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// What a fire in hand is told, in the words that a cook would stumble over otherwise. Each line is a log of one day; "says"
// must be in a step that is due, or in a finding, "lacks" in none.
func TestFireInHandSays(t *testing.T) {
	const head = "format: 1\nserve: {date: 2027-01-16, time: \"18:00\", tz: America/Chicago}\n"
	kettle := head + "grill: kettle 22 in\nweather: {air: 60 F}\noven: yes\ndishes:\n  - {cut: chuck-roast, weight: 4 lb, level: 275 F}\n"
	low := head + "grill: kettle 22 in\nweather: {air: 60 F}\ndishes:\n  - {cut: pork-butt, weight: 5 lb, level: 225 F}\n"
	clay := head + "grill: {kind: other, zones: [{name: grate, width: 18 in, depth: 16 in, min: 225 F, max: 600 F}]}\nweather: {air: 60 F}\ndishes:\n  - {cut: chuck-roast, weight: 4 lb, level: 275 F}\n"
	const begun = "time,dish,kind,value\n2027-01-16 08:30,,lit,\n2027-01-16 08:50,,vents,\"top 1/2, bottom 1/4\"\n"
	for _, c := range []struct{ name, day, log, now, says, lacks string }{
		{"it sinks, with a count", kettle, begun + "2027-01-16 09:15,chuck-roast,on,\n2027-01-16 10:30,,grate,276 F\n2027-01-16 12:00,,grate,250 F\n2027-01-16 12:40,,grate,228 F\n2027-01-16 13:00,,grate,212 F\n2027-01-16 13:00,chuck-roast,core,150 F\n",
			"2027-01-16 13:01", `[Ll]ight \d+ (more|briquettes)|\d+ lit`, `Add fuel now|Open the vents, or`},
		{"weak, and it holds", strings.Replace(kettle, "level: 275 F", "level: 325 F", 1), begun + "2027-01-16 09:15,chuck-roast,on,\n2027-01-16 10:30,,grate,320 F\n2027-01-16 12:00,,grate,214 F\n2027-01-16 13:00,,grate,213 F\n2027-01-16 13:00,chuck-roast,core,150 F\n",
			"2027-01-16 13:01", `Light \d+ `, `fire is out|fire is dying|Rebuild`},
		{"225 F wanted, 219 read", low, begun + "2027-01-16 09:15,pork-butt,on,\n2027-01-16 10:00,,grate,219 F\n2027-01-16 10:30,,grate,219 F\n2027-01-16 10:45,,grate,219 F\n",
			"2027-01-16 10:46", `leave the vents`, `more (air|coals) now|Feed the fire`},
		{"hot just after the lid", kettle, begun + "2027-01-16 09:15,chuck-roast,on,\n2027-01-16 10:30,,grate,276 F\n2027-01-16 11:20,,lid-opened,\n2027-01-16 11:32,,lid-closed,\n2027-01-16 11:34,,grate,330 F\n",
			"2027-01-16 11:35", `means little`, `lit briquettes to the coals`},
		{"a heavy shell", clay, "time,dish,kind,value\n2027-01-16 08:30,,lit,\n2027-01-16 09:15,chuck-roast,on,\n2027-01-16 10:30,,grate,320 F\n", "2027-01-16 10:31", `once, and look again in an hour`, `Close the vents a little\.`},
		{"and again", clay, "time,dish,kind,value\n2027-01-16 08:30,,lit,\n2027-01-16 09:15,chuck-roast,on,\n2027-01-16 10:30,,grate,320 F\n2027-01-16 11:15,,grate,324 F\n", "2027-01-16 11:16", `wait until 11:30 AM`, `Close top and bottom`},
	} {
		p := plantest.Revised(t, plantest.Day(t, c.day), c.log, c.now)
		var all []string
		for _, s := range p.Steps {
			if !s.Done && !s.At.After(*p.RevisedAt) && !strings.HasPrefix(s.Text, "Leave this out") {
				all = append(all, s.Text)
			}
		}
		for _, f := range p.Findings {
			all = append(all, f.Text)
		}
		says, lacks := regexp.MustCompile(c.says), regexp.MustCompile(c.lacks)
		if !slices.ContainsFunc(all, says.MatchString) || slices.ContainsFunc(all, lacks.MatchString) {
			t.Errorf("%s: wants %q and not %q:\n%s", c.name, c.says, c.lacks, strings.Join(all, "\n"))
		}
	}
}
