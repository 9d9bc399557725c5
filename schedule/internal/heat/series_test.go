package heat

import (
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// shapes are the three bodies whose conduction has a closed solution: left side
// of the equation whose roots zeta make it equal to Biot, and the coefficient of
// each term (textbook results).
var shapes = []struct {
	name        string
	dims        float64
	biot        func(zeta float64) float64
	coefficient func(zeta float64) float64
}{
	{"wall", 1,
		func(z float64) float64 { return z * math.Tan(z) },
		func(z float64) float64 { return 4 * math.Sin(z) / (2*z + math.Sin(2*z)) }},
	{"cyl", 2,
		func(z float64) float64 { return z * math.J1(z) / math.J0(z) },
		func(z float64) float64 {
			return 2 / z * math.J1(z) / (math.J0(z)*math.J0(z) + math.J1(z)*math.J1(z))
		}},
	{"sphere", 3,
		func(z float64) float64 { return 1 - z/math.Tan(z) },
		func(z float64) float64 { return 4 * (math.Sin(z) - z*math.Cos(z)) / (2*z - math.Sin(2*z)) }},
}

// roots finds the first n roots: between two poles the left side rises from
// minus infinity, or from nought, to plus infinity.
func roots(left func(float64) float64, biot float64, n int) []float64 {
	const h = 1e-3
	var found []float64
	for z := h; len(found) < n; z += h {
		if left(z) > biot || left(z+h) < biot || left(z+h)-left(z) > 1e4 {
			continue
		}
		low, high := z, z+h
		for range 60 {
			mid := (low + high) / 2
			if left(mid) < biot {
				low = mid
			} else {
				high = mid
			}
		}
		found = append(found, low)
	}
	return found
}

func TestOneTermConstants(t *testing.T) {
	for _, r := range testbed.Rows(t, "testdata/conduction_table.csv") {
		if r["source"] != "one_term_table" {
			continue
		}
		for _, sh := range shapes {
			z := roots(sh.biot, r.Number(t, "biot"), 1)[0]
			// The table has four decimals.
			if want := r.Number(t, sh.name+"_zeta1_rad"); math.Abs(z-want) > 1e-4 {
				t.Errorf("%s Bi %s: zeta %.5f, table %.4f", sh.name, r["biot"], z, want)
			}
			if want := r.Number(t, sh.name+"_c1"); math.Abs(sh.coefficient(z)-want) > 1e-4 {
				t.Errorf("%s Bi %s: c %.5f, table %.4f", sh.name, r["biot"], sh.coefficient(z), want)
			}
		}
	}
}

// ideal is a body of constant properties with a radius of 40 mm at 0 degC in dry
// air of 100 degC, without radiation, evaporation or boiling.
func ideal(dims, biot float64, p Precision) *Sim {
	const radiusM, conductivity, capacity = 0.04, 0.5, 3.5e6
	var s Sim
	dry := Surroundings{AirC: 100, WallC: 100, ConvectionWM2K: biot * conductivity / radiusM}
	s.StartWith(Body{ThicknessM: 2 * radiusM, WidthM: 1, LengthM: 1, RadiusScale: 1, Water: 0.7, Protein: 0.2, Fat: 0.1, StartC: 0}, dry, p)
	s.divide(dims, radiusM, s.cells)
	s.material.conductivity, s.material.capacity = quadratic{a: conductivity}, quadratic{a: capacity}
	s.Change(dry)
	s.face.boilC, s.face.low = 1e6, 0
	return &s
}

func fourier(s *Sim) float64 { return 0.5 / 3.5e6 * s.ElapsedS() / (0.04 * 0.04) }

func TestSeriesSolutions(t *testing.T) {
	var worst float64
	for _, sh := range shapes {
		for _, biot := range []float64{0.5, 2, 10} {
			zetas := roots(sh.biot, biot, 8)
			theta := func(fo float64) (sum float64) {
				for _, z := range zetas {
					sum += sh.coefficient(z) * math.Exp(-z*z*fo)
				}
				return sum
			}
			s := ideal(sh.dims, biot, Standard)
			for left := 0.8; left > 0.19; left -= 0.1 {
				if got := s.RunTo(100*(1-left), MaxRunS); got != Reached {
					t.Fatal(got)
				}
				low, high := 0.0, 20.0
				for range 80 {
					mid := (low + high) / 2
					if theta(mid) > left {
						low = mid
					} else {
						high = mid
					}
				}
				worst = math.Max(worst, math.Abs(fourier(s)/low-1))
			}
		}
	}
	t.Logf("worst error of the time to a centre temperature %.3f %%", 100*worst)
	if worst > 0.002 {
		t.Errorf("series solutions missed by %.3f %%, want 0.2 %%", 100*worst)
	}
}

// The printed one-term constants need nothing of the code above. They hold from
// a Fourier number of 0.2; the late decay of the centre must have their rate.
func TestOneTermTableAgainstSim(t *testing.T) {
	for _, r := range testbed.Rows(t, "testdata/conduction_table.csv") {
		if r["source"] != "one_term_table" || !strings.Contains(" 0.5 1 2 4 10 ", " "+r["biot"]+" ") {
			continue
		}
		for _, sh := range shapes {
			s := ideal(sh.dims, r.Number(t, "biot"), Standard)
			zeta, c := r.Number(t, sh.name+"_zeta1_rad"), r.Number(t, sh.name+"_c1")
			s.RunTo(80, MaxRunS)
			want := math.Log(c/0.2) / (zeta * zeta)
			// 0.3 %: 0.2 % of the integration and the four decimals of the table.
			if got := fourier(s); math.Abs(got/want-1) > 0.003 {
				t.Errorf("%s Bi %s: Fourier number %.4f at theta 0.2, one-term %.4f", sh.name, r["biot"], got, want)
			}
		}
	}
}
