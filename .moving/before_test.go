package schedule

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"
)

// sound fails the test where Check finds a fault.
func sound(t *testing.T, p Plan) {
	t.Helper()
	for _, f := range Check(p) {
		t.Errorf("%s", f)
	}
}

func stepsOf(p Plan, kind, dish string) []Step {
	var out []Step
	for _, s := range p.Steps {
		if s.Kind == kind && s.Dish == dish {
			out = append(out, s)
		}
	}
	return out
}

func findingOf(p Plan, code string) (Finding, bool) {
	for _, f := range p.Findings {
		if f.Code == code {
			return f, true
		}
	}
	return Finding{}, false
}

const sleep = "quiet: [{from: \"23:00\", to: \"05:30\"}]\n"

// What goes on at the very end of quiet hours is taken out then, not in them. The
// hours end when the ribs go on if nobody sleeps, as found in a drawn day, and are short
// enough for the fire to burn through them idly.
func TestNothingIsTakenOutInQuietHours(t *testing.T) {
	p := planOf(t, `format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
quiet: [{from: "02:00", to: "03:30"}]
weather: {air: 92 F, altitude: 5280 ft}
confidence: 0.8
units: metric
dishes:
  - {name: Ribs, cut: beef-plate-ribs, weight: 3.538 kg, count: 2, ready: day-before}
  - {name: Chicken, cut: chicken, weight: 1.814 kg}
`)
	on := stepsOf(p, StepPutOn, "")
	if len(on) == 0 || on[0].At.Format("15:04") != "03:30" {
		t.Fatalf("the ribs go on at another instant than the end of quiet hours: the day tests nothing: %v", on)
	}
	sound(t, p)
}

// Turkey in the refrigerator, a day for each 4 lb: 12 lb 72 h, 16 lb 96 h (fsis_thaw).
func TestThawingBeginsThePublishedTimeBefore(t *testing.T) {
	for _, c := range []struct {
		weight string
		hours  float64
	}{{"12 lb", 72}, {"16 lb", 96}} {
		p := planOf(t, evening(kettle22+sleep, "{name: Turkey, cut: turkey, weight: "+c.weight+", start: frozen}"))
		sound(t, p)
		thaws, on := stepsOf(p, StepThaw, "turkey"), stepsOf(p, StepPutOn, "turkey")
		if len(thaws) != 1 || len(on) != 1 {
			t.Fatalf("%s: %d steps to thaw, %d to put on", c.weight, len(thaws), len(on))
		}
		// At least the published time before it is taken out, and not so much
		// earlier than a night and a rounding that it would not keep.
		before := on[0].At.Sub(thaws[0].At).Hours() - takeOutLarge/60.0
		if before < c.hours || before > c.hours+8 {
			t.Errorf("%s: thaws for %.1f h, published %g", c.weight, before, c.hours)
		}
	}
}

func TestThawingFallsOutsideQuietHours(t *testing.T) {
	// A day for each 4 lb puts the beginning for 14.5 lb at about 21:45.
	p := planOf(t, evening(kettle22+"quiet: [{from: \"20:30\", to: \"05:30\"}]\n", "{name: Turkey, cut: turkey, weight: 14.5 lb, start: frozen}"))
	sound(t, p)
	if got := stepsOf(p, StepThaw, "turkey"); len(got) != 1 || got[0].At.Format("15:04") != "20:15" {
		t.Errorf("thawing %v, want a quarter of an hour before the night", got)
	}
}

func TestColdWaterWhereTheRefrigeratorTakesTooLong(t *testing.T) {
	// 12 lb in cold water: 6 h (fsis_thaw), and it cooks in some 3 h at 350 F.
	p := planOf(t, evening(kettle22+"earliest: \"06:00\"\n", "{name: Turkey, cut: turkey, weight: 12 lb, start: frozen}"))
	sound(t, p)
	thaws := stepsOf(p, StepThaw, "turkey")
	if len(thaws) != 1 || !strings.Contains(thaws[0].Text, "cold water") {
		t.Fatalf("thawing: %v", thaws)
	}
	if h := stepsOf(p, StepPutOn, "turkey")[0].At.Sub(thaws[0].At).Hours(); h < 6 || h > 7 {
		t.Errorf("in cold water for %.1f h before the put-on, published 6", h)
	}
	p = planOf(t, evening(kettle22+"earliest: \"12:00\"\n", "{name: Turkey, cut: turkey, weight: 12 lb, start: frozen}"))
	sound(t, p)
	if _, said := findingOf(p, "thaw-no-time"); !said || len(stepsOf(p, StepThaw, "turkey")) != 0 {
		t.Errorf("no time to thaw after noon, and the plan does not say so: %v", p.Findings)
	}
}

func TestSmallPiecesGoOnFrozenOnAHotGrate(t *testing.T) {
	fresh := planOf(t, evening(kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4}"))
	frozen := planOf(t, evening(kettle22, "{name: Burgers, cut: burger, weight: 6 oz, count: 4, start: frozen}"))
	sound(t, frozen)
	a, b := fresh.Dishes[0].Batches[0].Stages[0].Minutes, frozen.Dishes[0].Batches[0].Stages[0].Minutes
	for _, m := range [][2]float64{{a.Early, b.Early}, {a.Expected, b.Expected}, {a.Late, b.Late}} {
		if math.Abs(m[1]/m[0]-1.5) > 1e-9 { // fsis_roasting_general: half as long again
			t.Errorf("%.2f min frozen, %.2f fresh", m[1], m[0])
		}
	}
	if _, said := findingOf(frozen, "frozen-longer"); !said || len(stepsOf(frozen, StepThaw, "burgers")) != 0 {
		t.Errorf("findings %v", frozen.Findings)
	}
}

func TestFrozenOnASlowFire(t *testing.T) {
	// At 250 F the rule refuses it (fsis_smoking), so thighs thaw first; a forecast,
	// which has no day before, refuses.
	p := planOf(t, evening(kettle22, "{name: Thighs, cut: chicken-thigh, weight: 6 oz, count: 4, level: 275 F, zone: indirect, start: frozen}"))
	if len(stepsOf(p, StepThaw, "thighs")) != 1 {
		t.Errorf("no step to thaw; findings %v", p.Findings)
	}
	q, err := ReadInquiry(map[string]string{"cut": "brisket", "weight": "12 lb", "grate": "250 F", "start": "frozen"})
	if err != nil {
		t.Fatal(err)
	}
	var refused *InputError
	if _, err := Forecast(context.Background(), q); !errors.As(err, &refused) || refused.Faults[0].Path != "start" {
		t.Errorf("a frozen brisket at 250 F: %v", err)
	}
	fresh := ask(t, "cut", "turkey", "weight", "12 lb", "grate", "350 F")
	frozen := ask(t, "cut", "turkey", "weight", "12 lb", "grate", "350 F", "start", "frozen")
	if got := frozen.milestone(MilestoneTakeOff).ExpectedMinutes / fresh.milestone(MilestoneTakeOff).ExpectedMinutes; math.Abs(got-1.5) > 1e-9 {
		t.Errorf("a frozen turkey takes %.3f times as long, published 1.5", got)
	}
}

func TestDryBrineTheEveningBefore(t *testing.T) {
	p := planOf(t, evening(kettle22+sleep, "{name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb, prep: [brined]}"))
	sound(t, p)
	steps := stepsOf(p, StepTakeOut, "chicken")
	if len(steps) != 2 || steps[0].At.Format("Mon 15:04") != "Fri 20:00" || !strings.HasPrefix(steps[0].Text, "Salt Chicken") {
		t.Errorf("steps %v", steps)
	}
	plain := planOf(t, evening(kettle22+sleep, "{name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb}"))
	if plain.Dishes[0].MinimumC != p.Dishes[0].MinimumC {
		t.Errorf("a brine changes the minimum from %g to %g", plain.Dishes[0].MinimumC, p.Dishes[0].MinimumC)
	}
}

// A fire that is lit as quiet hours end, on a day that begins within them, is laid when
// it is lit: neither in them nor before the day begins.
func TestNothingIsLaidInQuietHours(t *testing.T) {
	for _, serve := range []string{"09:36", "09:37", "09:38", "09:39"} {
		p := planOf(t, `format: 1
serve: {date: 2027-07-03, time: "`+serve+`", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
quiet: [{from: "22:00", to: "07:00"}]
earliest: "06:00"
dishes:
  - {name: Chicken, cut: chicken, weight: 4.5 lb}
`)
		if light := stepsOf(p, StepLight, ""); len(light) == 0 || light[0].At.Format("15:04") > "07:05" || light[0].At.Format("15:04") < "07:00" {
			t.Fatalf("not lit as quiet hours end: the day tests nothing: %v", light)
		}
		sound(t, p)
	}
}

// Nobody lights a fire in the evening that burns all night for what goes on after it:
// the ribs, 6 h at the most, do not last a night of 9 h, and without them nobody is up
// to light it in time.
func TestNoFireBurnsAllNightForNothing(t *testing.T) {
	day := evening(kettle22+"quiet: [{from: \"22:00\", to: \"07:00\"}]\n", "{name: Ribs, cut: spare-ribs, weight: 3 lb, count: 2}")
	p := planOf(t, strings.Replace(day, "18:00", "12:00", 1))
	if p.Feasible {
		t.Fatalf("lit at %v for ribs at noon", p.LightAt)
	}
	if len(p.Remedies) == 0 {
		t.Error("no remedy, and half an hour less sleep is one")
	}
	for _, rem := range p.Remedies {
		if rem.LightAt == nil || !rem.LightAt.After(p.ServeAt.Add(-7*time.Hour)) && !strings.Contains(rem.Text, "day before") {
			t.Errorf("%q lights at %v", rem.Text, rem.LightAt)
		}
	}
}
