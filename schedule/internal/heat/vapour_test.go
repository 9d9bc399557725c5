package heat

import (
	"math"
	"testing"

	"example.com/cookday/schedule/internal/testbed"
)

// Tolerances: the Antoine equation with the constants used is off by up to 0.4 %
// between 10 and 100 degC (0.8 % at 5), and steam tables are rounded to 10 Pa.
func TestSaturationAgainstTables(t *testing.T) {
	var worst, worstLatent, worstPressure float64
	for _, r := range testbed.Rows(t, "testdata/vapour.csv") {
		at, want := r.Number(t, "at"), r.Number(t, "value")
		switch r["kind"] {
		case "saturation_pa":
			if at > 110 {
				continue // beyond the range in which the equation is meant to hold
			}
			off := math.Max(math.Abs(SaturationPa(at)-want)-5, 0) / want
			t.Logf("%s %g degC: %.0f Pa, table %.0f: %+.2f %%", r["source"], at, SaturationPa(at), want, 100*(SaturationPa(at)/want-1))
			worst = math.Max(worst, off)
		case "latent_kj_kg":
			worstLatent = math.Max(worstLatent, math.Abs(latentJKg(at)/1000/want-1))
		case "pressure_pa":
			worstPressure = math.Max(worstPressure, math.Abs(PressurePa(at)/want-1))
		}
	}
	t.Logf("worst: saturation %.2f %%, latent heat %.2f %%, pressure %.3f %%", 100*worst, 100*worstLatent, 100*worstPressure)
	if worst > 0.01 || worstLatent > 0.01 || worstPressure > 0.001 {
		t.Error("vapour properties are further from the tables than recorded")
	}
}

func TestBoilingPoint(t *testing.T) {
	// Sea level: 99.97 degC in the ASHRAE table. The table of the standard
	// atmosphere and the steam table together give 94.6 at 1600 m, 93.3 at 2000 m
	// (worked out by interpolation).
	for _, c := range []struct{ altitudeM, want float64 }{{0, 99.97}, {1600, 94.6}, {2000, 93.3}} {
		if got := BoilingC(c.altitudeM); math.Abs(got-c.want) > 0.15 {
			t.Errorf("boiling at %g m: %.2f degC, want %.2f", c.altitudeM, got, c.want)
		}
	}
}
