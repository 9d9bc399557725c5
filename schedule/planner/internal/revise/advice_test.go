package revise_test

import (
	"context"
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/planner/internal/revise"
)

// Every piece of advice is an entry of the log, and what it promises is the
// difference of two plans: this one, and the one with the entry. For a wrap that
// the plan takes as done now it is the difference to a piece that is left bare.
func TestAdviceIsTheDifferenceOfTwoPlans(t *testing.T) {
	early := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	slow := "time,dish,kind,value\n08:00,brisket,on,\n09:30,brisket,core,62 °F\n11:00,brisket,core,104 °F\n13:00,brisket,core,138 °F\n"
	for _, c := range []struct {
		name, log, now string
		codes          []string
	}{
		{"slow", slow + "14:30,brisket,core,148 °F\n", "2027-07-03 14:30", []string{"wrap-now", "hotter", "oven-finish", "likely"}},
		{"cool grate", slow + "13:00,,grate,230 °F\n13:30,,grate,228 °F\n", "2027-07-03 13:30", []string{"back-to-level"}},
		{"hot grate", slow + "12:40,,vents,\"top 1/2, bottom 1/2\"\n12:50,,grate,315 °F\n13:30,,grate,318 °F\n", "2027-07-03 13:30", []string{"back-to-level"}},
		{"fire out", "time,dish,kind,value\n08:00,brisket,on,\n10:00,brisket,core,120 °F\n11:00,,fire-out,\n11:40,brisket,core,138 °F\n", "2027-07-03 11:40", []string{"indoors"}},
		{"ahead", "time,dish,kind,value\n08:00,brisket,on,\n10:00,brisket,core,148 °F\n10:30,brisket,wrapped,foil\n12:00,brisket,core,185 °F\n", "2027-07-03 12:00", []string{"sink"}},
	} {
		q := plantest.Revised(t, early, c.log, c.now)
		seen := map[string]bool{}
		for _, r := range q.Remedies {
			seen[r.Code] = true
			checkAdvice(t, c.name, q, r)
		}
		for _, code := range c.codes {
			if !seen[code] {
				t.Errorf("%s: no advice %q among %v", c.name, code, q.Remedies)
			}
		}
	}
}

func checkAdvice(t *testing.T, name string, q schedule.Plan, r schedule.Remedy) {
	t.Helper()
	if len(r.Edits) != 1 || r.Edits[0].Path != "log" {
		t.Errorf("%s, %s: edits %v", name, r.Code, r.Edits)
		return
	}
	var e schedule.Entry
	if err := json.Unmarshal([]byte(r.Edits[0].Value), &e); err != nil {
		t.Fatal(err)
	}
	with := func(e schedule.Entry) schedule.Plan {
		after, err := planner.Revise(context.Background(), q, []schedule.Entry{e}, *q.RevisedAt)
		if err != nil {
			t.Fatal(err)
		}
		plantest.Judge(t, after)
		return after
	}
	before, after := q, with(e)
	bare := ""
	if r.Code == "wrap-now" && !plantest.FirstAt(q, schedule.StepWrap, "brisket").After(*q.RevisedAt) {
		e.Value, bare = schedule.WrapNone, " than left bare"
		before = with(e)
	}
	moved := plantest.TakeOff(t, after, "brisket").Expected.Sub(plantest.TakeOff(t, before, "brisket").Expected)
	said := []string{"The cook stays as it is", "Brisket: done at the same time"}
	for _, off := range []time.Duration{-time.Minute, 0, time.Minute} { // both instants are rounded to the minute
		said = append(said, "Brisket: done "+revise.Moves(q.Request, (moved+off).Minutes())+bare)
	}
	fits := false
	for _, s := range said {
		fits = fits || len(r.Price) >= len(s) && r.Price[:len(s)] == s
	}
	t.Logf("%s, %s: %s (plans differ by %v)", name, r.Code, r.Price, moved)
	if !fits || r.Price == said[0] && moved.Abs() > time.Minute {
		t.Errorf("%s, %s: says %q; the plans differ by %v", name, r.Code, r.Price, moved)
	}
	// The advice goes on from now, the plan follows the piece anew: under a minute.
	if !r.ServeAt.Equal(after.ServeAt) || math.Abs(r.Chance-after.Chance.All) > 0.005 {
		t.Errorf("%s, %s: serve %v chance %v; the plan says %v and %v", name, r.Code, r.ServeAt, r.Chance, after.ServeAt, after.Chance.All)
	}
}

// A fire so cool that the core never gets there is said in words, not as a take-off
// in two days; advice that changes nothing is not given.
func TestNeverIsSaid(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "../../testdata/logs/brisket-alone.yaml"))
	q := plantest.Revised(t, p, "time,dish,kind,value\n08:00,brisket,on,\n10:00,brisket,core,125 °F\n11:00,,grate,225 °F\n11:30,,grate,205 °F\n12:00,brisket,core,150 °F\n", "2027-07-03 12:05")
	f, ok := plantest.Finding(q, "never-done")
	if !ok || !strings.Contains(f.Text, "does not come to 203 °F") {
		t.Errorf("finding %q", f.Text)
	}
	if len(q.Remedies) == 0 || !strings.Contains(q.Remedies[0].Price, "done after all") {
		t.Errorf("advice %v", q.Remedies)
	}
	for _, r := range q.Remedies {
		if strings.HasSuffix(r.Price, revise.SameTime) && r.Chance < q.Chance.All+revise.LateWorth {
			t.Errorf("idle advice: %s %s", r.Text, r.Price)
		}
	}
}
