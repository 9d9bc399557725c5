package planner_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A weak fire that nobody read for hours over a piece that is far too cold may have failed long
// before: that stays said, also once the piece is hot again, until the log shows the heat of the
// hours between. A fire that was read, or a piece that kept its pace, is not asked after. Before, a
// grate of 171 °F over a butt at 139 after nine hours was "add fuel", and nothing else.
func TestAWeakFireThatNobodyReadIsAskedAfter(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-05-09, time: \"15:00\", tz: America/New_York}\ngrill: kettle 22 in\nguests: 9\novernight: true\n"+
		"weather: {air: 66 F, night: 52 F}\ndishes: [{cut: pork-butt, weight: 9 lb, prep: [], level: 250 F}]\n")
	const night = "time,dish,kind,value\n2027-05-08 21:00,,lit,\n2027-05-08 21:45,pork-butt,on,\n2027-05-08 23:40,,grate,251 F\n2027-05-08 23:40,pork-butt,core,71 F\n"
	for _, c := range []struct {
		name, log, now string
		asked          bool
	}{
		{"weak, and far too cold", "2027-05-09 06:30,,grate,171 F\n2027-05-09 06:31,pork-butt,core,139 F\n", "2027-05-09 06:32", true},
		{"a little warmer, the same", "2027-05-09 06:30,,grate,185 F\n2027-05-09 06:31,pork-butt,core,128 F\n", "2027-05-09 06:32", true},
		{"hot again, the same", "2027-05-09 06:30,,grate,171 F\n2027-05-09 06:31,pork-butt,core,139 F\n2027-05-09 06:40,,lit-coals,30\n2027-05-09 07:10,,grate,266 F\n2027-05-09 10:00,pork-butt,core,168 F\n", "2027-05-09 10:01", true},
		{"off, the same", "2027-05-09 06:30,,grate,171 F\n2027-05-09 06:31,pork-butt,core,139 F\n2027-05-09 06:40,,lit-coals,30\n2027-05-09 07:10,,grate,266 F\n2027-05-09 12:00,pork-butt,core,201 F\n2027-05-09 12:02,pork-butt,pulled,\n", "2027-05-09 12:03", true},
		{"unread for longer than food may be without heat", "2027-05-09 03:20,,grate,250 F\n2027-05-09 06:30,,grate,150 F\n2027-05-09 06:31,pork-butt,core,128 F\n", "2027-05-09 06:32", true},
		{"read in time, and no colder than that leaves it", "2027-05-09 05:10,,grate,250 F\n2027-05-09 06:30,,grate,150 F\n2027-05-09 06:31,pork-butt,core,158 F\n", "2027-05-09 06:32", false},
		{"an alarm had it", "2027-05-09 01:30,,grate,240 F\n2027-05-09 03:20,,grate,230 F\n2027-05-09 05:00,,grate,215 F\n2027-05-09 06:30,,grate,180 F\n2027-05-09 06:31,pork-butt,core,139 F\n", "2027-05-09 06:32", false},
		{"weak, and on its way", "2027-05-09 06:30,,grate,185 F\n2027-05-09 06:31,pork-butt,core,158 F\n", "2027-05-09 06:32", false},
		{"hot when it was read, and far too cold", "2027-05-09 06:30,,grate,215 F\n2027-05-09 06:31,pork-butt,core,128 F\n", "2027-05-09 06:32", true},
		{"the same, and it was seen to be hot", "2027-05-09 01:30,,grate,240 F\n2027-05-09 03:20,,grate,230 F\n2027-05-09 05:00,,grate,215 F\n2027-05-09 06:30,,grate,215 F\n2027-05-09 06:31,pork-butt,core,128 F\n", "2027-05-09 06:32", false},
		{"no grate at waking, and far too cold", "2027-05-09 06:31,pork-butt,core,124 F\n", "2027-05-09 06:32", true},
		{"it burns now, and the core is 30 °F behind", "2027-05-09 06:30,,grate,236 F\n2027-05-09 06:31,pork-butt,core,139 F\n", "2027-05-09 06:32", true},
		{"a fire that burns", "2027-05-09 06:30,,grate,236 F\n2027-05-09 06:31,pork-butt,core,158 F\n", "2027-05-09 06:32", false},
	} {
		q := plantest.Revised(t, p, night+c.log, c.now)
		f, asked := plantest.Finding(q, "unwatched-heat")
		if !asked { // counted as an outage, which is more
			f, asked = plantest.Finding(q, "fire-out-over")
		}
		if asked != c.asked || asked && f.Severity != schedule.Danger {
			t.Errorf("%s: asked %t; %v", c.name, asked, q.Findings)
		}
	}
}

// One clock from the grate and the core together: a piece that is colder was never shorter without heat, nor
// one over a grate that gives less of it, and no pair is left out between. Before, 145 °F at the grate over a
// core of 124 °F after nine hours counted 27 minutes, 139 over 110 four and a half hours, and 152 none.
func TestTheClockWithoutHeatGoesByGrateAndCore(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-05-09, time: \"15:00\", tz: America/New_York}\ngrill: kettle 22 in\nguests: 9\novernight: true\n"+
		"weather: {air: 66 F, night: 52 F}\ndishes: [{cut: pork-butt, weight: 9 lb, prep: [], level: 250 F}]\n")
	const night = "time,dish,kind,value\n2027-05-08 21:00,,lit,\n2027-05-08 21:45,pork-butt,on,\n2027-05-08 23:40,,grate,251 F\n"
	for _, grate := range []int{110, 139, 145, 165, 185, 199} {
		least := math.Inf(1) // of a colder core
		for _, core := range []int{110, 124, 135} {
			q := plantest.Revised(t, p, night+fmt.Sprintf("2027-05-09 06:30,,grate,%d F\n2027-05-09 06:31,pork-butt,core,%d F\n", grate, core), "2027-05-09 06:32")
			f, counted := plantest.Finding(q, "fire-out-over")
			if !counted {
				f, counted = plantest.Finding(q, "unwatched-heat")
			}
			m := withoutHeatFor.FindStringSubmatch(f.Text)
			if !counted || m == nil {
				t.Errorf("grate %d, core %d: no time without heat: %v", grate, core, q.Findings)
				continue
			}
			hours, _ := strconv.ParseFloat(m[1], 64)
			minutes, _ := strconv.ParseFloat(m[2], 64)
			spent := 60*hours + minutes
			if spent < 121 || spent > least+20 { // the grid of instants is of fifteen minutes
				t.Errorf("grate %d, core %d: %g min without heat, after %g of a colder core", grate, core, spent, least)
			}
			least = math.Min(least, spent)
		}
	}
}

var withoutHeatFor = regexp.MustCompile(`(\d+) hr (?:(\d+) min)?`)
