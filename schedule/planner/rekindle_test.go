package planner_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Between supper and the next day's lunch the fire is let go out and lit anew, in the
// morning and in time; nobody gets up for it, and no coals burn for nothing.
func TestTheFireIsLetGoOutBetweenSupperAndLunch(t *testing.T) {
	for _, lunch := range []string{"{name: Chicken, cut: chicken-spatchcock, weight: 4 lb}", "{name: More burgers, cut: burger, weight: 6 oz, count: 6}"} {
		p := plantest.Plan(t, strings.Replace(plantest.Days["supper and lunch"], "{name: Chicken, cut: chicken-spatchcock, weight: 4 lb}", lunch, 1))
		if len(p.Phases) != 2 || !p.Phases[1].Relit {
			t.Fatalf("%s: %d phases, the last lit anew: %v", lunch, len(p.Phases), p.Phases[len(p.Phases)-1].Relit)
		}
		first, next := p.Phases[0], p.Phases[1]
		if out := next.SetupFrom.Sub(first.To); out < 12*time.Hour {
			t.Errorf("%s: out for %v only, from %v on", lunch, out, first.To)
		}
		if shut := plantest.Steps(p, schedule.StepCloseDown); len(shut) != 2 || !shut[0].At.Equal(first.To) {
			t.Errorf("%s: shut down %d times", lunch, len(shut))
		}
		for _, s := range p.Steps {
			if s.At.After(first.To) && s.At.Before(next.SetupFrom.Add(-time.Hour)) {
				t.Errorf("%s: %s at %v, while the fire is out", lunch, s.Kind, s.At)
			}
		}
		alone := plantest.Plan(t, strings.Replace(plantest.Days["supper and lunch"], "  - "+"{name: Chicken, cut: chicken-spatchcock, weight: 4 lb}\n", "", 1))
		if got, most := p.Fuel.MassKg, 3*alone.Fuel.MassKg; got > most {
			t.Errorf("%s: %.1f kg for both meals, %.1f for the supper alone", lunch, got, alone.Fuel.MassKg)
		}
	}
}

// A morning later the plan for lunch still stands, and the fire is still to be lit.
func TestLunchStandsAfterSupper(t *testing.T) {
	p := plantest.Plan(t, plantest.Days["supper and lunch"])
	for _, now := range []string{"2027-07-03 18:20", "2027-07-03 19:00", "2027-07-04 09:00", "2027-07-04 10:40", "2027-07-04 11:30"} {
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-03T17:41:00-05:00,,lit,\n2027-07-03T18:16:00-05:00,burgers,on,\n", now)
		n := len(q.Phases)
		if n != 2 || !q.Phases[1].Relit || !q.Phases[1].SetupFrom.Equal(p.Phases[1].SetupFrom) {
			t.Errorf("at %s: %d phases, the last made from %v on", now, n, q.Phases[n-1].SetupFrom)
		}
	}
}

// A thermometer that is left on the grate sees it grow cold between the meals: that is
// no fire that has died.
func TestAColdGrateBetweenMealsIsNoDeadFire(t *testing.T) {
	p := plantest.Plan(t, plantest.Days["supper and lunch"])
	log := "time,dish,kind,value\n2027-07-03T17:41:00-05:00,,lit,\n2027-07-03T18:16:00-05:00,burgers,on,\n2027-07-03T18:26:00-05:00,burgers,pulled,\n" +
		"2027-07-03T19:00:00-05:00,,grate,120 C\n2027-07-03T20:00:00-05:00,,grate,60 C\n2027-07-03T21:00:00-05:00,,grate,35 C\n"
	for _, now := range []string{"2027-07-03 22:00", "2027-07-04 08:00", "2027-07-04 11:15"} {
		q := plantest.Revised(t, p, log, now)
		for _, code := range []string{"fire-died", "fire-out", "grate-off-level", "late"} {
			if f, ok := plantest.Finding(q, code); ok {
				t.Errorf("at %s: %s: %s", now, code, f.Text)
			}
		}
	}
}

// Whoever logs the second light only has not lit the first fire late, and a second light
// that is late moves lunch, but not the supper that is eaten.
func TestTheSecondLightIsTheSecondFires(t *testing.T) {
	p := plantest.Plan(t, plantest.Days["supper and lunch"])
	now := p.Phases[1].From.Add(-7 * time.Minute).Format("2006-01-02 15:04")
	for _, late := range []time.Duration{0, 16 * time.Minute, 26 * time.Minute} {
		lit := p.Phases[1].SetupFrom.Add(late).Format("15:04")
		q := plantest.Revised(t, p, "time,dish,kind,value\n2027-07-04T"+lit+":00-05:00,,lit,\n", now)
		if ready := q.Phases[1].From; !ready.Equal(p.Phases[1].From.Add(late)) {
			t.Errorf("lit at %s: ready at %v, planned for %v", lit, ready, p.Phases[1].From)
		}
		on := slices.DeleteFunc(plantest.Steps(q, schedule.StepPutOn), func(s schedule.Step) bool { return s.Dish != "chicken" })
		if len(on) != 1 || on[0].At.Before(q.Phases[1].From) {
			t.Errorf("lit at %s: on %v, before the fire is ready", lit, on)
		}
		if eaten := q.Dishes[0].ServeAt; !eaten.Equal(p.Dishes[0].ServeAt) {
			t.Errorf("lit at %s: the burgers are served at %v", lit, eaten)
		}
		for _, s := range plantest.Steps(q, schedule.StepLight) {
			if strings.Contains(s.Text, "to add in 20 min") {
				continue // coals for the fire that burns by then
			}
			if want := map[int]string{1: "17:41", 2: lit}[s.Phase]; !s.Done || s.At.Format("15:04") != want {
				t.Errorf("lit at %s: light of phase %d at %v, done %v", lit, s.Phase, s.At, s.Done)
			}
		}
	}
}
