package planner_test

import (
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

func nightPlan(t *testing.T, extra string) schedule.Plan {
	t.Helper()
	return plantest.Plan(t, strings.Replace(plantest.Days["night in the oven"], "count: 2", "count: 2"+extra, 1))
}

// A night in the oven has all that the rules of safety ask for: in hot and before sleep,
// 16 hr at the most, set to 170 °F or more, a probe with an alarm, the question about the
// oven, and the probe read before anything else in the morning.
func TestNightInTheOven(t *testing.T) {
	p := nightPlan(t, "")
	in := plantest.Step(t, p, schedule.StepToOven, "butts")
	looks := plantest.StepsOf(p, schedule.StepCheckOven, "butts")
	if len(looks) != 2 {
		t.Fatalf("%d looks at the oven", len(looks))
	}
	if in.At.Hour() >= 22 || p.ServeAt.Sub(in.At) > 16*time.Hour {
		t.Errorf("into the oven at %v", in.At)
	}
	for _, want := range []string{"at 170 °F", "still above 150 °F just under the surface", "165 °F to 175 °F in the middle", "never let it cool to 140 °F first", "unless you have read a thermometer in the oven",
		"The meat should stay at 150 °F to 160 °F", "many ovens run 20 to 30 °F hot", "in a pan", "wrapped"} {
		if !strings.Contains(in.Text, want) {
			t.Errorf("%q is not in %s", want, in.Text)
		}
	}
	sleep, wake := looks[0], looks[1]
	if sleep.At.Format("15:04") != "21:50" || wake.At.Format("15:04") != "07:00" {
		t.Errorf("looked at %v and %v", sleep.At, wake.At)
	}
	for _, want := range []string{"alarm at 150 °F", "Does the oven switch itself off", "good for 11 hr"} {
		if !strings.Contains(sleep.Text, want) {
			t.Errorf("%q is not in %s", want, sleep.Text)
		}
	}
	if !strings.Contains(wake.Text, "Before anything else read the probe") || !strings.Contains(wake.Text, "not served and not kept") {
		t.Error(wake.Text)
	}
	if _, said := plantest.Finding(p, schedule.CodeOvenDries); !said {
		t.Error("nothing says that 170 °F for a night dries it")
	}
	// What the plan cannot keep on a fast day is not called sure.
	if _, short := plantest.Finding(p, schedule.CodeHoldShort); !short || p.Dishes[0].Chance > 0.88 {
		t.Errorf("hold-short said: %t; chance %.2f where 0.9 was asked", short, p.Dishes[0].Chance)
	}
}

// What may not be in the oven through a night is not planned so: each of these days is
// cooked otherwise, or not at all.
func TestNoNightInTheOven(t *testing.T) {
	base := plantest.Days[nightOven]
	change := func(old, new string) string {
		out := strings.Replace(base, old, new, 1)
		if out == base {
			t.Fatalf("%q is not in the day", old)
		}
		return out
	}
	for name, text := range map[string]string{
		"an oven at 160 °F":      change("hold: 170 °F", "hold: 160 °F"),
		"frail guests":           change("oven:", "guests: {adults: 8, frail: true}\noven:"),
		"injected":               change("count: 2", "count: 2, prep: [injected]"),
		"rolled":                 change("count: 2", "count: 2, prep: [rolled]"),
		"sliced at 185 °F":       change("count: 2", "count: 2, target: sliced"),
		"a box and no oven":      change("count: 2", "count: 2, hold: [insulated-box]"),
		"turkey":                 change("cut: pork-butt, weight: 9 lb, count: 2", "cut: turkey, weight: 12 lb"),
		"ribs":                   change("cut: pork-butt, weight: 9 lb", "cut: spare-ribs, weight: 3 lb"),
		"twelve hours of quiet":  change(`from: "22:00", to: "07:00"`, `from: "20:30", to: "08:30"`),
		"ground":                 change("cut: pork-butt, weight: 9 lb, count: 2", "cut: meatloaf, weight: 4 lb"),
		"no oven in the request": change("oven: {hold: 170 °F}\n", ""),
	} {
		p := plantest.Plan(t, text)
		for _, d := range p.Dishes {
			for _, b := range d.Batches {
				last := b.Stages[len(b.Stages)-1]
				if off := last.From; last.Kind == schedule.StageHold && off.Day() != p.ServeAt.Day() {
					t.Errorf("%s: held from %v, in the %s", name, off, last.Place)
				}
			}
		}
	}
}

const nightOven = "night in the oven"

// An oven that is known to stay on may be left for longer than 11 hr.
func TestAnOvenThatStaysOn(t *testing.T) {
	text := strings.Replace(plantest.Days[nightOven], `from: "22:00", to: "07:00"`, `from: "21:30", to: "08:45"`, 1)
	text = strings.Replace(text, "weight: 9 lb, count: 2", "weight: 5 lb", 1)
	if p := plantest.Plan(t, text); p.Feasible && len(plantest.Steps(p, schedule.StepCheckOven)) > 0 {
		t.Error("left for more than 11 hr in an oven of which nobody knows")
	}
	p := plantest.Plan(t, strings.Replace(text, "hold: 170 °F", "hold: 170 °F, stays_on: true", 1))
	if !p.Feasible || len(plantest.Steps(p, schedule.StepCheckOven)) != 2 {
		t.Errorf("feasible %t, %d looks", p.Feasible, len(plantest.Steps(p, schedule.StepCheckOven)))
	}
}

// One oven for a brisket at 170 °F and for birds at 200 °F: who puts the birds in turns it up
// (safety: birds are held at 200 °F).
func TestTheOvenIsTurnedUpForBirds(t *testing.T) {
	p := plantest.Party(t, "../..")
	in := plantest.StepsOf(p, schedule.StepToOven, "chickens")
	if len(in) == 0 || !strings.HasPrefix(in[0].Text, "Chickens: loosely covered, into the oven, turned up to 200 °F") || !strings.Contains(in[0].Text, "Brisket can stay in, wrapped") {
		t.Errorf("%v", in)
	}
}
