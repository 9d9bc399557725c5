package spread

import (
	"math"
	"testing"
)

// Expected greatest of n standard normal values, to four places: tables of
// order statistics (from memory; n = 2 is 1/sqrt(pi), n = 3 is 3/(2 sqrt(pi))).
func TestSlowestOfFollowsOrderStatistics(t *testing.T) {
	for n, want := range map[int]float64{2: 0.5642, 3: 0.8463, 5: 1.1630, 10: 1.5388, 20: 1.8675} {
		s := Spread{S: 1}.SlowestOf(n)
		if got := s.Median / pieceShare; math.Abs(got-want) > 0.03 { // Blom's approximation is within 0.03 of them
			t.Errorf("greatest of %d: got %.4f, want %.4f", n, got, want)
		}
	}
}

func TestNormalQuantileInvertsCDF(t *testing.T) {
	for _, p := range []float64{0.01, 0.1, 0.5, 0.9, 0.99} {
		if got := NormalCDF(NormalQuantile(p)); math.Abs(got-p) > 1e-12 {
			t.Errorf("CDF(quantile(%v)) = %v", p, got)
		}
	}
	if math.Abs(NormalQuantile(0.9)-ZTenth) > 1e-12 {
		t.Errorf("ZTenth is %v, the quantile of 0.9 is %v", ZTenth, NormalQuantile(0.9))
	}
}

// Without a shared error the dishes are independent, so the chance of all is the
// product; with nothing but a shared error it is the chance of the tightest one.
func TestChanceOfAllAtItsLimits(t *testing.T) {
	apart := []Readiness{{Z: 1, Spread: Spread{S: 0.2}}, {Z: 1.5, Spread: Spread{S: 0.1}}, {Z: 0.5, Spread: Spread{S: 0.3}}}
	want := 1.0
	for _, r := range apart {
		want *= r.Chance()
	}
	if got := ChanceOfAll(apart); math.Abs(got-want) > 1e-6 { // the integral ends at 5 standard deviations
		t.Errorf("independent: got %v, want %v", got, want)
	}
	one := []Readiness{{Z: 1.2, Spread: Spread{S: 0.2, Grate: 0.15}}}
	if got := ChanceOfAll(one); math.Abs(got-NormalCDF(1.2)) > 0.002 { // own() keeps the total spread S
		t.Errorf("one dish: got %v, want %v", got, NormalCDF(1.2))
	}
	joint := []Readiness{{Z: 1, Spread: Spread{S: 0.2, Grate: 0.19}}, {Z: 1, Spread: Spread{S: 0.2, Grate: 0.19}}}
	if got := ChanceOfAll(joint); got <= NormalCDF(1)*NormalCDF(1) || got >= NormalCDF(1) {
		t.Errorf("a shared error must bring the chance of both between the product and the one: %v", got)
	}
}
