package heat

import (
	"math"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// roast is a piece taken from an oven at a core temperature.
func roast(t testing.TB, cut string, weightLb, ovenF, pullF float64) *Sim {
	t.Helper()
	var s Sim
	s.Start(readCuts(t).body(t, cut, weightLb, 0), Oven(celsius(ovenF)))
	if got := s.RunTo(celsius(pullF), MaxRunS); got != Reached {
		t.Fatalf("%s to %g F: %v", cut, pullF, got)
	}
	return &s
}

// Measured means of carryover.csv (exp_cookery): pull and rise in degF. The oven
// was not printed, 325 degF is assumed; weights are group mass over number. The
// factor comes from these six, so this is no independent check.
func TestCarryOverOfMeasuredMeans(t *testing.T) {
	var wrong float64
	rows := 0
	for _, r := range testbed.Rows(t, "testdata/carryover.csv") {
		cut, known := map[string]string{
			"prime ribs of beef, well done": "rib-roast-bone-in",
			"prime ribs of beef, medium":    "rib-roast-bone-in",
			"ham, roasted":                  "ham-whole",
			"veal leg":                      "veal-leg",
			"lamb leg":                      "lamb-leg-bone-in",
			"pork loin":                     "pork-loin-bone-in",
		}[r["product"]]
		if !known || r["source"] != "exp_cookery" {
			continue
		}
		weight := r.Number(t, "mass_raw_lb") / r.Number(t, "n")
		pull, want := r.Number(t, "removed_max_f"), r.Number(t, "rise_min_f")
		s := roast(t, cut, weight, 325, pull)
		peak := s.CarryOver(Counter(21))
		got := fahrenheit(peak.CoreC) - pull
		t.Logf("%-30s %4.1f lb: rise %.1f F after %.0f min, measured %.1f", r["product"], weight, got, peak.AfterS/60, want)
		wrong += math.Abs(got - want)
		rows++
	}
	mean := wrong / float64(rows)
	t.Logf("mean absolute error %.2f F on %d rows", mean, rows)
	if rows != 6 || mean > 1.5 {
		t.Errorf("carry-over is off by %.2f F in the mean on %d rows, recorded 1.34 on 6", mean, rows)
	}
}

// Figures of another implementation for bare rest, with the factor; beside them
// what is published or practice. Peaks come after 2 to 8 min in thin pieces and
// about 60 above 10 lb as reported there; roasts, reported there as 15 to 35 min,
// here take up to 47, a flat top.
func TestCarryOverTable(t *testing.T) {
	for _, c := range []struct {
		cut                           string
		weightLb, ovenF, pullF, riseF float64
		grill                         bool
		leastMin, mostMin             float64
	}{
		{"rib-roast-boneless", 5, 325, 135, 11, false, 15, 50}, // 5-10 F, 10-15 in a culinary text
		{"rib-roast-boneless", 8, 450, 125, 20, false, 15, 50}, // 10-15 F, 25 very large
		{"rib-roast-bone-in", 6, 325, 118, 15, false, 15, 50},  // 10-15 F
		{"rib-roast-boneless", 5, 225, 130, 3.7, true, 10, 35}, // 1-4 F
		{"pork-loin", 3.5, 350, 140, 7.6, false, 10, 35},       // 5 F
		{"pork-tenderloin", 1, 430, 145, 11, false, 2, 12},     // 3-5 F: too large
		{"turkey", 14, 325, 160, 9.9, false, 20, 70},           // 5-10 F
		{"chicken-breast", 0.375, 400, 165, 3.4, false, 1, 8},  // 1-5 F
		{"brisket", 12, 237, 203, 0.6, true, 5, 70},            // 0-3 F
		{"pork-butt", 8, 250, 200, 1.6, true, 15, 70},          // 0-3 F
	} {
		in := Oven(celsius(c.ovenF))
		if c.grill {
			in = Grate(in.AirC, CalmDay())
		}
		var s Sim
		s.Start(readCuts(t).body(t, c.cut, c.weightLb, 0), in)
		s.RunTo(celsius(c.pullF), MaxRunS)
		peak := s.CarryOver(Counter(21))
		rise := fahrenheit(peak.CoreC) - c.pullF
		t.Logf("%-20s %4.1f lb %3.0f F: rise %.1f F (want %.1f) after %.0f min", c.cut, c.weightLb, c.ovenF, rise, c.riseF, peak.AfterS/60)
		// The peak is flat: 0.5 F and 5 % of what was printed to two figures.
		if math.Abs(rise-c.riseF) > 0.5+0.05*c.riseF {
			t.Errorf("%s: rise %.1f F, want %.1f", c.cut, rise, c.riseF)
		}
		if m := peak.AfterS / 60; m < c.leastMin || m > c.mostMin {
			t.Errorf("%s: peak after %.0f min, want %g to %g", c.cut, m, c.leastMin, c.mostMin)
		}
	}
}

func TestPullForPeak(t *testing.T) {
	b := readCuts(t).body(t, "rib-roast-boneless", 5, 0)
	var s Sim
	s.Start(b, Oven(celsius(325)))
	pull, ok := s.PullForPeak(57, Counter(21), MaxRunS)
	if !ok || s.ElapsedS() != 0 {
		t.Fatalf("ok %v, moved to %g s", ok, s.ElapsedS())
	}
	s.RunTo(pull, MaxRunS)
	if peak := s.CarryOver(Counter(21)); math.Abs(peak.CoreC-57) > 0.05 {
		t.Errorf("pulled at %.2f degC it peaks at %.2f, want 57", pull, peak.CoreC)
	}
	if _, ok := s.PullForPeak(40, Counter(21), MaxRunS); ok {
		t.Error("a core already too warm can be pulled in time")
	}
}

func TestProbeCore(t *testing.T) {
	for _, c := range []struct{ pulled, modelled, want float64 }{{60, 70, 66.3}, {60, 60, 60}, {60, 50, 50}} {
		if got := ProbeCoreC(c.pulled, c.modelled); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("pulled %g, modelled %g: %g, want %g", c.pulled, c.modelled, got, c.want)
		}
	}
}
