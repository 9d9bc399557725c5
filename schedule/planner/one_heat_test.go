package planner_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// A cut alone has its own heat: the one that all can share saves no fire then, and is not
// chosen for the time it saves. An oven keeps what is done early: where only a cooler does, a
// hotter grate, of which the end is surer, may be.
func TestTheCommonHeatIsASecondChoice(t *testing.T) {
	for _, c := range []string{"st-louis-ribs, weight: 2.8 lb, count: 2", "pork-butt, weight: 8 lb", "chicken, weight: 4 lb", "turkey, weight: 12 lb"} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, "{cut: "+c+"}"))
		if !p.Feasible {
			t.Fatalf("%s: %v", c, p.Findings)
		}
		if l := p.Dishes[0].Batches[0].Stages[0].LevelC; l > unit.FToC(299) && l < unit.FToC(301) {
			t.Errorf("%s cooks at %.0f C though nothing else is on the fire", c, l)
		}
	}
}

// Birds of more than 14 lb are not cooked below 300 °F (judgment, no source), neither
// because it is asked for nor because a grill has nothing hotter.
func TestABigBirdIsNotCookedOnAGentleFire(t *testing.T) {
	text := plantest.Evening("grill: {kind: kettle, diameter: 26 in}\n", "{cut: turkey, weight: 14.5 lb, level: 275 °F}")
	faults := func(text string) string {
		_, err := planner.Make(context.Background(), plantest.Request(t, text), planner.Cheaply(1000))
		return fmt.Sprint(err)
	}
	if got := faults(text); !strings.Contains(got, "ask for 300 °F or more") {
		t.Errorf("14.5 lb at 275 °F: %s", got)
	}
	for _, other := range []string{strings.Replace(text, "275 °F", "300 °F", 1), strings.Replace(text, "14.5 lb", "13.5 lb", 1)} {
		if got := faults(other); got != "<nil>" {
			t.Errorf("%s: %s", other, got)
		}
	}
	cool := "grill: {kind: other, zones: [{name: smoker, width: 24 in, depth: 30 in, min: 200 °F, max: 280 °F}]}\n"
	for weight, want := range map[string]bool{"12 lb": true, "16 lb": false} {
		p := plantest.Plan(t, plantest.Evening(cool, "{cut: turkey, weight: "+weight+"}"))
		if p.Feasible != want {
			t.Errorf("a turkey of %s in a smoker of 280 °F at most: feasible %v", weight, p.Feasible)
		}
	}
}

// A tough cut that nobody asked a heat for cooks at its usual one, unless that makes it much
// less sure, keeps it from a fire that serves another dish too, or takes longer than
// people are up. Then the plan says which, in a sentence.
func TestAnotherHeatThanTheUsualOneIsExplained(t *testing.T) {
	for _, c := range []struct{ rest, dishes, want string }{
		{plantest.Kettle22, "{cut: brisket, weight: 12 lb}", "instead of the usual 250 °F, because a shorter cook is surer"},
		{plantest.Kettle22 + plantest.Oven170, "{cut: pork-butt, weight: 8 lb}", "instead of the usual 250 °F, because the hours that you are up are too short"},
		{plantest.Kettle22, "{cut: st-louis-ribs, weight: 2.8 lb, count: 2}|{name: Chicken, cut: chicken, weight: 4 lb}", "because it shares one fire with Chicken"},
		{plantest.Kettle22, "{cut: brisket, weight: 12 lb, level: 300 °F}", ""},
		{plantest.Kettle22 + plantest.Oven170, "{cut: chuck-roast, weight: 3 lb}", ""},
	} {
		p := plantest.Plan(t, plantest.Evening(c.rest, strings.Split(c.dishes, "|")...))
		f, said := plantest.Finding(p, schedule.CodeHotter)
		if said != (c.want != "") || !strings.Contains(f.Text, c.want) {
			t.Errorf("%s%s: %q, want %q", c.rest, c.dishes, f.Text, c.want)
		}
	}
}

// Where only a cooler keeps it, a hotter grate is chosen only if it makes the cook surer by a
// fifth or more: a level asked for shows what each heat would have.
func TestAHotterGrateMustBeMuchSurer(t *testing.T) {
	for _, dish := range []string{"pork-butt, weight: 8 lb", "pork-butt, weight: 4 lb", "pork-butt, weight: 3 lb", "brisket, weight: 12 lb", "chuck-roast, weight: 4 lb", "chuck-roast, weight: 3 lb", "pork-picnic, weight: 7 lb"} {
		at := func(level string) (float64, float64) {
			p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"quiet: []\n", "{cut: "+dish+level+"}"))
			return p.Chance.All, p.Dishes[0].Batches[0].Stages[0].LevelC*1.8 + 32
		}
		chosen, level := at("")
		usual, _ := at(", level: 250 °F")
		t.Logf("%s: %.0f °F %.3f, at 250 °F %.3f", dish, level, chosen, usual)
		const rounding = 0.005
		if level > 251 && chosen < usual+0.2-rounding {
			t.Errorf("%s: %.0f °F for a chance of %.3f, where 250 °F has %.3f", dish, level, chosen, usual)
		}
	}
}

// No fire stands only between two others: before, a two-zone fire of no minutes was built
// between a banked one at 300 °F and one at 325 °F, because those two are alike.
func TestNoFireStandsOnlyBetweenTwoOthers(t *testing.T) {
	p := plantest.Plan(t, strings.Replace(plantest.Evening("grill: {kind: kettle, diameter: 26 in}\n"+plantest.Oven170+"quiet: [{from: \"22:30\", to: \"06:30\"}]",
		"{cut: brisket, weight: 13.37 lb}", "{cut: pork-butt, weight: 5.44 lb}", "{cut: rib-roast-bone-in, weight: 8.89 lb}"), "18:00", "18:30", 1))
	if !p.Feasible || len(p.Phases) < 2 {
		t.Fatalf("feasible %t, %d fires: the day tests nothing", p.Feasible, len(p.Phases))
	}
	for _, ph := range p.Phases {
		if ph.To.Sub(ph.From) < 10*time.Minute {
			t.Errorf("%s at %.0f degC burns from %s to %s", ph.Layout, ph.LevelC, ph.From.Format("15:04"), ph.To.Format("15:04"))
		}
	}
	if len(p.Phases) != 2 {
		t.Errorf("%d fires", len(p.Phases))
	}
}
