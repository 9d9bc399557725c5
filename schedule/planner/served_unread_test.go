package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// That a dish came to the table reads none of its pieces: what was not read before is asked for with
// the clock of what is left. The question was gone a minute after "served".
func TestServingReadsNothing(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-08-21, time: \"18:00\", tz: America/Chicago}\ngrill: kettle 22 in\nguests: 6\ndishes: [{id: x, cut: chicken-thigh, count: 8}]\n")
	told := func(readings string) string {
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-08-21 16:30,,lit,\n2027-08-21 17:00,x,on,\n"+readings+"2027-08-21 17:50,x,pulled,\n2027-08-21 18:00,,served,\n", "2027-08-21 18:02")
		var all []string
		for _, f := range q.Findings {
			all = append(all, f.Text)
		}
		return strings.Join(all, "\n")
	}
	if text := told("2027-08-21 17:45,x,core,180 F\n"); !strings.Contains(text, "not all of it was read at 165 °F before it was served. Measure what is not eaten yet") {
		t.Errorf("one of eight: %s", text)
	}
	if text := told("2027-08-21 17:45,x,coldest,180 F\n"); strings.Contains(text, "not all of it was read") {
		t.Errorf("the coldest: %s", text)
	}
}
