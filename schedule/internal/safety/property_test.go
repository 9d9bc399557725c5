package safety

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func history(t *rapid.T) []Sample {
	n := rapid.IntRange(2, 12).Draw(t, "n")
	out := make([]Sample, n)
	minute := 0.0
	for i := range out {
		minute += rapid.Float64Range(0, 40).Draw(t, "step")
		out[i] = Sample{minute, rapid.Float64Range(0, 68).Draw(t, "c")}
	}
	return out
}

func TestHotterIsNeverLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := rapid.SampledFrom(LethalityTables()).Draw(t, "table")
		h := history(t)
		warmer := make([]Sample, len(h))
		by := rapid.Float64Range(0, 5).Draw(t, "by")
		for i, s := range h {
			warmer[i] = Sample{s.Minute, s.C + by}
		}
		a, _ := table.Integrate(h)
		b, _ := table.Integrate(warmer)
		if b.Fraction < a.Fraction*(1-1e-9) && !b.Reached {
			t.Fatalf("%v K warmer: %v, before %v", by, b.Fraction, a.Fraction)
		}
	})
}

func TestSplittingAHistoryChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := rapid.SampledFrom(LethalityTables()).Draw(t, "table")
		h := history(t)
		k := rapid.IntRange(1, len(h)-1).Draw(t, "k")
		share := rapid.Float64Range(0.1, 0.9).Draw(t, "share")
		mid := Sample{h[k-1].Minute + share*(h[k].Minute-h[k-1].Minute), h[k-1].C + share*(h[k].C-h[k-1].C)}
		split := append(append(append([]Sample{}, h[:k]...), mid), h[k:]...)
		a, _ := table.Integrate(h)
		b, _ := table.Integrate(split)
		if math.Abs(a.Fraction-b.Fraction) > 1e-6*math.Max(1, a.Fraction) || a.Reached != b.Reached {
			t.Fatalf("whole %v, split %v", a, b)
		}
	})
}
