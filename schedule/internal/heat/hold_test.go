package heat

import (
	"math"
	"testing"
)

// Hours above 140 degF in the outermost cell of a 12 lb brisket boxed at 203 degF: this
// model's own figures, kept so that a change is seen (no evidence); practice says 4 to 6 h.
func TestBoxedBrisket(t *testing.T) {
	cooked, _ := cook(t, "brisket", 12, Grate(celsius(250), CalmDay()), 203)
	for _, c := range []struct{ box, hours float64 }{
		{BoxVeryGoodWM2K, 9.8}, {BoxGoodWM2K, 6.4}, {BoxWM2K, 4.7}, {BoxPoorWM2K, 3.7},
	} {
		s := cooked
		s.Change(Boxed(21, c.box))
		start := s.ElapsedS()
		status := s.RunUntilOuterBelow(celsius(140), MaxRunS)
		got := (s.ElapsedS() - start) / 3600
		t.Logf("%g W/(m2 K): outer above 140 F for %.2f h, core then %.0f F", c.box, got, fahrenheit(s.CoreC()))
		if status != Reached || math.Abs(got/c.hours-1) > 0.03 {
			t.Errorf("box of %g W/(m2 K): %v, %.2f h, want %.1f within 3 %%", c.box, status, got, c.hours)
		}
	}
}

// Core of an 8 lb butt boxed at 205 degF after hours. reference: another
// implementation. Informal records (cooldown.csv): 172 F at 3.5 h and 155 F at 7
// h; 180 F at 4 h and 140 F at 6 h; 140 F at 6 h.
func TestBoxedButt(t *testing.T) {
	cooked, _ := cook(t, "pork-butt", 8, Grate(celsius(250), CalmDay()), 203)
	for _, c := range []struct{ box, hours, reference float64 }{
		{BoxGoodWM2K, 3.5, 179}, {BoxGoodWM2K, 4, 174}, {BoxGoodWM2K, 6, 156}, {BoxGoodWM2K, 7, 149},
		{BoxWM2K, 3.5, 171}, {BoxWM2K, 4, 166}, {BoxWM2K, 6, 145}, {BoxWM2K, 7, 137},
	} {
		s := cooked
		s.Change(Boxed(21, c.box))
		s.RunFor(c.hours * 3600)
		got := fahrenheit(s.CoreC())
		t.Logf("%g W/(m2 K), %g h: core %.0f F (reference %.0f), outer %.0f F", c.box, c.hours, got, c.reference, fahrenheit(s.OuterC()))
		// The pull temperature behind the reference was not printed.
		if math.Abs(got-c.reference) > 3 {
			t.Errorf("core %.0f F, want %.0f within 3 F", got, c.reference)
		}
	}
}

// A single informal record of cooldown.csv, and far off: an 8 lb turkey breast cooling bare
// from 186 degF read 147 F after 1 h and 143 F ten minutes later. The start was
// fitted backward from those. The test records the size of the misfit, which grew from
// 21 and 19 F with the second edition's larger birds.
func TestCoolingTurkeyBreastIsTooSlow(t *testing.T) {
	s := roast(t, "turkey-breast", 8, 325, 186)
	s.Change(Counter(21))
	s.RunFor(3600)
	first := fahrenheit(ProbeCoreC(celsius(186), s.CoreC()))
	s.RunFor(600)
	second := fahrenheit(ProbeCoreC(celsius(186), s.CoreC()))
	t.Logf("after 60 and 70 min: %.0f and %.0f F, observed 147 and 143", first, second)
	if first-147 > 31 || second-143 > 29 {
		t.Errorf("%.0f and %.0f F: further from the record than the 30 and 28 F written down", first, second)
	}
}

func TestRunUntilBelowAtOnceAndNever(t *testing.T) {
	cooked, _ := cook(t, "brisket", 12, Grate(celsius(250), CalmDay()), 203)
	s := cooked
	s.Change(Counter(21))
	if got := s.RunUntilCoreBelow(100, 3600); got != Reached || s.ElapsedS() != cooked.ElapsedS() {
		t.Errorf("core below 100 degC: %v after %g s", got, s.ElapsedS()-cooked.ElapsedS())
	}
	s.Change(WarmOven(77))
	if got := s.RunUntilOuterBelow(60, 24*3600); got != TimedOut {
		t.Errorf("outer below 60 degC in an oven of 77: %v", got)
	}
	if c := s.CoreC(); math.Abs(c-77) > 2 {
		t.Errorf("core %.1f degC after a day in an oven of 77", c)
	}
	s.Change(Counter(21))
	if got := s.RunUntilCoreBelow(40, MaxRunS); got != Reached || math.Abs(s.CoreC()-40) > 0.3 {
		t.Errorf("%v at a core of %.2f degC, want 40", got, s.CoreC())
	}
}

// A temperature that is passed on the way to a lower one is passed when a run to it alone ends, to the
// last bit; one that it had at the beginning, at once.
func TestWhatIsPassedOnTheWay(t *testing.T) {
	var hot Sim
	hot.Start(readCuts(t).body(t, "brisket", 12, 0), Grate(celsius(250), CalmDay()))
	hot.RunFor(9 * 3600)
	hot.Change(Boxed(21, BoxWM2K))
	for _, c := range []float64{celsius(160), celsius(150), celsius(141), hot.OuterC() + 5} {
		alone, both, past := hot, hot, Passing{C: c}
		alone.RunUntilOuterBelow(c, 24*3600)
		if both.RunUntilOuterBelowPast(celsius(140), 24*3600, &past) != Reached || !past.Passed || past.AtS != alone.ElapsedS() {
			t.Errorf("%.1f degC is passed at %.9g s, alone at %.9g s", c, past.AtS, alone.ElapsedS())
		}
		if end := hot; end.RunUntilOuterBelow(celsius(140), 24*3600) != Reached || end != both {
			t.Errorf("noting %.1f degC changes the run", c)
		}
	}
}
