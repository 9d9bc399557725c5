package planner_test

import (
	"slices"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// Where the thickness decides, a forecast without it says what it took and what a tenth of
// an inch does; with it, and for pieces that grow alike in all directions, it does not ask.
func TestThicknessIsAskedForWhereItDecides(t *testing.T) {
	for _, c := range []struct {
		cut, weight, thickness string
		asked                  bool
	}{
		{"chuck-roast", "4 lb", "", true},
		{"pork-loin", "4 lb", "", true},
		{"lamb-leg-rolled", "5 lb", "", true},
		{"steak", "24 oz", "", true},
		{"chuck-roast", "4 lb", "2.5 in", false},
		{"brisket", "12 lb", "", false},
		{"pork-butt", "8 lb", "", false},
		{"burger", "6 oz", "", false},
	} {
		fields := []string{"cut", c.cut, "weight", c.weight}
		if c.thickness != "" {
			fields = append(fields, "thickness", c.thickness)
		}
		o := plantest.Ask(t, fields...)
		i := slices.IndexFunc(o.Findings, func(f schedule.Finding) bool { return f.Code == "measure-thickness" })
		if (i >= 0) != c.asked {
			t.Errorf("%v: asked for its thickness: %t, want %t", fields, i >= 0, c.asked)
		}
	}
}

// What the finding says of a thinner and a thicker piece is what a forecast with that
// thickness says.
func TestThicknessMovesTheForecast(t *testing.T) {
	last := 0.0
	for _, thick := range []string{"2 in", "2.25 in", "2.5 in", "2.75 in", "3 in"} {
		m := plantest.Milestone(plantest.Ask(t, "cut", "chuck-roast", "weight", "4 lb", "thickness", thick), schedule.MilestoneTakeOff)
		if m.ExpectedMinutes <= last {
			t.Errorf("%s: %.0f min, no more than a thinner piece's %.0f", thick, m.ExpectedMinutes, last)
		}
		last = m.ExpectedMinutes
	}
}
