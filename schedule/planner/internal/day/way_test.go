package day

import (
	"math"
	"testing"

	"example.com/cookday/schedule/planner/internal/spread"
)

func TestPaceAndItsInverse(t *testing.T) {
	w := Way{Spread: spread.Spread{Median: -0.1, S: 0.2}, ModelDone: 600}
	w.First = spread.Paces(1, func(z float64) float64 { return w.ModelDone * w.Spread.Factor(z) })
	for _, z := range []float64{-2, -1, 0, 0.3, 1.7} {
		minutes := 600 * math.Exp(-0.1+0.2*z)
		if got := w.First.At(z); math.Abs(got-minutes) > 1e-6 {
			t.Errorf("at(%v) = %v, want %v", z, got, minutes)
		}
		if got := w.QuantileOf(minutes); math.Abs(got-z) > 1e-9 {
			t.Errorf("quantileOf(%v) = %v, want %v", minutes, got, z)
		}
	}
}
