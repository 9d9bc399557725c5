package planner_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Chops that were read before they went on, and went back on over a fire that is told to be out: no plan
// is made of that log that keeps every promise. Whoever has the plan judged is told so
// before all else, and gets the plan all the same, for food is on the fire.
func TestALogThatDoesNotFitIsSaidFirst(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22, "{name: Chops, cut: pork-chop, weight: 10 oz, count: 4}"))
	now := time.Date(2027, 7, 3, 19, 15, 0, 0, p.ServeAt.Location())
	revised := func(log string, how ...planner.Option) schedule.Plan {
		t.Helper()
		entries, err := schedule.ReadLog([]byte("time,dish,kind,value\n"+log), p)
		if err != nil {
			t.Fatal(err)
		}
		q, err := planner.Revise(t.Context(), p, entries, now, how...)
		if err != nil {
			t.Fatal(err)
		}
		return q
	}
	const nonsense, fits = "2027-07-03 12:04,chops,coldest,40 F\n2027-07-03 13:48,chops,on,\n2027-07-03 16:18,,fire-out,\n2027-07-03 17:40,chops,restarted,\n", "2027-07-03 17:00,,lit,\n"
	isUnsound := func(f schedule.Finding) bool { return f.Code == "unsound" }

	q := revised(nonsense)
	if len(check.Plan(q)) == 0 {
		t.Fatal("the judge has nothing against the plan of this log any more: the test needs another log")
	}
	if slices.ContainsFunc(q.Findings, isUnsound) {
		t.Errorf("nobody asked for the judge: %v", q.Findings)
	}

	q = revised(nonsense, planner.Judged())
	if len(q.Findings) == 0 || !isUnsound(q.Findings[0]) {
		t.Fatalf("the first finding is not that the log does not fit: %v", q.Findings)
	}
	if f := q.Findings[0]; f.Severity != schedule.Danger || f.Path != "log" || len(q.Steps) == 0 {
		t.Errorf("%+v with %d steps; it is grave, it comes from the log, and the plan is there", f, len(q.Steps))
	}
	if f := q.Findings[0]; !strings.Contains(f.Text, `"Chops: on" of 1:48 PM`) {
		t.Errorf("it does not name the entry: %s", f.Text)
	}
	plantest.Noticed(t, q.Findings)

	if q = revised(fits, planner.Judged()); slices.ContainsFunc(q.Findings, isUnsound) {
		t.Errorf("a log that fits: %v", q.Findings)
	}
}

// Entries are blamed only where two cannot both be right; what the program itself advises never is.
func TestOnlyEntriesThatContradictEachOtherAreBlamed(t *testing.T) {
	p := plantest.Day(t, plantest.Evening(plantest.Kettle22+"oven: yes\n", "{name: Chops, cut: pork-chop, weight: 10 oz, count: 4}"))
	const on = "2027-07-03 16:40,,lit,\n2027-07-03 17:10,chops,on,\n"
	for name, c := range map[string]struct {
		log  string
		says int
	}{
		"a good day":              {on + "2027-07-03 17:30,chops,core,138 F\n2027-07-03 17:40,chops,core,146 F\n2027-07-03 17:41,chops,pulled,\n2027-07-03 17:42,chops,counter,\n2027-07-03 18:00,chops,served,\n", 0},
		"indoors, as advised":     {on + "2027-07-03 17:20,,fire-out,\n2027-07-03 17:25,chops,to-oven,325 F\n", 0},
		"aside and back":          {on + "2027-07-03 17:20,chops,stopped,\n2027-07-03 17:26,chops,restarted,\n", 0},
		"back over a dead fire":   {on + "2027-07-03 17:20,chops,stopped,\n2027-07-03 17:21,,fire-out,\n2027-07-03 17:26,chops,restarted,\n", 1},
		"relit in between":        {on + "2027-07-03 17:20,chops,stopped,\n2027-07-03 17:21,,fire-out,\n2027-07-03 17:25,,lit,\n2027-07-03 17:40,chops,restarted,\n", 0},
		"on twice":                {on + "2027-07-03 17:30,chops,on,\n", 1},
		"wrapped before it is on": {"2027-07-03 16:40,,lit,\n2027-07-03 16:50,chops,wrapped,\n2027-07-03 17:10,chops,on,\n", 1},
	} {
		log, err := schedule.ReadLog([]byte("time,dish,kind,value\n"+c.log), p)
		if err != nil {
			t.Fatal(err)
		}
		if got := planner.Contradictions(p, log); len(got) != c.says {
			t.Errorf("%s: %v", name, got)
		}
	}
}
