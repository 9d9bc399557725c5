package planner_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

func TestThePartyHasAPlanAtItsConfidence(t *testing.T) {
	p := plantest.Party(t, "../..")
	if !p.Feasible || !p.Solution.Proven {
		t.Fatalf("feasible %v, proven %v, findings %v", p.Feasible, p.Solution.Proven, p.Findings)
	}
	for _, d := range p.Dishes {
		if d.Chance < p.Chance.Asked {
			t.Errorf("%s is ready with chance %v, asked %v", d.Name, d.Chance, p.Chance.Asked)
		}
	}
	if p.Chance.All > p.Dishes[0].Chance || p.Chance.All <= 0.5 {
		t.Errorf("chance of all %v", p.Chance.All)
	}
	if len(p.Cautions) < 8 || p.Fuel == nil || len(p.Remedies) != 0 {
		t.Errorf("%d cautions, fuel %v, %d remedies", len(p.Cautions), p.Fuel, len(p.Remedies))
	}
}

// Nothing attended that a plan fixes lies in quiet hours.
func TestQuietHoursAreQuiet(t *testing.T) {
	documents := []string{
		plantest.Evening(plantest.Kettle22+"quiet: [{from: \"23:00\", to: \"05:30\"}]\noven: {hold: 170 F}", "{cut: pork-butt, weight: 8 lb, level: 250 F, wrap: {with: foil, from: 150 F}}"),
		plantest.Evening(plantest.Kettle22+"quiet: [{from: \"22:00\", to: \"07:00\"}]\noven: {hold: 170 F}", "{cut: brisket, weight: 11 lb, level: 225 F, wrap: {with: foil, from: 150 F}}"),
	}
	for _, document := range documents {
		p := plantest.Plan(t, document)
		if !p.Feasible {
			t.Fatalf("not feasible: %v", p.Findings)
		}
		for _, s := range p.Steps {
			fixed := s.Window.Early.Equal(s.Window.Late)
			for _, q := range p.Quiet {
				if s.Attended && fixed && !s.At.Before(q.From) && s.At.Before(q.To) {
					t.Errorf("%s at %s in quiet hours", s.Kind, s.At)
				}
			}
		}
	}
}

// A wrap that comes due at night waits for the morning: the piece goes on in the
// evening and is wrapped at the end of quiet hours or later.
func TestAWrapThatComesDueAtNightWaits(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"quiet: [{from: \"23:00\", to: \"05:30\"}]\noven: {hold: 170 F}",
		"{cut: brisket, weight: 12 lb, level: 225 F, wrap: {with: foil, from: 150 F}}"))
	if !p.Feasible {
		t.Fatalf("not feasible: %v", p.Findings)
	}
	b := p.Dishes[0].Batches[0]
	wrap := b.Stages[1]
	if wrap.Kind != schedule.StageWrapped || b.Stages[0].From.Day() == wrap.From.Day() {
		t.Fatalf("stages %+v", b.Stages[:2])
	}
	if h := wrap.From.Hour()*60 + wrap.From.Minute(); h < 5*60+30 || wrap.From.Hour() > 12 {
		t.Errorf("wrapped at %s", wrap.From)
	}
}

func TestUnequalPiecesFinishOnTheirOwn(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"oven: {hold: 170 F}", "{cut: pork-butt, weights: [8 lb, 5 lb], level: 275 F}"))
	if !p.Feasible || len(p.Dishes[0].Batches) != 2 {
		t.Fatalf("feasible %v, %d batches, %v", p.Feasible, len(p.Dishes[0].Batches), p.Findings)
	}
	large, small := p.Dishes[0].Batches[0], p.Dishes[0].Batches[1]
	if large.Pieces[0].MassKg <= small.Pieces[0].MassKg || !small.Stages[0].From.After(large.Stages[0].From) {
		t.Errorf("the smaller piece must go on later: %s and %s", large.Stages[0].From, small.Stages[0].From)
	}
}

func TestDishesWithServingInstantsOfTheirOwn(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Starters, cut: sausage, weight: 4 oz, count: 6, serve: \"15:00\"}", "{name: Mains, cut: chicken-spatchcock, weight: 4 lb}"))
	if !p.Feasible {
		t.Fatal(p.Findings)
	}
	if h := p.Dishes[0].ServeAt.Hour(); h != 15 {
		t.Errorf("starters at %s", p.Dishes[0].ServeAt)
	}
	serves := 0
	for _, s := range p.Steps {
		if s.Kind == schedule.StepServe {
			serves++
		}
	}
	if serves != 2 {
		t.Errorf("%d serve steps, want 2", serves)
	}
}

// An infeasible day is a plan that names the dishes and the rules that clash, and
// the remedies lead to plans.
func TestAnInfeasibleDaySaysWhyAndWhatHelps(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening("grill: {kind: kettle, diameter: 18 in}\nearliest: \"12:00\"", "{name: Shoulder, cut: pork-butt, weight: 8 lb}"))
	if p.Feasible || len(p.Steps) != 0 || len(p.Findings) == 0 || p.Findings[0].Dishes[0] != p.Dishes[0].ID {
		t.Fatalf("feasible %v, steps %d, findings %v", p.Feasible, len(p.Steps), p.Findings)
	}
	if !strings.Contains(p.Findings[0].Text, "Shoulder") {
		t.Errorf("finding %q does not name the dish", p.Findings[0].Text)
	}
}

func TestRemediesLeadToPlans(t *testing.T) {
	document := plantest.Evening("grill: {kind: kettle, diameter: 18 in}\nquiet: [{from: \"22:00\", to: \"08:00\"}]",
		"{name: Shoulder, cut: pork-butt, weight: 6 lb, level: 250 F, wrap: none}")
	p := plantest.Plan(t, document)
	if p.Feasible {
		t.Fatal("the day can be done: nothing to mend")
	}
	if len(p.Remedies) == 0 {
		t.Fatal("no remedy")
	}
	for _, rem := range p.Remedies {
		if rem.Text == "" || rem.Price == "" || len(rem.Edits) == 0 || rem.Chance <= 0 {
			t.Errorf("remedy %+v", rem)
		}
	}
}

func TestCancelledContextGivesNoPlan(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22, "{cut: brisket, weight: 12 lb}")))
	if err != nil {
		t.Fatal(err)
	}
	if p, err := planner.Make(ctx, r); !errors.Is(err, context.Canceled) || p.Feasible {
		t.Errorf("error %v, feasible %v", err, p.Feasible)
	}
}

// Common practice, no source: two briskets at once take about as long as one if
// both fit.
func TestTwoBrisketsTakeAsLongAsOne(t *testing.T) {
	day := func(count int) schedule.Plan {
		return plantest.Plan(t, plantest.Evening("grill: {kind: box, width: 40 in, depth: 24 in}", fmt.Sprintf("{cut: brisket, weight: 10 lb, count: %d, level: 250 F}", count)))
	}
	cook := func(p schedule.Plan) time.Duration {
		if !p.Feasible || len(p.Dishes[0].Batches) != 1 {
			t.Fatalf("feasible %v, %d batches %v", p.Feasible, len(p.Dishes[0].Batches), p.Findings)
		}
		m := p.Dishes[0].Batches[0].Milestones
		var off schedule.Window
		for _, x := range m {
			if x.Kind == schedule.MilestoneTakeOff {
				off = x.Window
			}
		}
		return off.Expected.Sub(m[0].Window.Expected)
	}
	one, two := cook(day(1)), cook(day(2))
	if two < one || two > one+one/20 { // the slower of two is a few per cent slower
		t.Errorf("one takes %v, two take %v", one, two)
	}
}

func TestPlanIsTheSameAgain(t *testing.T) {
	a, err := json.Marshal(plantest.Party(t, "../.."))
	if err != nil {
		t.Fatal(err)
	}
	if b, _ := json.Marshal(plantest.Party(t, "../..")); !bytes.Equal(a, b) {
		t.Error("the same request gave two plans")
	}
}

// Two meals a night apart that can each be had are had together: each day has fires of its
// own. The ribs at their asked heat and the burgers want two; the flat and the chickens share
// one of 300 F, which is lit anew.
func TestTwoDaysHaveTheirOwnFires(t *testing.T) {
	const saturday = ", serve: {date: 2027-07-02, time: \"18:00\"}}"
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+oven170, "{cut: baby-backs, weight: 2.3 lb, count: 2, level: 250 F"+saturday, "{cut: burger, weight: 6 oz, count: 8"+saturday,
		"{cut: brisket-flat, weight: 6 lb}", "{cut: chicken-half, weight: 1.9 lb, count: 2}"))
	if !p.Feasible || len(p.Phases) != 3 || !p.Phases[2].Relit {
		t.Errorf("feasible %v with %d fires: %v", p.Feasible, len(p.Phases), p.Findings)
	}
}
