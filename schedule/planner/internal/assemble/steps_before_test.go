package assemble_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// Turkey in the refrigerator, a day for each 4 lb: 12 lb 72 h, 16 lb 96 h (fsis_thaw).
func TestThawingBeginsThePublishedTimeBefore(t *testing.T) {
	for _, c := range []struct {
		weight string
		hours  float64
	}{{"12 lb", 72}, {"16 lb", 96}} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Sleep, "{name: Turkey, cut: turkey, weight: "+c.weight+", start: frozen}"))
		thaws, on := plantest.StepsOf(p, schedule.StepThaw, "turkey"), plantest.StepsOf(p, schedule.StepPutOn, "turkey")
		if len(thaws) != 1 || len(on) != 1 {
			t.Fatalf("%s: %d steps to thaw, %d to put on", c.weight, len(thaws), len(on))
		}
		// At least the published time before it is taken out, and not so much
		// earlier than a night and a rounding that it would not keep.
		before := on[0].At.Sub(thaws[0].At).Hours() - assemble.TakeOutLarge/60.0
		if before < c.hours || before > c.hours+8 {
			t.Errorf("%s: thaws for %.1f h, published %g", c.weight, before, c.hours)
		}
	}
}

func TestThawingFallsOutsideQuietHours(t *testing.T) {
	// A day for each 4 lb puts the beginning for 14.5 lb at about 21:45.
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"quiet: [{from: \"20:30\", to: \"05:30\"}]\n", "{name: Turkey, cut: turkey, weight: 14.5 lb, start: frozen}"))
	if got := plantest.StepsOf(p, schedule.StepThaw, "turkey"); len(got) != 1 || got[0].At.Format("15:04") != "20:15" {
		t.Errorf("thawing %v, want a quarter of an hour before the night", got)
	}
}

func TestColdWaterWhereTheRefrigeratorTakesTooLong(t *testing.T) {
	// 12 lb in cold water: 6 h (fsis_thaw), and it cooks in some 3 h at 350 F.
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"earliest: \"06:00\"\n", "{name: Turkey, cut: turkey, weight: 12 lb, start: frozen}"))
	thaws := plantest.StepsOf(p, schedule.StepThaw, "turkey")
	if len(thaws) != 1 || !strings.Contains(thaws[0].Text, "cold water") {
		t.Fatalf("thawing: %v", thaws)
	}
	if h := plantest.StepsOf(p, schedule.StepPutOn, "turkey")[0].At.Sub(thaws[0].At).Hours(); h < 6 || h > 7 {
		t.Errorf("in cold water for %.1f h before the put-on, published 6", h)
	}
	p = plantest.Plan(t, plantest.Evening(plantest.Kettle22+"earliest: \"12:00\"\n", "{name: Turkey, cut: turkey, weight: 12 lb, start: frozen}"))
	if _, said := plantest.Finding(p, "thaw-no-time"); !said || len(plantest.StepsOf(p, schedule.StepThaw, "turkey")) != 0 {
		t.Errorf("no time to thaw after noon, and the plan does not say so: %v", p.Findings)
	}
}

// Two days are too few for the refrigerator (14 lb: 84 h) and the night before too short for
// cold water (7 h): it lies in the one for as long as there is, and is finished in the other,
// by whoever is up, for the share that is left of it. An hour before the fire nothing helps,
// and a bird that is frozen still makes no day.
func TestThawsInBothWhereNeitherIsEnough(t *testing.T) {
	day := func(earliest string) schedule.Plan {
		return plantest.Plan(t, strings.Replace(plantest.Evening(plantest.Kettle22+"earliest: "+earliest+"\n", "{name: Turkey, cut: turkey, weight: 14 lb, start: frozen}"), "18:00", "15:00", 1))
	}
	p := day(`{date: 2027-07-01, time: "12:30"}`)
	thaws := plantest.StepsOf(p, schedule.StepThaw, "turkey")
	if len(thaws) != 2 || !strings.Contains(thaws[0].Text, "refrigerator") || !strings.Contains(thaws[1].Text, "cold water") {
		t.Fatalf("%v", thaws)
	}
	in, water := thaws[1].At.Sub(thaws[0].At).Hours(), plantest.StepsOf(p, schedule.StepPutOn, "turkey")[0].At.Sub(thaws[1].At).Hours()
	if share := in/84 + water/7; share < 1 || share > 1.15 || thaws[1].At.Hour() < 5 {
		t.Errorf("%.1f h in the refrigerator and %.1f h from the water to the fire come to %.2f of a thaw", in, water, share)
	}
	for _, late := range []string{`{date: 2027-07-02, time: "12:00"}`, `"09:30"`} {
		p := day(late)
		if _, said := plantest.Finding(p, "thaw-no-time"); !said || p.Feasible || len(p.Remedies) == 0 || p.Remedies[0].Code != "thawed" || p.Remedies[0].Chance < 0.85 {
			t.Errorf("from %s: feasible %v, %v, %v", late, p.Feasible, p.Findings, p.Remedies)
		}
	}
}

func TestSmallPiecesGoOnFrozenOnAHotGrate(t *testing.T) {
	fresh := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"))
	frozen := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4, start: frozen}"))
	a, b := fresh.Dishes[0].Batches[0].Stages[0].Minutes, frozen.Dishes[0].Batches[0].Stages[0].Minutes
	for _, m := range [][2]float64{{a.Early, b.Early}, {a.Expected, b.Expected}, {a.Late, b.Late}} {
		if math.Abs(m[1]/m[0]-1.5) > 1e-9 { // fsis_roasting_general: half as long again
			t.Errorf("%.2f min frozen, %.2f fresh", m[1], m[0])
		}
	}
	if _, said := plantest.Finding(frozen, "frozen-longer"); !said || len(plantest.StepsOf(frozen, schedule.StepThaw, "burgers")) != 0 {
		t.Errorf("findings %v", frozen.Findings)
	}
}

func TestFrozenOnASlowFire(t *testing.T) {
	// At 250 F the rule refuses it (fsis_smoking), so thighs thaw first; a forecast,
	// which has no day before, refuses.
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Thighs, cut: chicken-thigh, weight: 6 oz, count: 4, level: 275 F, zone: indirect, start: frozen}"))
	if len(plantest.StepsOf(p, schedule.StepThaw, "thighs")) != 1 {
		t.Errorf("no step to thaw; findings %v", p.Findings)
	}
	q, err := schedule.ReadInquiry(map[string]string{"cut": "brisket", "weight": "12 lb", "grate": "250 F", "start": "frozen"})
	if err != nil {
		t.Fatal(err)
	}
	var refused *schedule.InputError
	if _, err := planner.Forecast(context.Background(), q); !errors.As(err, &refused) || refused.Faults[0].Path != "start" {
		t.Errorf("a frozen brisket at 250 F: %v", err)
	}
	fresh := plantest.Ask(t, "cut", "turkey", "weight", "12 lb", "grate", "350 F")
	frozen := plantest.Ask(t, "cut", "turkey", "weight", "12 lb", "grate", "350 F", "start", "frozen")
	if got := plantest.Milestone(frozen, schedule.MilestoneTakeOff).ExpectedMinutes / plantest.Milestone(fresh, schedule.MilestoneTakeOff).ExpectedMinutes; math.Abs(got-1.5) > 1e-9 {
		t.Errorf("a frozen turkey takes %.3f times as long, published 1.5", got)
	}
}

func TestDryBrineTheEveningBefore(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Sleep, "{name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb, prep: [salt]}"))
	steps := plantest.StepsOf(p, schedule.StepSalt, "chicken")
	if len(steps) != 1 || steps[0].At.Format("Mon 15:04") != "Fri 20:00" || !strings.HasPrefix(steps[0].Text, "Chicken: salt all over") {
		t.Errorf("steps %v", steps)
	}
	plain := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Sleep, "{name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb}"))
	if plain.Dishes[0].MinimumC != p.Dishes[0].MinimumC {
		t.Errorf("a brine changes the minimum from %g to %g", plain.Dishes[0].MinimumC, p.Dishes[0].MinimumC)
	}
	for _, salted := range []string{"brined", "injected", "brined, salt", "injected, salt"} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Sleep, "{name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb, prep: ["+salted+"]}"))
		if steps := plantest.StepsOf(p, schedule.StepTakeOut, "chicken"); len(steps) != 1 || strings.Contains(steps[0].Text, "Salt") {
			t.Errorf("%s: it is salted again: %v", salted, steps)
		}
	}
}

// A fire that is lit as quiet hours end, on a day that begins within them, is laid when
// it is lit: neither in them nor before the day begins.
func TestNothingIsLaidInQuietHours(t *testing.T) {
	for _, serve := range []string{"09:40", "09:41", "09:42", "09:43"} {
		p := plantest.Plan(t, `format: 1
serve: {date: 2027-07-03, time: "`+serve+`", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
quiet: [{from: "22:00", to: "07:00"}]
earliest: "06:00"
dishes:
  - {name: Chicken, cut: chicken, weight: 4.5 lb}
`)
		if light := plantest.StepsOf(p, schedule.StepLight, ""); len(light) == 0 || light[0].At.Format("15:04") > "07:05" || light[0].At.Format("15:04") < "07:00" {
			t.Fatalf("not lit as quiet hours end: the day tests nothing: %v", light)
		}
	}
}

// Nobody lights a fire in the evening that burns all night for what goes on after it:
// the ribs, some 7 h at their usual heat with what their chance asks, do not last a night of 9 h, and without them nobody is up
// to light it in time.
func TestNoFireBurnsAllNightForNothing(t *testing.T) {
	day := plantest.Evening(plantest.Kettle22+"quiet: [{from: \"22:00\", to: \"07:00\"}]\n", "{name: Ribs, cut: spare-ribs, weight: 3 lb, count: 2}")
	p := plantest.Plan(t, strings.Replace(day, "18:00", "12:00", 1))
	if p.Feasible {
		t.Fatalf("lit at %v for ribs at noon", p.LightAt)
	}
	if len(p.Remedies) == 0 {
		t.Error("no remedy, and half an hour less sleep is one")
	}
	for _, rem := range p.Remedies {
		if rem.LightAt == nil || !rem.LightAt.After(p.ServeAt.Add(-8*time.Hour)) && !strings.Contains(rem.Text, "day before") {
			t.Errorf("%q lights at %v", rem.Text, rem.LightAt)
		}
	}
}
