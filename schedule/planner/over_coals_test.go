package planner_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

// What lies over the coals comes off by its core and not by the clock. Before, a reading
// moved nothing: at 100 F, past its planned minute, it was "done: off now".
func TestReadingsCountOverTheCoals(t *testing.T) {
	for _, dish := range []struct {
		cut, more   string
		cores       []int   // F, ascending, from raw to done, at a minute when the plan has it done
		atLeastLeft float64 // minutes from the first of them on
	}{
		{"chicken-thigh", "count: 8, zone: direct", []int{80, 100, 130, 150, 165, 176}, 8},
		{"steak", "count: 2, weight: 1 lb", []int{60, 80, 100, 115, 127}, 4},
		{"burger", "count: 8", []int{60, 90, 120, 140, 157}, 4},
	} {
		p := plantest.Plan(t, plantest.Evening("grill: {kind: kettle, diameter: 22 in}", "{cut: "+dish.cut+", "+dish.more+"}"))
		on := plantest.StepAt(t, p, schedule.StepPutOn, dish.cut)
		late := plantest.TakeOff(t, p, dish.cut).Late
		at := late.Add(-late.Sub(on) / 20)
		left := 1e9
		for i, core := range dish.cores {
			log := fmt.Sprintf("time,dish,kind,value\n%s,%s,on,\n%s,%s,core,%d F\n", on.Format("2006-01-02 15:04"), dish.cut, at.Format("2006-01-02 15:04"), dish.cut, core)
			q := plantest.Revised(t, p, log, at.Format("2006-01-02 15:04"))
			w := plantest.TakeOff(t, q, dish.cut)
			is := w.Expected.Sub(at).Minutes()
			if i == 0 && is < dish.atLeastLeft {
				t.Errorf("%s at %d F is off in %.0f min", dish.cut, core, is)
			}
			if is > left {
				t.Errorf("%s at %d F is off in %.0f min, later than a colder one in %.0f", dish.cut, core, is, left)
			}
			left = is
			var now strings.Builder
			if err := export.Now(&now, q, export.Options{}); err != nil {
				t.Fatal(err)
			}
			if strings.Contains(now.String(), "It is done") {
				t.Errorf("%s at %d F:\n%s", dish.cut, core, now.String())
			}
		}
		if left > 3 {
			t.Errorf("%s all but done comes off in %.0f min", dish.cut, left)
		}
	}
}

// What the cook has put on the grate has its room there, close as it may lie: nothing has to
// make room for it, dinner does not wait, and the log is not called unsound. Before, chicken
// at 150 F was to come off raw and dinner moved by eight hours.
func TestWhatLiesThereHasItsRoom(t *testing.T) {
	p := plantest.Plan(t, `
serve: {date: 2027-12-04, time: "18:00", tz: America/Chicago}
guests: 8
grill: kettle 22 in
oven: {}
dishes:
  - {cut: baby-backs, count: 3, prep: []}
  - {cut: chicken-thigh, prep: [], zone: direct}
  - {cut: corn, count: 8}
`)
	log := "time,dish,kind,value\n2027-12-04 11:55,,lit,\n2027-12-04 12:25,baby-backs,on,\n2027-12-04 15:26,baby-backs,pulled,\n2027-12-04 15:41,baby-backs,boxed,\n" +
		"2027-12-04 17:10,chicken-thigh,on,\n2027-12-04 17:42,chicken-thigh,core,150 F\n2027-12-04 17:44,corn,on,\n"
	q := plantest.Revised(t, p, log, "2027-12-04 17:48")
	if f, cleared := plantest.Finding(q, "stands-in-the-way"); cleared || !q.ServeAt.Equal(p.ServeAt) {
		t.Errorf("dinner at %s instead of %s; %s", q.ServeAt, p.ServeAt, f.Text)
	}
	if faults := check.Plan(q); len(faults) > 0 {
		t.Errorf("the judge: %v", faults)
	}
	q = plantest.Revised(t, p, log+"2027-12-04 17:50,chicken-thigh,core,181 F\n2027-12-04 17:50,chicken-thigh,coldest,181 F\n", "2027-12-04 17:51")
	if s := plantest.Step(t, q, schedule.StepTakeOff, "chicken-thigh"); !strings.Contains(s.Text, "was read at 181") {
		t.Errorf("at its target: %s", s.Text)
	}

	// What is off is not turned any more. Before, corn was to be turned at bedtime.
	q = plantest.Revised(t, p, log+"2027-12-04 17:52,chicken-thigh,pulled,\n2027-12-04 18:00,corn,pulled,\n", "2027-12-04 20:30")
	for _, s := range q.Steps {
		if !s.Done && s.Dish != "" {
			t.Errorf("after dinner: %s at %s: %s", s.Kind, s.At, s.Text)
		}
	}
	if faults := check.Plan(q); len(faults) > 0 {
		t.Errorf("the judge after dinner: %v", faults)
	}
}
