package planner_test

import (
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
		{"an alarm had it", "2027-05-09 01:30,,grate,240 F\n2027-05-09 03:20,,grate,230 F\n2027-05-09 05:00,,grate,215 F\n2027-05-09 06:30,,grate,180 F\n2027-05-09 06:31,pork-butt,core,139 F\n", "2027-05-09 06:32", false},
		{"weak, and on its way", "2027-05-09 06:30,,grate,185 F\n2027-05-09 06:31,pork-butt,core,158 F\n", "2027-05-09 06:32", false},
		{"a fire that burns", "2027-05-09 06:30,,grate,236 F\n2027-05-09 06:31,pork-butt,core,139 F\n", "2027-05-09 06:32", false},
	} {
		q := plantest.Revised(t, p, night+c.log, c.now)
		f, asked := plantest.Finding(q, "unwatched-heat")
		if asked != c.asked || asked && f.Severity != schedule.Danger {
			t.Errorf("%s: asked %t; %v", c.name, asked, q.Findings)
		}
	}
}
