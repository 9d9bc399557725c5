package planner_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Long tough cooks that only a cooler keeps: they go on when it is likeliest that they are
// both in time and still good. Asked for less, they would go on later, and be no surer.
func TestWhatOnlyACoolerKeepsGoesOnWhenThatIsBest(t *testing.T) {
	for _, c := range []struct {
		dish  string
		least float64 // where it was 0.62, 0.62, 0.90 and 0.33 before
	}{
		{"{cut: pork-butt, weight: 8 lb}", 0.80},
		{"{cut: brisket, weight: 12 lb}", 0.80},
		{"{cut: pork-butt, weight: 8 lb, count: 2}", 0.89},
		{"{cut: chuck-roast, weight: 4 lb}", 0.75},
	} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, c.dish))
		t.Logf("%s: %.3f, on at %s", c.dish, p.Chance.All, plantest.Steps(p, schedule.StepPutOn)[0].At.Format("15:04"))
		if p.Chance.All < c.least {
			t.Errorf("%s: %.2f", c.dish, p.Chance.All)
		}
		for _, asked := range []float64{0.6, 0.65, 0.7, 0.75, 0.8, 0.85} {
			q := plantest.Plan(t, plantest.Evening(plantest.Kettle22+fmt.Sprintf("confidence: %.2f\n", asked), c.dish))
			const worth, rounding = 0.01, 0.005 // a later put-on adds so much; whole minutes
			if q.Chance.All > p.Chance.All+worth+rounding {
				t.Errorf("%s: %.3f, and with %.2f asked %.3f", c.dish, p.Chance.All, asked, q.Chance.All)
			}
		}
		f, short := plantest.Finding(p, schedule.CodeHoldShort)
		if short != (p.Chance.All < p.Chance.Asked-0.01) {
			t.Errorf("%s: %.3f, and hold-short is said: %t", c.dish, p.Chance.All, short)
		}
		for _, want := range []string{"likeliest", "On a fast day it is done at", "on a slow day it is"} {
			if short && !strings.Contains(f.Text, want) {
				t.Errorf("%s: %q is not in %s", c.dish, want, f.Text)
			}
		}
		if short && !slices.ContainsFunc(p.Remedies, func(r schedule.Remedy) bool { return r.Code == "oven" && r.Write != "" }) {
			t.Errorf("%s: a warm oven helps, and is no remedy: %+v", c.dish, p.Remedies)
		}
	}
}

// What an oven keeps goes on in time for the asked chance, as it always did.
func TestWhatAnOvenKeepsGoesOnAsAsked(t *testing.T) {
	for _, dish := range []string{"{cut: pork-butt, weight: 8 lb}", "{cut: brisket, weight: 12 lb}", "{cut: chuck-roast, weight: 4 lb}"} {
		p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"oven: {hold: 170 F}\n", dish))
		if p.Chance.All < 0.895 || p.Chance.All > 0.91 {
			t.Errorf("%s: %.3f where 0.9 was asked", dish, p.Chance.All)
		}
		if f, short := plantest.Finding(p, schedule.CodeHoldShort); short {
			t.Errorf("%s: %s", dish, f.Text)
		}
	}
}
