package heat

import (
	"math"
	"testing"
)

// Diffusivities measured for beef at 40 to 65 degC (ASHRAE Refrigeration): round
// 1.33e-7, chuck 1.23e-7 m2/s. Compositions as in cuts.csv; 7 % because the
// compositions of those samples are not ours.
func TestDiffusivityOfBeef(t *testing.T) {
	for _, c := range []struct {
		name                     string
		water, protein, fat, ash float64
		want                     float64
	}{
		{"round", 0.7, 0.215, 0.07, 0.01, 1.33e-7},
		{"chuck", 0.64, 0.18, 0.17, 0.01, 1.23e-7},
	} {
		m := mix(c.water, c.protein, c.fat, c.ash)
		got := m.conductivity.at(52) / m.capacity.at(52)
		t.Logf("%s: %.3g m2/s, measured %.3g", c.name, got, c.want)
		if math.Abs(got/c.want-1) > 0.07 {
			t.Errorf("%s: diffusivity %.3g m2/s, measured %.3g", c.name, got, c.want)
		}
	}
}
