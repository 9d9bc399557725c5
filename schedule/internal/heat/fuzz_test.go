package heat

import (
	"math"
	"testing"
)

// mostSteps is what any single run may take, whatever it is given.
const mostSteps = patientSteps + MaxRunS/longStepS + 100

// mustRefuse fails unless a start panics, as it does with a body that cannot be.
func mustRefuse(t *testing.T, start func()) {
	t.Helper()
	defer func() {
		if recover() == nil {
			t.Error("a body that does not pass its Check is cooked")
		}
	}()
	start()
}

// A body that does not pass its Check is refused. Whatever other body, and whatever surroundings: no panic, finite, bounded steps, and no
// temperature outside those of body and surroundings by more than the 3 K that
// a two-step formula may overshoot after a sudden change.
func FuzzCook(f *testing.F) {
	f.Add(0.085, 0.28, 0.42, 4.4, 121.0, 116.0, 7.2, 4000.0, 95.0, 0.0)
	f.Add(0.002, 0.5, 1.5, -25.0, 300.0, 300.0, 200.0, 0.0, 95.0, 4000.0) // 2 mm thin, frozen, high up
	f.Add(0.4, 0.4, 0.6, -30.0, 110.0, 110.0, 8.6, 50000.0, 94.0, 0.0)    // 100 kg
	f.Add(0.002, 0.002, 0.002, 60.0, -40.0, 600.0, 400.0, 50000.0, 99.0, 6000.0)
	f.Add(math.NaN(), math.Inf(1), -1.0, math.NaN(), math.Inf(1), math.NaN(), -5.0, math.NaN(), math.NaN(), math.Inf(-1))
	f.Fuzz(func(t *testing.T, thick, wide, long, startC, airC, wallC, convection, vapour, target, altitude float64) {
		b := Body{ThicknessM: thick, WidthM: wide, LengthM: long, RadiusScale: 1, Water: 0.7, Protein: 0.2, Fat: 0.09, Ash: 0.01,
			WetFactor: 1, SupplyFactor: 1, StartC: startC}
		in := Surroundings{AirC: airC, WallC: wallC, ConvectionWM2K: convection, Emissivity: 0.85, VapourPa: vapour, Cover: 1}.AtAltitude(altitude)
		var s Sim
		if b.Check() != nil {
			mustRefuse(t, func() { s.Start(b, in) })
			return
		}
		s.Start(b, in)
		low, high := s.face.limits()
		low, high = math.Min(low, s.CoreC()), math.Max(high, s.CoreC())
		look := func(what string) {
			t.Helper()
			for _, c := range []float64{s.CoreC(), s.OuterC(), s.MeanC(), s.SurfaceC()} {
				if !(c >= low-3 && c <= high+3) {
					t.Fatalf("%s: %g degC, outside %g to %g", what, c, low, high)
				}
			}
			if w := s.SurfaceWaterKgM2(); !(w >= 0 && w < 1e3) {
				t.Fatalf("%s: %g kg/m2 of water", what, w)
			}
			if s.steps > mostSteps {
				t.Fatalf("%s: %d steps", what, s.steps)
			}
		}
		s.RunTo(target, MaxRunS)
		look("bare")
		s.Change(in.InFoil())
		s.RunFor(7200)
		look("wrapped")
		boxed := Boxed(21, BoxWM2K)
		low, high = math.Min(low, 21), math.Max(high, 21)
		s.CarryOver(Counter(21))
		s.Change(boxed)
		s.RunUntilOuterBelow(60, MaxRunS)
		look("boxed")
	})
}

func FuzzSlab(f *testing.F) {
	f.Add(0.019, 0.11, 0.11, 4.4, 71.0, 60.0)
	f.Add(0.002, 0.1, 0.1, -25.0, 99.0, 1.0)
	f.Add(0.6, 0.6, 0.6, 4.4, 300.0, 1e-9)
	f.Fuzz(func(t *testing.T, thick, wide, long, startC, target, flip float64) {
		var s Slab
		b := Body{ThicknessM: thick, WidthM: wide, LengthM: long, RadiusScale: 1, Water: 0.7, Protein: 0.2, Fat: 0.1,
			WetFactor: 1, SupplyFactor: 1, StartC: startC}
		if b.Check() != nil {
			mustRefuse(t, func() { s.Start(b, DirectFire(true)) })
			return
		}
		s.Start(b, DirectFire(true))
		s.RunTo(target, flip, MaxDirectS)
		for _, c := range []float64{s.CoreC(), s.BelowC(), s.AboveC()} {
			if !(c >= -33 && c <= fireC+3) {
				t.Fatalf("%g degC", c)
			}
		}
		if s.ElapsedS() > MaxDirectS+1 {
			t.Fatalf("ran for %g s", s.ElapsedS())
		}
	})
}
