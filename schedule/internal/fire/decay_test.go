package fire

import (
	"math"
	"testing"
)

// Beside the library's; it falls all the way, and ends at nothing.
func TestDecayIsTheExponential(t *testing.T) {
	last, worst := 1.0, 0.0
	for x := 0.0; x < 40; x += 0.0007 {
		got, want := decay(x), math.Exp(-x)
		worst = max(worst, math.Abs(got/want-1))
		if got > last {
			t.Fatalf("at %v: %v after %v", x, got, last)
		}
		last = got
	}
	if worst > 1e-9 || decay(0) != 1 || decay(math.Inf(1)) != 0 || decay(1e9) != 0 || decay(math.NaN()) != 0 {
		t.Errorf("off by %.1e; at 0 %v, far out %v", worst, decay(0), decay(1e9))
	}
}

func BenchmarkStep(b *testing.B) {
	g := Grill{Kind: Kettle, DiameterM: 22.5 * inchM}
	h, t, s := g.Hearth(Banked, nil), g.Usual(), g.Setting(Weather{AirC: 21}, 0.25, 0.25, 0)
	for b.Loop() {
		c := Coals{Lit: 12, Unlit: 90}
		for range 100 {
			c = h.Step(&t, c, &s, 3)
		}
	}
}
