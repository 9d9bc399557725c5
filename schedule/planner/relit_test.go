package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A brisket that was to be thrown away after its fire was out and lit again stays so, however hot it
// reads later: its next reading, 172 °F, had it served at odds of over 99 %.
func TestNoReadingAfterAToldRelightClearsAPiece(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2026-07-25, time: \"17:00\", tz: America/Chicago}\ngrill: kettle 26 in\nguests: 8\ndishes: [{id: x, cut: brisket-flat, weight: 6 lb}]\n")
	const out = "time,dish,kind,value\n2026-07-25 08:40,,lit,\n09:20,x,on,\n09:50,,grate,292 F\n11:28,,grate,298 F\n11:29,x,core,128 F\n14:25,,grate,300 F\n14:59,x,core,166 F\n17:40,,fire-out,\n17:46,,grate,92 F\n17:48,x,core,121 F\n18:02,,lit,\n"
	wants := func(name, log, now string) {
		t.Helper()
		q := plantest.Revised(t, p, log, "2026-07-25 "+now)
		thrown := false
		for _, f := range q.Findings {
			thrown = thrown || f.Severity == schedule.Danger && (strings.Contains(f.Text, "hrow it away") || strings.Contains(f.Text, "hrow away"))
		}
		if !thrown || q.Chance.All > 0 {
			t.Errorf("%s: odds %.2f, %v", name, q.Chance.All, q.Findings)
		}
		for _, s := range q.Steps {
			if !s.Done && (s.Kind == schedule.StepSlice || s.Kind == schedule.StepBox) {
				t.Errorf("%s: %s", name, s.Text)
			}
		}
	}
	wants("before", out, "19:28")
	for _, f := range []int{130, 150, 172, 190} {
		wants(fmt.Sprintf("%d °F", f), out+fmt.Sprintf("19:29,x,core,%d F\n", f), "19:30")
		wants(fmt.Sprintf("%d °F, coldest", f), out+fmt.Sprintf("19:29,x,coldest,%d F\n", f), "19:30")
	}
	wants("done", out+"19:29,x,core,172 F\n20:55,x,core,203 F\n20:56,x,pulled,\n", "20:57")
}
