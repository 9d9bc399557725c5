package heat

import (
	"math"
	"testing"
)

// A branch after the bare part gives the same as a cook from the start.
func TestBranchEqualsWholeCook(t *testing.T) {
	b, in := readCuts(t).body(t, "brisket", 12, 0), Grate(celsius(250), CalmDay())
	stages := []Stage{{In: in, UntilCoreC: 66}, {In: in.InFoil()}}
	var whole, trunk Sim
	whole.Start(b, in)
	want := whole.Cook(Recipe{Stages: stages, TargetC: 95}, nil)
	trunk.Start(b, in)
	trunk.RunTo(66, MaxRunS)
	for _, wrap := range []Surroundings{in.InPaper(), in.InFoil()} {
		branch := trunk
		got := branch.Cook(Recipe{Stages: []Stage{{In: wrap}}, TargetC: 95}, nil)
		if wrap == in.InFoil() && math.Abs(got.TargetS-want.TargetS) > 1e-3 {
			t.Errorf("branch %.1f s, whole cook %.1f s", got.TargetS, want.TargetS)
		}
	}
	if got := trunk.CoreC(); math.Abs(got-66) > 1e-9 {
		t.Errorf("the trunk moved to %.3f degC", got)
	}
}

// What branches off a stem is what it would be from the start, to the last bit, before its
// target and after it.
func TestBranchesOfAStem(t *testing.T) {
	b, in := readCuts(t).body(t, "brisket", 12, 0), Grate(celsius(250), CalmDay())
	var from Sim
	from.Start(b, in)
	var stem Stem
	stem.Start(&from, 80)
	short := 0
	for seconds := 7.0; seconds < 20*3600; seconds = 1.3*seconds + 11 {
		want := from
		if want.RunWithin(80, seconds) == TimedOut {
			short++
		}
		for range 2 {
			if got := stem.Within(seconds); got != want {
				t.Fatalf("after %.0f s %.9g degC at %.9g s, from the start %.9g degC at %.9g s", seconds, got.CoreC(), got.ElapsedS(), want.CoreC(), want.ElapsedS())
			}
		}
	}
	if short < 10 || from.RunWithin(80, 20*3600) != Reached {
		t.Errorf("only %d branches before the target", short)
	}
}

// A wrap that is due while nobody is up waits; the cook goes on bare, and if the
// meat is done before, it is done bare.
func TestStageWaits(t *testing.T) {
	in := Grate(celsius(250), CalmDay())
	var s Sim
	s.Start(readCuts(t).body(t, "brisket", 12, 0), in)
	r := s.Cook(Recipe{Stages: []Stage{{In: in, UntilCoreC: 66, AtLeastS: 8 * 3600}, {In: in.InFoil()}}, TargetC: 95}, nil)
	if math.Abs(r.Ends[0].AtS-8*3600) > 1e-6 || r.Ends[0].CoreC <= 66 || r.Done != 2 {
		t.Errorf("first stage ended at %.0f s with %.1f degC, %d stages", r.Ends[0].AtS, r.Ends[0].CoreC, r.Done)
	}
	s.Start(readCuts(t).body(t, "brisket", 12, 0), in)
	r = s.Cook(Recipe{Stages: []Stage{{In: in, UntilCoreC: 66, AtLeastS: 40 * 3600}, {In: in.InFoil()}}, TargetC: 95}, nil)
	if r.Status != Reached || r.Done != 1 {
		t.Errorf("%v after %d stages, want done in the first", r.Status, r.Done)
	}
}

func TestCurve(t *testing.T) {
	in := Grate(celsius(250), CalmDay())
	var s Sim
	s.Start(readCuts(t).body(t, "brisket", 12, 0), in)
	curve := Curve{EveryS: 600}
	r := s.Cook(Recipe{Stages: []Stage{{In: in, AtMostS: 5 * 3600}, {In: in.InFoil()}}, TargetC: 95}, &curve)
	if want := int(r.TargetS/600) + 1; len(curve.Points) != want {
		t.Fatalf("%d points, want %d", len(curve.Points), want)
	}
	for i, p := range curve.Points {
		if p.AtS != float64(i)*600 {
			t.Fatalf("point %d at %g s", i, p.AtS)
		}
		if i > 0 && p.CoreC < curve.Points[i-1].CoreC-1e-6 {
			t.Errorf("core falls at %g s", p.AtS)
		}
	}
	// Sampling does not change the cook, and a sample is what a run to it finds.
	var again Sim
	again.Start(readCuts(t).body(t, "brisket", 12, 0), in)
	again.RunFor(3 * 3600)
	if d := math.Abs(again.CoreC() - curve.Points[18].CoreC); d > 0.3 {
		t.Errorf("core after 3 h differs by %.2f K", d)
	}
}

func TestEmptyRecipeAndTimedStages(t *testing.T) {
	in := Oven(160)
	var s Sim
	s.Start(readCuts(t).body(t, "chicken", 4, 0), in)
	if r := s.Cook(Recipe{}, nil); r.Status != TimedOut || s.ElapsedS() != 0 {
		t.Errorf("empty recipe: %v after %g s", r.Status, s.ElapsedS())
	}
	r := s.Cook(Recipe{Stages: []Stage{{In: in, AtMostS: 600}, {In: Counter(21), AtLeastS: 900}}}, nil)
	if r.Done != 2 || math.Abs(s.ElapsedS()-1500) > 1e-6 {
		t.Errorf("%d stages, %g s, want 2 and 1500", r.Done, s.ElapsedS())
	}
	s.Start(readCuts(t).body(t, "chicken", 4, 0), in)
	if r := s.Cook(Recipe{Stages: []Stage{{In: in}}, TargetC: 74, LimitS: 1200}, nil); r.Status != TimedOut || math.Abs(s.ElapsedS()-1200) > 1e-6 {
		t.Errorf("limit: %v after %g s", r.Status, s.ElapsedS())
	}
}

// Radius and dimensionality of another implementation, in an oven of 325 degF.
func TestShapes(t *testing.T) {
	c := readCuts(t)
	for name, r := range c {
		b := c.body(t, name, r.Number(t, "w0_lb"), 0)
		if got, want := 1000*b.Radius(), r.Number(t, "radius_mm"); math.Abs(got-want) > 0.06 {
			t.Errorf("%s: radius %.2f mm, want %.1f", name, got, want)
		}
		if got, want := b.Dimensionality(Oven(celsius(325)).shapeWM2K()), r.Number(t, "shape_e"); math.Abs(got-want) > 0.006 {
			t.Errorf("%s: E %.3f, want %.2f", name, got, want)
		}
		if err := b.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if b.sound() != b {
			t.Errorf("%s: a body that passes Check is changed", name)
		}
	}
}

func TestCheckNamesTheField(t *testing.T) {
	good := readCuts(t).body(t, "burger", 0.375, 0)
	thin, odd := good, good
	thin.ThicknessM = 0
	odd.Water, odd.Protein, odd.Fat, odd.Ash = 0.25, 0.25, 0, 0
	for _, c := range []struct {
		err  error
		want string
	}{
		{thin.Check(), "thickness is 0 m, want 0.002 to 3 m"},
		{odd.Check(), "shares of water, protein, fat and ash add up to 0.5, want 0.9 to 1.1"},
		{Oven(900).Check(), "air temperature is 900 degC, want -40 to 600 degC"},
		{good.Check(), ""},
		{Boxed(21, 4).Check(), ""},
	} {
		got := ""
		if c.err != nil {
			got = c.err.Error()
		}
		if got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
