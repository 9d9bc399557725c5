package schedule

import (
	"math"
	"testing"
)

// Expected greatest of n standard normal values, to four places: tables of
// order statistics (from memory; n = 2 is 1/sqrt(pi), n = 3 is 3/(2 sqrt(pi))).
func TestSlowestOfFollowsOrderStatistics(t *testing.T) {
	for n, want := range map[int]float64{2: 0.5642, 3: 0.8463, 5: 1.1630, 10: 1.5388, 20: 1.8675} {
		s := spread{S: 1}.slowestOf(n)
		if got := s.Median / pieceShare; math.Abs(got-want) > 0.03 { // Blom's approximation is within 0.03 of them
			t.Errorf("greatest of %d: got %.4f, want %.4f", n, got, want)
		}
	}
}

func TestNormalQuantileInvertsCDF(t *testing.T) {
	for _, p := range []float64{0.01, 0.1, 0.5, 0.9, 0.99} {
		if got := normalCDF(normalQuantile(p)); math.Abs(got-p) > 1e-12 {
			t.Errorf("CDF(quantile(%v)) = %v", p, got)
		}
	}
	if math.Abs(normalQuantile(0.9)-zTenth) > 1e-12 {
		t.Errorf("zTenth is %v, the quantile of 0.9 is %v", zTenth, normalQuantile(0.9))
	}
}

// Without a shared error the dishes are independent, so the chance of all is the
// product; with nothing but a shared error it is the chance of the tightest one.
func TestChanceOfAllAtItsLimits(t *testing.T) {
	apart := []readiness{{Z: 1, spread: spread{S: 0.2}}, {Z: 1.5, spread: spread{S: 0.1}}, {Z: 0.5, spread: spread{S: 0.3}}}
	want := 1.0
	for _, r := range apart {
		want *= r.chance()
	}
	if got := chanceOfAll(apart); math.Abs(got-want) > 1e-6 { // the integral ends at 5 standard deviations
		t.Errorf("independent: got %v, want %v", got, want)
	}
	one := []readiness{{Z: 1.2, spread: spread{S: 0.2, Grate: 0.15}}}
	if got := chanceOfAll(one); math.Abs(got-normalCDF(1.2)) > 0.002 { // own() keeps the total spread S
		t.Errorf("one dish: got %v, want %v", got, normalCDF(1.2))
	}
	joint := []readiness{{Z: 1, spread: spread{S: 0.2, Grate: 0.19}}, {Z: 1, spread: spread{S: 0.2, Grate: 0.19}}}
	if got := chanceOfAll(joint); got <= normalCDF(1)*normalCDF(1) || got >= normalCDF(1) {
		t.Errorf("a shared error must bring the chance of both between the product and the one: %v", got)
	}
}

func TestPaceAndItsInverse(t *testing.T) {
	w := way{spread: spread{Median: -0.1, S: 0.2}, modelDone: 600}
	w.first = paces(1, func(z float64) float64 { return w.modelDone * w.spread.factor(z) })
	for _, z := range []float64{-2, -1, 0, 0.3, 1.7} {
		minutes := 600 * math.Exp(-0.1+0.2*z)
		if got := w.first.at(z); math.Abs(got-minutes) > 1e-6 {
			t.Errorf("at(%v) = %v, want %v", z, got, minutes)
		}
		if got := w.quantileOf(minutes); math.Abs(got-z) > 1e-9 {
			t.Errorf("quantileOf(%v) = %v, want %v", minutes, got, z)
		}
	}
}
