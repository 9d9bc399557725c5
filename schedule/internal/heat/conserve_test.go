package heat

import (
	"math"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// storedJM2 is the heat in the body over 0 degC per outer surface, from the
// integral of the capacity.
func storedJM2(s *Sim) (sum float64) {
	q := s.material.capacity
	for i := range s.cells {
		t := s.state.tempC[i]
		sum += s.volume[i] * t * (q.a + t*(q.b/2+t*q.c/3))
	}
	return sum
}

func TestHeatInIsHeatStored(t *testing.T) {
	c := readCuts(t)
	fine := Precision{Cells: 16, ToleranceK: 0.02, MaxStepS: 30}
	for _, name := range []string{"brisket", "chicken", "pork-loin", "chicken-breast", "spare-ribs"} {
		var s Sim
		s.StartWith(c.body(t, name, c[name].Number(t, "w0_lb"), 0), Oven(celsius(325)), fine)
		before := storedJM2(&s)
		s.RunTo(60, MaxRunS)
		s.Change(Oven(celsius(325)).InFoil())
		s.RunFor(1800)
		in, stored := s.state.heatJM2, storedJM2(&s)-before
		t.Logf("%s: in %.3f MJ/m2, stored %.3f, %+.2f %%", name, in/1e6, stored/1e6, 100*(in/stored-1))
		if math.Abs(in/stored-1) > 0.01 {
			t.Errorf("%s: heat in %.0f, stored %.0f J/m2, want within 1 %%", name, in, stored)
		}
	}
}

// What was on the surface at the start and was supplied since has evaporated,
// dripped or is still there. Evaporation through bark does not draw on it.
func TestWaterIsAccountedFor(t *testing.T) {
	c := readCuts(t)
	var s Sim
	in := Grate(celsius(250), CalmDay())
	s.StartWith(c.body(t, "brisket", 12, 0), in, Precision{Cells: 16, ToleranceK: 0.02, MaxStepS: 30})
	var bark float64
	for s.CoreC() < 90 {
		before := s.ElapsedS()
		s.RunFor(60)
		bark += (s.ElapsedS() - before) * dryWetness * s.wetFactor * math.Max(s.face.demand(s.SurfaceC()), 0)
	}
	st := s.state
	got := st.vapour - bark + st.dripped + st.water
	if want := initialWater + st.supplied; math.Abs(got/want-1) > 0.01 {
		t.Errorf("water accounted for %.3f kg/m2, given %.3f", got, want)
	}
}

func TestNothingChangesWithoutExchange(t *testing.T) {
	b := readCuts(t).body(t, "pork-butt", 8, 0)
	var s Sim
	s.Start(b, Surroundings{AirC: 200, WallC: 200, Cover: 1})
	s.RunFor(36 * 3600)
	for _, got := range []float64{s.CoreC(), s.MeanC(), s.OuterC(), s.SurfaceC()} {
		if math.Abs(got-b.StartC) > 1e-9 {
			t.Errorf("temperature %g degC after a day and a half without exchange, want %g", got, b.StartC)
		}
	}
	if s.EvaporatedKgPerKg() != 0 {
		t.Errorf("evaporated %g without exchange", s.EvaporatedKgPerKg())
	}
}

// Tolerance and cells of the standard precision against a converged run: 0.4 %,
// of which a plan in minutes shows nothing.
func TestStandardPrecisionIsConverged(t *testing.T) {
	c := readCuts(t)
	for _, p := range []struct {
		name string
		p    Precision
		most float64
	}{{"standard", Standard, 0.004}, {"coarse", Coarse, 0.015}} {
		var worst, sum, n float64
		for _, r := range testbed.Rows(t, "testdata/reference_rows.csv") {
			time := func(p Precision) float64 {
				in := Oven(celsius(r.Number(t, "air_F")))
				if r["surroundings"] == "covered grill" {
					in = Grate(in.AirC, CalmDay())
				}
				var s Sim
				s.StartWith(c.body(t, r["cut"], r.Number(t, "weight_lb"), 0), in, p)
				s.RunTo(celsius(r.Number(t, "target_F")), MaxRunS)
				return s.ElapsedS()
			}
			off := math.Abs(time(p.p)/time(Precision{Cells: 32, ToleranceK: 0.02, MaxStepS: 60}) - 1)
			worst, sum, n = math.Max(worst, off), sum+off, n+1
		}
		t.Logf("%s: mean error %.2f %%, worst %.2f %%", p.name, 100*sum/n, 100*worst)
		if worst > p.most {
			t.Errorf("%s: worst error %.2f %%, want %.2f %%", p.name, 100*worst, 100*p.most)
		}
	}
}

func TestNothingIsAllocated(t *testing.T) {
	body, in := readCuts(t).body(t, "brisket", 12, 0), Grate(celsius(250), CalmDay())
	var s Sim
	var slab Slab
	points := make([]Point, 0, 200)
	stages := []Stage{{In: in, UntilCoreC: 65}, {In: in.InFoil()}}
	runs := testing.AllocsPerRun(5, func() {
		s.Start(body, in)
		curve := Curve{EveryS: 600, Points: points[:0]}
		s.Cook(Recipe{Stages: stages, TargetC: 95}, &curve)
		branch := s
		branch.CarryOver(Counter(21))
		branch.Change(Boxed(21, BoxWM2K))
		branch.RunUntilOuterBelow(60, MaxRunS)
		slab.StartFrom(body, &s, DirectFire(false))
		slab.RunTo(96, 60, 600)
	})
	if runs != 0 {
		t.Errorf("%g allocations a cook, want none", runs)
	}
}
