package planner_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Two readings of one roast a degree and a half apart do not move dinner by hours, nor send it into
// the kitchen oven: about even odds the plan goes by what is expected, and that moves by minutes.
// It moved by three hours, at 90 % of odds beside 50.
func TestADegreeDoesNotMoveDinnerByHours(t *testing.T) {
	for name, dish := range map[string]string{
		"roast":   "{id: x, cut: rib-roast-bone-in, weight: 8 lb, level: 250 F, target: 130 F, finish: none}",
		"butt":    "{id: x, cut: pork-butt, weight: 8 lb, level: 250 F}",
		"brisket": "{id: x, cut: brisket, weight: 13 lb, level: 250 F, wrap: {with: paper, from: 165 F}}",
		"ribs":    "{id: x, cut: spare-ribs, count: 2, level: 250 F}",
	} {
		t.Run(name, func(t *testing.T) {
			p := plantest.Plan(t, "serve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\nquiet: [{from: \"23:00\", to: \"05:00\"}]\noven: true\nweather: {air: 75 F}\nguests: 8\ndishes:\n  - "+dish+"\n")
			planned := plantest.StepAt(t, p, schedule.StepPutOn, "x")
			off := plantest.TakeOff(t, p, "x").Expected
			late := p.ServeAt.Add(-30 * time.Minute).Sub(off) // put on so late that it is expected about dinner
			at := off.Add(-off.Sub(planned) / 3)              // two thirds of the way
			core := answer{p}.curveAt(t, at)*9/5 + 32
			var was time.Time
			for tenths := -30; tenths <= 30; tenths += 15 {
				log := fmt.Sprintf("time,dish,kind,value\n%s,,lit,\n%s,x,on,\n%s,,grate,250 F\n%s,x,core,%.1f F\n", planned.Add(late-45*time.Minute).Format(time.RFC3339), planned.Add(late).Format(time.RFC3339),
					at.Add(late).Format(time.RFC3339), at.Add(late).Format(time.RFC3339), core+float64(tenths)/10)
				entries, err := schedule.ReadLog([]byte(log), p)
				if err != nil {
					t.Fatal(err)
				}
				q, err := planner.Revise(t.Context(), p, entries, at.Add(late+time.Minute))
				if err != nil {
					t.Fatal(err)
				}
				if moved := q.ServeAt.Sub(was).Minutes(); !was.IsZero() && math.Abs(moved) > 60 {
					t.Errorf("%+.1f °F: dinner moved by %.0f min, to %v", float64(tenths)/10, moved, q.ServeAt)
				}
				if len(plantest.StepsOf(q, schedule.StepIndoors, "x")) > 0 {
					t.Errorf("%+.1f °F: into the kitchen oven at %v", float64(tenths)/10, at.Add(late))
				}
				was = q.ServeAt
			}
		})
	}
}

// A grate that reads some degrees hotter through a night never makes dinner later, and while people
// sleep nobody is called to carry anything into an oven for a dinner that moves: at 210 °F it was an
// order at 4 in the morning, at 205 and at 215 it was none.
func TestAHotterNightIsNeverLater(t *testing.T) {
	p := plantest.Plan(t, "serve: {date: 2027-07-04, time: \"15:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\nguests: 12\nquiet: [{from: \"23:00\", to: \"06:00\"}]\noven: true\nweather: {air: 75 F, night: 60 F}\ndishes:\n  - {id: x, cut: pork-butt, weight: 9 lb, level: 250 F}\n")
	var was time.Time
	for f := 208; f <= 252; f += 2 {
		q := plantest.Revised(t, p, fmt.Sprintf("time,dish,kind,value\n2027-07-03 21:30,,lit,\n2027-07-03 22:10,x,on,\n2027-07-03 22:50,,grate,250 F\n2027-07-04 02:00,,grate,%[1]d F\n2027-07-04 04:00,,grate,%[1]d F\n2027-07-04 04:00,x,core,140 F\n", f), "2027-07-04 04:01")
		if !was.IsZero() && q.ServeAt.After(was) {
			t.Errorf("%d °F: dinner at %v, at %v with a cooler grate", f, q.ServeAt, was)
		}
		if len(plantest.StepsOf(q, schedule.StepIndoors, "x")) > 0 {
			t.Errorf("%d °F: into the kitchen oven while people sleep", f)
		}
		if f < 225 && !reachesBy(q, "back-to-level", p.ServeAt) {
			t.Errorf("%d °F: the grate back at its heat is no way to the asked hour: %v", f, q.Remedies)
		}
		was = q.ServeAt
	}
}

// reachesBy says whether a choice of a code has dinner at an hour.
func reachesBy(q schedule.Plan, code string, at time.Time) bool {
	for _, r := range q.Remedies {
		if r.Code == code && r.ServeAt.Equal(at) {
			return true
		}
	}
	return false
}
