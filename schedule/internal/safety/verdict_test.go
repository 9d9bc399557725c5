package safety

import (
	"fmt"
	"math"
	"testing"
)

func TestJudgeTarget(t *testing.T) {
	cases := []struct {
		name    string
		c       Category
		p       Prep
		targetF float64
		frail   bool
		kind    VerdictKind
		code    string
	}{
		{"steak at 130", Beef, Prep{}, 130, false, BelowMinimum, "target-below-minimum"},
		{"steak at 130, frail", Beef, Prep{}, 130, true, Refused, "target-refused-frail"},
		{"roast at the chart", Beef, Prep{}, 145, true, Meets, "target-meets-minimum"},
		{"pork chop at 140", Pork, Prep{}, 140, false, BelowMinimum, "target-below-minimum"},
		{"rolled lamb at 135", Lamb, Prep{Rolled: true}, 135, false, Refused, "target-refused"},
		{"rolled lamb at 145", Lamb, Prep{Rolled: true}, 145, false, Meets, "target-meets-minimum"},
		{"salmon at 125", Fish, Prep{}, 125, false, BelowMinimum, "target-below-minimum"},
		{"salmon at 125, frail", Fish, Prep{}, 125, true, Refused, "target-refused-frail"},
		{"burger at 155", Ground, Prep{}, 155, false, Refused, "target-refused"},
		{"burger at 160", Ground, Prep{}, 160, false, Meets, "target-meets-minimum"},
		{"turkey burger at 160", GroundPoultry, Prep{}, 160, false, Refused, "target-refused"},
		{"sausage at 155", Sausage, Prep{}, 155, false, Refused, "target-refused"},
		{"chicken at 160", Poultry, Prep{}, 160, false, Refused, "target-refused"},
		{"chicken at 165", Poultry, Prep{}, 165, true, Meets, "target-meets-minimum"},
		{"stuffed loin at 145", Pork, Prep{Stuffed: true}, 145, false, Refused, "target-refused"},
		{"injected loin at 140", Pork, Prep{Injected: true}, 140, false, Refused, "target-refused"},
		{"injected loin at 145 is held", Pork, Prep{Injected: true}, 145, false, Meets, "target-held"},
		{"tenderised steak at 155", Beef, Prep{Tenderised: true}, 155, false, Meets, "target-meets-minimum"},
		{"tenderised steak at 135", Beef, Prep{Tenderised: true}, 135, false, Refused, "target-refused"},
		{"leftovers at 140", Leftovers, Prep{}, 140, false, Refused, "target-refused"},
		{"corn", Vegetable, Prep{}, 120, true, Meets, "no-minimum"},
		{"unknown food at 160", "haggis", Prep{}, 160, false, Refused, "target-refused"},
		{"not a number", Beef, Prep{}, math.NaN(), false, Refused, "target-not-a-temperature"},
	}
	for _, x := range cases {
		v := JudgeTarget(x.c, x.p, celsius(x.targetF), x.frail)
		if v.Kind != x.kind || v.Code != x.code {
			t.Errorf("%s: %s %s (%s), want %s %s", x.name, v.Kind, v.Code, v.Sentence, x.kind, x.code)
		}
	}
}

// The charts print 62.8 degC for 145 °F: who types that means it.
func TestATargetAsPrintedIsNotTurnedAway(t *testing.T) {
	for _, r := range readRows(t, "safe_minimum.csv") {
		for _, x := range concerns[[3]string{r["source"], r["food"], r["category"]}] {
			if v := JudgeTarget(x.c, x.p, r.number(t, "internal_c"), true); v.Kind != Meets {
				t.Errorf("%v at %s degC: %s", x, r["internal_c"], v.Sentence)
			}
			if v := JudgeTarget(x.c, x.p, r.number(t, "internal_c")-0.2, true); v.Kind != Refused {
				t.Errorf("%v just below %s degC: %s", x, r["internal_c"], v.Sentence)
			}
		}
	}
}

func ExampleJudgeTarget() {
	v := JudgeTarget(Poultry, Prep{}, 68, false)
	fmt.Println(v.Kind)
	fmt.Println(v.Sentence)
	fmt.Println(Document(v.Minimum.Source))
	// Output:
	// refused
	// A target of 154 °F (68 °C) is below the USDA minimum of 165 °F (74 °C). Poultry can't go lower.
	// FoodSafety.gov, Safe Minimum Cooking Temperatures Chart, 2019-04-12
}
