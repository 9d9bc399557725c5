package spread

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// A brisket's own scatter, and how much longer and shorter it takes on a grate that is off (as Mix takes it; both of the
// order of a real plan's).
const (
	simulatedOwn  = 0.21
	simulatedSlow = 1.09
	simulatedFast = 0.92
)

// Two hundred grills of five cooks each, drawn as the windows say that cooks lie: each is foretold from those before it. The
// windows hold what they promise, are centred no worse, and narrow by what was learned and no more.
func TestWindowsOfOnesOwnCooksHold(t *testing.T) {
	d := rand.New(rand.NewPCG(20270703, 1))
	const grills, cooks = 200, 5
	var held, width, missed [cooks]float64
	for range grills {
		own, lean := BetweenCooks*d.NormFloat64(), Unknown()
		for k := range cooks {
			s := Mix(lean.Left(simulatedOwn), simulatedSlow, simulatedFast)
			s.Median += lean.Mean
			grate := Mix(1e-3, simulatedSlow, simulatedFast)
			x := own + math.Sqrt(simulatedOwn*simulatedOwn-BetweenCooks*BetweenCooks)*d.NormFloat64() + math.Log(grate.Factor(d.NormFloat64()))
			early, late := math.Log(s.Factor(-ZTenth)), math.Log(s.Factor(ZTenth))
			if x >= early && x <= late {
				held[k]++
			}
			width[k] += (late - early) / grills
			missed[k] += math.Abs(x-s.Median) / grills
			wide := s.S + s.Late/2
			lean = lean.After(lean.Mean+x-s.Median, math.Sqrt(math.Max(wide*wide-lean.SD*lean.SD, wide*wide/4)))
		}
	}
	all := 0.0
	for k := range cooks {
		all += held[k] / (grills * cooks)
		t.Logf("cook %d: %.0f %% inside, window %.3f of the first, middle off by %.3f", k+1, 100*held[k]/grills, width[k]/width[0], missed[k])
		if k > 0 && width[k] >= width[k-1] {
			t.Errorf("cook %d: the window does not narrow", k+1)
		}
	}
	t.Logf("all: %.1f %% inside", 100*all)
	if all < 0.76 || all > 0.84 { // asked for: 76-84 %
		t.Errorf("%.1f %% inside", 100*all)
	}
	// Were the pace known, the window would be sqrt(0.21^2-0.12^2)/0.21 of it, 0.82 and the grate's error in it: what four
	// cooks leave may not be narrower, and must have taken some of it.
	if least := Mix(Lean{}.Left(simulatedOwn), simulatedSlow, simulatedFast); width[4]/width[0] < least.S/Mix(simulatedOwn, simulatedSlow, simulatedFast).S || width[4]/width[0] > 0.97 {
		t.Errorf("%.3f of the first window, at the least %.3f", width[4]/width[0], least.S)
	}
}

// One cook moves a lean less than half of what it was off by, towards it, and an odd one no more than two deviations would;
// the more is known, the narrower, and never wider than of a stranger.
func TestALeanIsShrunk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Lean{Mean: rapid.Float64Range(-0.3, 0.3).Draw(t, "mean"), SD: rapid.Float64Range(0.01, BetweenCooks).Draw(t, "sd")}
		off, sd := rapid.Float64Range(-2, 2).Draw(t, "off"), rapid.Float64Range(0.15, 0.5).Draw(t, "sd of a cook")
		n := l.After(off, sd)
		moved := n.Mean - l.Mean
		if moved*(off-l.Mean) < 0 || math.Abs(moved) > math.Abs(off-l.Mean)/2 || math.Abs(moved) > 0.2 {
			t.Fatalf("%+v, %v: %+v", l, off, n)
		}
		if !(n.SD > 0) || n.SD > BetweenCooks || n.Left(0.21) > Unknown().Left(0.21)+1e-12 || n.Left(sd) < sd/2-1e-12 {
			t.Fatalf("%+v, %v: %+v", l, sd, n)
		}
	})
}
