package check_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
)

// printed is a plan as it comes back from its JSON.
func printed(t *testing.T, p schedule.Plan) schedule.Plan {
	t.Helper()
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	back, err := schedule.ReadPlan(text)
	if err != nil {
		t.Fatal(err)
	}
	return back
}

func TestPlansAreSound(t *testing.T) {
	for party := range plantest.Days {
		t.Run(party, func(t *testing.T) {
			p := plantest.Plan(t, plantest.Days[party])
			for _, f := range check.Plan(p) {
				t.Errorf("%s", f)
			}
			for _, f := range check.Plan(printed(t, p)) {
				t.Errorf("printed and read: %s", f)
			}
			if want := party != "too much"; p.Feasible != want {
				t.Errorf("feasible %t: the day no longer tests what it is for", p.Feasible)
			}
		})
	}
}

// rulesOf are the names of the rules that a plan breaks.
func rulesOf(p schedule.Plan) []string {
	var names []string
	for _, f := range check.Plan(p) {
		name, _, _ := strings.Cut(f.Sentence, ":")
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// Each row spoils a sound plan in one place; the rule that it breaks must be among
// those that speak up.
func TestCheckCatches(t *testing.T) {
	day := map[string]schedule.Plan{}
	for _, party := range []string{"overnight", "burgers", "terrace", "gas", "too much", "travel", "sear", "supper and lunch", "shoulder", "noon", "two levels", "raised", "long brisket", "thaw", "thaw in both", "ahead", "night in the oven", "box"} {
		day[party] = plantest.Plan(t, plantest.Days[party])
	}
	day["revised"] = plantest.Revised(t, plantest.Party(t, "../.."), revisedLog, "2027-07-03 15:30")
	seen := map[string]bool{}
	for _, test := range slices.Concat(corruptions, nightCorruptions, holdCorruptions, revisedCorruptions) {
		t.Run(test.name, func(t *testing.T) {
			p := printed(t, day[test.party])
			if broken := rulesOf(p); len(broken) > 0 {
				t.Fatalf("the plan to spoil is not sound itself: %v", broken)
			}
			test.spoil(&p)
			if got := rulesOf(p); !slices.Contains(got, test.rule) {
				t.Errorf("rules %v spoke up, want %s", got, test.rule)
			}
		})
		seen[test.rule] = true
	}
	for _, r := range check.RuleNames() {
		if !seen[r] {
			t.Errorf("no corruption tries the rule %s", r)
		}
	}
}

// A plan from elsewhere may hold anything; Check says so and does not fall over.
func TestCheckStandsNonsense(t *testing.T) {
	sound := plantest.Plan(t, plantest.Days["overnight"])
	for name, spoil := range map[string]func(*schedule.Plan){
		"empty":        func(p *schedule.Plan) { *p = schedule.Plan{} },
		"no request":   func(p *schedule.Plan) { p.Request = schedule.Request{} },
		"no dishes":    func(p *schedule.Plan) { p.Dishes = nil },
		"no batches":   func(p *schedule.Plan) { p.Dishes[0].Batches = nil },
		"no stages":    func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages = nil },
		"only a rest":  func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages = p.Dishes[0].Batches[0].Stages[2:] },
		"no phases":    func(p *schedule.Plan) { p.Phases = nil },
		"no zones":     func(p *schedule.Plan) { p.Phases[0].Zones = nil },
		"phase beyond": func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages[0].Phase = 7 },
		"phase below":  func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages[0].Phase = -7 },
		"span beyond":  func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages[0].PhaseTo = 99 },
		"no pieces":    func(p *schedule.Plan) { p.Dishes[0].Batches[0].Pieces = nil },
		"no steps":     func(p *schedule.Plan) { p.Steps = nil },
		"no instants":  func(p *schedule.Plan) { p.ServeAt, p.Steps[0].At = time.Time{}, time.Time{} },
		"other cut":    func(p *schedule.Plan) { p.Dishes[0].Cut, p.Request.Dishes[0].Cut = "moon cheese", "moon cheese" },
		"no minutes":   func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages[0].Minutes = schedule.Minutes{} },
		"not a number": func(p *schedule.Plan) { p.Dishes[0].Batches[0].Stages[0].Minutes.Late = math.NaN() },
	} {
		t.Run(name, func(t *testing.T) {
			p := printed(t, sound)
			if spoil(&p); len(check.Plan(p)) == 0 {
				t.Error("nothing was said")
			}
		})
	}
}

// What is done is done: a step of the past may lie in quiet hours.
func TestCheckPassesOverThePast(t *testing.T) {
	p := printed(t, plantest.Plan(t, plantest.Days["overnight"]))
	if broken := rulesOf(p); len(broken) > 0 {
		t.Skipf("the plan to revise is not sound itself: %v", broken)
	}
	quiet := &p.Request.Quiet[0]
	quiet.From = clock.New(22, 0, 0, 0) // the brisket went on at half past ten, as the old quiet hours let it
	p.Provenance.RequestHash = plans.Hash(p.Request)
	before := rulesOf(p)
	if !slices.Contains(before, "quiet") {
		t.Fatalf("rules %v, want quiet among them: the test tests nothing", before)
	}
	p.Revision = 1
	for i := range p.Steps {
		if p.Steps[i].At.Before(p.ServeAt.Add(-12 * time.Hour)) {
			p.Steps[i].Done = true
		}
	}
	p.Quiet[0].From = p.Quiet[0].From.Add(-90 * time.Minute)
	if got := rulesOf(p); slices.Contains(got, "quiet") {
		t.Errorf("rules %v speak up; what is done cannot be undone", got)
	}
}
