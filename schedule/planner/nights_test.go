package planner_test

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Days and nights that go wrong at the grill, invented, each asked about after every line of
// its log, an hour and three hours after the last: what is said is sound, and no two orders of
// one answer contradict each other.
func TestNightsOfTrouble(t *testing.T) {
	if testing.Short() {
		t.Skip("a few hundred revisions")
	}
	days, err := filepath.Glob("testdata/nights/*.yaml")
	if err != nil || len(days) < 24 {
		t.Fatal(len(days), err)
	}
	for _, day := range days {
		name := strings.TrimSuffix(filepath.Base(day), ".yaml")
		t.Run(name, func(t *testing.T) {
			p := plantest.Plan(t, plantest.ReadFile(t, day))
			log, err := schedule.ReadLog([]byte(plantest.ReadFile(t, strings.TrimSuffix(day, "yaml")+"csv")), p)
			if err != nil {
				t.Fatal(err)
			}
			log = schedule.JoinLogs(nil, log)
			last := log[len(log)-1].At
			asked := []time.Time{last.Add(time.Hour), last.Add(3 * time.Hour)}
			for _, e := range log {
				asked = append(asked, e.At.Add(time.Minute))
			}
			for _, at := range asked {
				known := slices.DeleteFunc(slices.Clone(log), func(e schedule.Entry) bool { return e.At.After(at) })
				clock := at.In(p.ServeAt.Location()).Format("15:04")
				q, err := planner.Revise(t.Context(), p, known, at)
				if err != nil {
					t.Fatal(at, err)
				}
				for _, c := range plantest.Contradictions(q) {
					t.Errorf("%s: %s", clock, c)
				}
				for _, f := range check.Plan(q) {
					t.Errorf("%s: the judge: %s", clock, f)
				}
			}
		})
	}
}

// In a wind that carries embers no vent is opened, whatever the grate reads; what there is to
// do is the oven.
func TestNoVentIsOpenedInAStorm(t *testing.T) {
	p := plantest.Plan(t, plantest.ReadFile(t, "testdata/nights/b11.yaml"))
	log, err := schedule.ReadLog([]byte(plantest.ReadFile(t, "testdata/nights/b11.csv")), p)
	if err != nil {
		t.Fatal(err)
	}
	log = schedule.JoinLogs(nil, log)
	stormy := slices.IndexFunc(log, func(e schedule.Entry) bool { return e.Kind == schedule.LogWind })
	told := false
	for k := stormy; k < len(log); k++ {
		q, err := planner.Revise(t.Context(), p, log[:k+1], log[k].At.Add(time.Minute))
		if err != nil {
			t.Fatal(err)
		}
		opens := func(what, text string) {
			if strings.Contains(text, "pen the top vent from") || strings.Contains(text, "pen the bottom vent from") {
				t.Errorf("%s: %s: %s", log[k].At, what, text)
			}
			told = told || strings.Contains(text, "Open no vent in this wind")
		}
		for _, s := range q.Steps {
			if !s.Done {
				opens(string(s.Kind), s.Text)
			}
		}
		for _, f := range q.Findings {
			opens(f.Code, f.Text)
		}
		for _, r := range q.Remedies {
			opens("remedy "+r.Code, r.Text)
		}
	}
	if !told {
		t.Error("nothing says to open no vent")
	}
}

// Who eats in the night out of the oven sleeps before that, and reads the probe before the
// knife: a brisket at 2 in the morning, with sleep from half past eight.
func TestAMealInTheNightIsReadBeforeItIsCut(t *testing.T) {
	p := plantest.Day(t, "format: 1\nserve: {date: 2027-07-04, time: \"02:00\", tz: America/Chicago}\noven: true\nquiet: [{from: \"20:30\", to: \"05:00\"}]\n"+plantest.Kettle22+"dishes:\n  - {id: d, cut: brisket, weight: 6 lb}\n")
	looks, cut := plantest.StepsOf(p, schedule.StepCheckOven, "d"), plantest.StepAt(t, p, schedule.StepSlice, "d")
	if len(looks) != 2 || !looks[1].At.Equal(cut) {
		t.Errorf("looks at %v, cut at %v", looks, cut)
	}
}
