package assemble_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

func fahrenheit(c float64) float64 { return unit.Temperature(c).Fahrenheit() }

// A brisket is over 160 °F for hours: the whole of the beef table (fsis_app_a_beef,
// 7 log) long before it is tender. The rule still stands beside it.
func TestLethalityIsInformation(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+plantest.Oven170, "{name: Brisket, cut: brisket, weight: 12 lb}"))
	l := p.Dishes[0].Lethality
	if l == nil || !l.Reached || l.TableLog != 7 || l.Source != "fsis_app_a_beef" {
		t.Fatalf("%+v", l)
	}
	off := p.Dishes[0].Batches[0].Milestones
	for _, m := range off {
		if m.Kind == schedule.MilestoneTakeOff && !l.At.Before(m.Window.Expected) {
			t.Errorf("reached at %v, taken off at %v", l.At, m.Window.Expected)
		}
	}
	if !strings.Contains(l.Text, "information only") || strings.Contains(l.Text, "safe") || !strings.Contains(l.Text, "145 °F") {
		t.Error(l.Text)
	}
	for _, food := range []string{"{cut: burger, weight: 6 oz}", "{cut: salmon-side, weight: 3 lb}"} { // nothing is published
		if l := plantest.Plan(t, plantest.Evening(plantest.Kettle22, food)).Dishes[0].Lethality; l != nil {
			t.Errorf("%s: %+v", food, l)
		}
	}
}

// target: {final: 130 °F} pulls earlier by the modelled carry-over: the peak is the target.
func TestFinalTargetPullsEarlier(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Roast, cut: rib-roast-boneless, weight: 5 lb, target: {final: 130 °F}}"))
	d := p.Dishes[0]
	if rise := 130 - fahrenheit(d.TargetC); rise < 1 || rise > 25 { // culinary_text: 5-15 F, 25 for very large roasts
		t.Errorf("pulled %.1f F below the peak", rise)
	}
	for _, m := range d.Batches[0].Milestones {
		if m.Kind == schedule.MilestonePeak && math.Abs(fahrenheit(m.CoreC)-130) > 1.5 { // counter and tent differ by so much
			t.Errorf("peak at %.1f F", fahrenheit(m.CoreC))
		}
	}
	for _, dish := range []string{
		"{cut: chicken, weight: 4 lb, target: {final: 170 °F}}", "{cut: burger, weight: 6 oz, target: {final: 165 °F}}",
		"{cut: pork-loin, weight: 4 lb, prep: [injected], target: {final: 160 °F}}",
	} {
		r, err := schedule.Read([]byte(plantest.Evening(plantest.Kettle22, dish)))
		if err != nil {
			t.Fatal(err)
		}
		var refused *schedule.InputError
		if _, err := planner.Make(context.Background(), r); !errors.As(err, &refused) || refused.Faults[0].Path != "dishes[0].target" {
			t.Errorf("%s: %v", dish, err)
		}
	}
}

// fda_3_401_11: injected pork at 145 °F holds it for 3 min. It stays on for them.
func TestInjectedMeatIsHeldAtItsMinimum(t *testing.T) {
	plain := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Loin, cut: pork-loin, weight: 4 lb, target: 145 °F}"))
	held := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Loin, cut: pork-loin, weight: 4 lb, target: 145 °F, prep: [injected]}"))
	a, b := plain.Dishes[0].Batches[0].Stages[0].Minutes, held.Dishes[0].Batches[0].Stages[0].Minutes
	if math.Abs(b.Expected-a.Expected-3) > 1e-9 || math.Abs(b.Early-a.Early-3) > 1e-9 {
		t.Errorf("%.1f min, %.1f without the injection", b.Expected, a.Expected)
	}
	if s := plantest.StepsOf(held, schedule.StepTakeOff, "loin"); len(s) != 1 || !strings.Contains(s[0].Text, "for 3 min") {
		t.Errorf("%v", s)
	}
}
