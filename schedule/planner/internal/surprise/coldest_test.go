package surprise_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"example.com/cookday/schedule/planner/internal/surprise"
	"example.com/cookday/schedule/unit"
)

// Two readings of one piece that contradict each other: of two places the colder counts, be it
// the later one or not, and the piece is not done by the warmer. A leg of lamb leapt to its
// target beside the bone and was to come off, while the colder reading of two minutes later was
// ignored as one that fell.
func TestOfTwoPlacesTheColderCounts(t *testing.T) {
	scene, stand := after(t, "{cut: lamb-leg-bone-in, weight: 6.5 lb, target: 140 F, level: 325 F}", 125)
	for name, c := range map[string]struct {
		readings []float64 // minute, °F
		counts   []bool
	}{
		"it leaps beside the bone":    {[]float64{70, 97, 110, 152, 112, 131}, []bool{true, false, true}},
		"and goes on from the colder": {[]float64{70, 97, 110, 152, 112, 131, 122, 141}, []bool{true, false, true, true}},
		"read often before it":        {[]float64{70, 97, 90, 113, 100, 121, 110, 152, 112, 131}, []bool{true, true, true, false, true}},
		"much colder":                 {[]float64{70, 97, 110, 152, 112, 122}, []bool{true, false, true}},
	} {
		var readings []surprise.Reading
		for i := 0; i < len(c.readings); i += 2 {
			readings = append(readings, surprise.Reading{Minute: c.readings[i], CoreC: unit.FToC(c.readings[i+1])})
		}
		doubts, _, err := surprise.Judge(context.Background(), scene, stand, readings)
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range c.counts {
			if got := doubts[i] == ""; got != want {
				t.Errorf("%s: the reading of %.0f °F counts: %t, want %t (doubts %q)", name, c.readings[2*i+1], got, want, doubts)
			}
		}
	}
}

// A reading that leaps to the target is asked about until another shows the same: a leg of lamb at 97
// °F and, forty minutes on, at 152 was to come off at once, and a brisket at 204 an hour or two after it
// stood at 158. One that is colder goes on as it is; two that agree are believed; one that comes
// to the target in its time is believed at once.
func TestALeapToTheTargetWantsASecondReading(t *testing.T) {
	lamb, stand := after(t, "{cut: lamb-leg-bone-in, weight: 6.5 lb, target: 140 F, level: 325 F}", 190)
	for name, c := range map[string]struct {
		readings []float64 // minute, °F
		counts   []bool
		leaps    bool
	}{
		"it leaps":              {[]float64{70, 97, 110, 152}, []bool{true, false}, true},
		"another is colder":     {[]float64{70, 97, 110, 152, 112, 128}, []bool{true, false, true}, true},
		"another shows it":      {[]float64{70, 97, 110, 152, 112, 150}, []bool{true, true, true}, false},
		"it comes in time":      {[]float64{70, 97, 100, 121, 130, 142}, []bool{true, true, true}, false},
		"pushed all through":    {[]float64{70, 97, -110, 152}, []bool{true, true}, false},
		"hot, and far too soon": {[]float64{20, 146}, []bool{false}, true},
	} {
		var readings []surprise.Reading
		for i := 0; i < len(c.readings); i += 2 {
			m := c.readings[i]
			readings = append(readings, surprise.Reading{Minute: math.Abs(m), CoreC: unit.FToC(c.readings[i+1]), Pushed: m < 0})
		}
		doubts, verdicts, err := surprise.Judge(context.Background(), lamb, stand, readings)
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range c.counts {
			if got := doubts[i] == ""; got != want {
				t.Errorf("%s: the reading of %.0f °F counts: %t, want %t (doubts %q)", name, c.readings[2*i+1], got, want, doubts)
			}
		}
		if leaps := slices.ContainsFunc(verdicts, func(v surprise.Verdict) bool { return v.Leap }); leaps != c.leaps && name != "another is colder" && name != "hot, and far too soon" {
			t.Errorf("%s: asked about: %t, want %t: %+v", name, leaps, c.leaps, verdicts)
		}
	}
}

// Ice is colder than anything went on: it is said to be frozen, and is no slow cook and no probe in
// another place.
func TestIceInTheMiddleIsFrozen(t *testing.T) {
	scene, stand := after(t, "{cut: turkey, weight: 12 lb, level: 350 F}", 100, surprise.Grate{Minute: 90, C: unit.FToC(341), LevelC: unit.FToC(350)})
	_, verdicts, err := surprise.Judge(context.Background(), scene, stand, []surprise.Reading{{Minute: 40, CoreC: unit.FToC(28)}, {Minute: 90, CoreC: unit.FToC(31)}})
	if err != nil {
		t.Fatal(err)
	}
	if len(verdicts) != 2 {
		t.Fatalf("%d of two readings of ice are asked about", len(verdicts))
	}
	for _, v := range verdicts {
		if v.Main() != surprise.Frozen {
			t.Errorf("at %.0f min: %s: %v", v.Minute, v.Main(), v.Causes)
		}
	}
}
