package planner_test

import (
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// What nobody read at its minimum, in its coldest place, is promised to nobody where its inside
// may be dangerous: off as told, off as planned, over a fire that died, or read warm elsewhere.
// All of these were "over 99%", and served.
func TestWhatNothingShowsToBeDoneIsNotServed(t *testing.T) {
	const head = "grill: kettle 22 in\nguests: 8\n"
	breast := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"+head+"dishes: [{cut: turkey-breast, weight: 6 lb, prep: [injected]}]\n")
	thighs := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"+head+"dishes: [{cut: chicken-thigh, count: 16, prep: []}, {cut: burger, count: 8}]\n")
	burgers := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"+head+"dishes: [{cut: burger, count: 10}]\n")
	turkey := plantest.Plan(t, "serve: {date: 2027-11-25, time: \"16:00\", tz: America/Chicago}\n"+head+"weather: {air: 38 F, wind: 9 mph}\noven: {hold: 170 F}\ndishes: [{cut: turkey, weight: 15 lb, prep: [injected]}]\n")
	const on = "2027-07-03 13:40,,lit,\n2027-07-03 14:20,turkey-breast,on,\n"
	const over = "2027-07-03 16:10,,lit,\n2027-07-03 16:50,chicken-thigh,on,\n"
	const bird = "2027-11-25 11:00,,lit,\n2027-11-25 11:25,turkey,on,\n2027-11-25 15:20,turkey,core,171 F\n"
	for _, tt := range []struct {
		name     string
		p        schedule.Plan
		log, now string
		code     string
		most     float64 // of its chance
	}{
		{"a dead fire, past the planned take-off", breast, on + "2027-07-03 15:00,,grate,340 F\n2027-07-03 15:10,,fire-out,\n", "2027-07-03 16:45", "fire-out", 0.95},
		{"the same, with minutes left", breast, on + "2027-07-03 15:00,,grate,340 F\n2027-07-03 15:10,,fire-out,\n", "2027-07-03 17:31", "fire-out", 0.95},
		{"the same, over its clock", breast, on + "2027-07-03 15:00,,grate,340 F\n2027-07-03 15:10,,fire-out,\n", "2027-07-03 17:50", "fire-out-over", 0},
		{"a grate read cold", breast, on + "2027-07-03 15:00,,grate,340 F\n2027-07-03 15:45,,grate,120 F\n", "2027-07-03 17:10", "fire-out", 0.95},
		{"the same, two hours after it can have been hot", breast, on + "2027-07-03 15:00,,grate,340 F\n2027-07-03 15:45,,grate,120 F\n", "2027-07-03 17:31", "fire-out-over", 0.95},
		{"thighs over a starved fire", thighs, over + "2027-07-03 17:01,,grate,180 F\n", "2027-07-03 17:40", "fire-out", 0.5},
		{"thighs that lie raw", thighs, over + "2027-07-03 17:05,chicken-thigh,stopped,\n", "2027-07-03 17:58", schedule.StandsOpen, 0},
		{"off as planned, unread", breast, on + "2027-07-03 15:00,,grate,340 F\n", "2027-07-03 17:00", schedule.OffUnread, 0.9},
		{"pulled half-way, unread", breast, on + "2027-07-03 15:20,turkey-breast,pulled,\n", "2027-07-03 15:30", schedule.OffUnread, 0.1},
		{"thighs after a quarter of an hour", thighs, over + "2027-07-03 17:05,chicken-thigh,pulled,\n", "2027-07-03 17:06", schedule.OffUnread, 0.1},
		{"and served", thighs, over + "2027-07-03 17:05,chicken-thigh,pulled,\n2027-07-03 17:06,chicken-thigh,served,\n", "2027-07-03 17:07", schedule.OffUnread, 0.1},
		{"burgers, warm but for the coldest place", burgers, "2027-07-03 17:00,,lit,\n2027-07-03 17:40,burger,on,\n2027-07-03 17:50,burger,core,164 F\n2027-07-03 17:52,burger,coldest,149 F\n2027-07-03 17:53,burger,pulled,\n", "2027-07-03 17:54", schedule.OffUndone, 0},
		{"a breast done, a thigh not", turkey, bird + "2027-11-25 15:35,turkey,coldest,158 F\n2027-11-25 15:40,turkey,pulled,\n", "2027-11-25 15:41", schedule.OffUndone, 0},
		{"the same, a plain reading", turkey, bird + "2027-11-25 15:32,turkey,core,158 F\n2027-11-25 15:40,turkey,pulled,\n", "2027-11-25 15:41", schedule.OffUndone, 0},
		{"the same, the breast again", turkey, bird + "2027-11-25 15:32,turkey,core,158 F\n2027-11-25 15:36,turkey,core,172 F\n2027-11-25 15:40,turkey,pulled,\n", "2027-11-25 15:41", schedule.OffUndone, 0},
		{"read after it came off", turkey, bird + "2027-11-25 15:22,turkey,pulled,\n2027-11-25 15:26,turkey,coldest,152 F\n", "2027-11-25 15:41", schedule.OffUndone, 0},
		{"the same, a plain reading after it", turkey, bird + "2027-11-25 15:22,turkey,pulled,\n2027-11-25 15:26,turkey,core,152 F\n", "2027-11-25 15:41", schedule.OffUndone, 0},
		{"done, and cooled a little", turkey, bird + "2027-11-25 15:22,turkey,pulled,\n2027-11-25 15:37,turkey,core,162 F\n", "2027-11-25 15:41", "", 1},
		{"done everywhere after all", turkey, bird + "2027-11-25 15:22,turkey,coldest,160 F\n2027-11-25 15:39,turkey,coldest,166 F\n2027-11-25 15:40,turkey,pulled,\n", "2027-11-25 15:41", "", 1},
	} {
		q := plantest.Revised(t, tt.p, "time,dish,kind,value\n"+tt.log, tt.now) // the judge is asked there
		if _, found := plantest.Finding(q, tt.code); tt.code != "" && !found {
			t.Errorf("%s: no %s: %v", tt.name, tt.code, q.Findings)
		}
		if c := q.Dishes[0].Chance; c > tt.most || tt.most == 1 && c < 0.95 {
			t.Errorf("%s: chance %.3f", tt.name, c)
		}
		plantest.Orders(t, q)
		if f, _ := plantest.Finding(q, tt.code); tt.code == schedule.StandsOpen && (!strings.Contains(f.Text, "oven at 325 °F now") || strings.Contains(f.Text, "within 15 min")) {
			t.Errorf("%s: %s", tt.name, f.Text)
		}
		if tt.most == 1 || tt.code == "fire-out" { // it is on, and comes off by its reading
			continue
		}
		for _, f := range q.Findings {
			if strings.Contains(strings.ToLower(f.Text), "eat it now") {
				t.Errorf("%s: %s", tt.name, f.Text)
			}
		}
		for _, s := range q.Steps {
			if carve := s.Kind == schedule.StepSlice || s.Kind == schedule.StepBox; !s.Done && s.Dish == q.Dishes[0].ID && carve {
				t.Errorf("%s: %s", tt.name, s.Text)
			}
		}
	}
}
