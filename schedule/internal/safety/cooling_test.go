package safety

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// evenly makes a history of straight falls from pairs of minute and deg F.
func evenly(pairs ...float64) []Sample {
	var out []Sample
	for i := 0; i < len(pairs); i += 2 {
		out = append(out, Sample{pairs[i], celsius(pairs[i+1])})
	}
	return out
}

func TestJudgeCooling(t *testing.T) {
	cases := []struct {
		name         string
		samples      []Sample
		kind         CoolingKind
		start        float64
		known        bool
		first, whole float64
	}{
		{"both limits met exactly", evenly(0, 145, 10, 135, 130, 70, 370, 41, 380, 40), CoolingWithin, 10, true, 120, 360},
		{"first stage slow", evenly(0, 135.1, 150, 70, 300, 41, 310, 40), CoolingOutside, 150 * 0.1 / 65.1, true, 150 - 150*0.1/65.1, 300 - 150*0.1/65.1},
		{"quick first stage lends to the second", evenly(0, 140, 5, 135, 35, 70, 360, 41, 370, 39), CoolingWithin, 5, true, 30, 355},
		{"second stage slow", evenly(0, 140, 5, 135, 65, 70, 366, 41, 370, 39), CoolingOutside, 5, true, 60, 361},
		{"still on its way", evenly(0, 140, 5, 135, 65, 90), CoolingUnfinished, 5, true, 60, 60},
		{"still warm after two hours", evenly(0, 140, 5, 135, 126, 90), CoolingOutside, 5, true, 121, 121},
		{"still hot", evenly(0, 203, 100, 160), CoolingNotStarted, 0, false, 0, 0},
		{"nothing known", nil, CoolingNotStarted, 0, false, 0, 0},
		{"record starts late", evenly(0, 120, 60, 70, 120, 41), CoolingWithin, 0, false, 60, 120},
		{"back above 135 °F starts again", evenly(0, 200, 60, 130, 90, 180, 180, 135, 240, 70, 300, 41, 310, 38), CoolingWithin, 180, true, 60, 120},
		{"warmed up again in the middle stage", evenly(0, 135, 1, 134, 60, 69, 90, 75, 130, 69, 200, 40), CoolingOutside, 0, true, 90 + 40*5.0/6, 130 + 70*28.0/29},
	}
	for _, x := range cases {
		r, err := JudgeCooling(x.samples)
		if err != nil {
			t.Fatal(err)
		}
		close := func(a, b float64) bool { return math.Abs(a-b) < 1e-6 }
		if r.Kind != x.kind || r.StartKnown != x.known || !close(r.StartMinute, x.start) ||
			!close(r.FirstMinutes, x.first) || !close(r.WholeMinutes, x.whole) || (r.Finding != nil) != (x.kind == CoolingOutside) {
			t.Errorf("%s: %+v, want %s from %v: %v and %v", x.name, r, x.kind, x.start, x.first, x.whole)
		}
	}
}

// Newton cooling toward a refrigerator has a closed form to compare with: minutes
// from 135 to level = tau ln((135-air)/(level-air)). Straight lines between samples a
// minute apart lie above the curve by less than a hundredth of a minute's fall.
func TestCoolingOfAKnownCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tau := rapid.Float64Range(20, 200).Draw(t, "tau")
		airF := rapid.Float64Range(33, 39).Draw(t, "air")
		var samples []Sample
		for m := 0.0; m <= 900; m++ {
			samples = append(samples, Sample{m, celsius(airF + (150-airF)*math.Exp(-m/tau))})
		}
		r, err := JudgeCooling(samples)
		if err != nil {
			t.Fatal(err)
		}
		first := tau * math.Log((135-airF)/(70-airF))
		whole := tau * math.Log((135-airF)/(41-airF))
		if whole > 740 {
			return // not cold at the end of the record
		}
		if math.Abs(r.FirstMinutes-first) > 0.02 || math.Abs(r.WholeMinutes-whole) > 0.02 {
			t.Fatalf("%+v, want %v and %v", r, first, whole)
		}
		if (r.Kind == CoolingOutside) != (first > 120.02 || whole > 360.02) && math.Abs(first-120) > 0.1 && math.Abs(whole-360) > 0.1 {
			t.Fatalf("%s with %v and %v", r.Kind, first, whole)
		}
	})
}

func ExampleJudgeCooling() {
	r, _ := JudgeCooling([]Sample{{0, 95}, {60, 57.3}, {240, 30}}) // a whole shoulder on a counter
	fmt.Println(r.Kind)
	fmt.Println(r.Finding.Sentence)
	// Output:
	// outside
	// Cooling to 70 °F (21 °C) takes at least 2 hr 59 min; the published limit is 2 hr. This is outside the published limits: do not keep it.
}
