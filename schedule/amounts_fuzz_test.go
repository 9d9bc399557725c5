package schedule_test

import (
	"math"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

// Whatever guests and cuts: faults, or amounts that feed them.
func FuzzAmounts(f *testing.F) {
	f.Add(16, 6, "brisket,chicken-spatchcock,corn")
	f.Add(1, 0, "burger")
	f.Add(math.MaxInt, math.MinInt, "")
	f.Add(0, 1, "turkey,turkey,buns,=1+1")
	f.Fuzz(func(t *testing.T, adults, children int, cuts string) {
		all, err := schedule.Amounts(schedule.Guests{Adults: adults, Children: children}, strings.Split(cuts, ","))
		if err != nil {
			plantest.Faulty(t, err)
			return
		}
		for _, a := range all {
			if a.Count < 1 || !(a.PieceKg > 0 && a.CookedKg > 0 && a.CookedKg <= a.MassKg) || a.MassKg < a.Eaters*a.ServingKg*(1-1e-6) {
				t.Errorf("%+v", a)
			}
			plantest.Clean(t, "amount", a.Text(unit.US)+a.Text(unit.Metric))
		}
	})
}
