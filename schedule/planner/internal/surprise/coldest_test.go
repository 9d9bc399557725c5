package surprise_test

import (
	"context"
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
