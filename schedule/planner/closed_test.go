package planner_test

import (
	"testing"

	"example.com/cookday/schedule/internal/plantest"
)

// A leg that stands between the slow side and the sear: dinner is at 13:30 and nobody is
// there from 13:00 on, so that the sear must be over by then, however long the leg stood.
func TestSearIsOverBeforeQuietHours(t *testing.T) {
	p := plantest.Plan(t, `format: 1
serve: {date: 2027-07-03, time: "13:30", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
quiet: [{from: "13:00", to: "14:00"}]
confidence: 0.8
dishes:
  - {name: Legs, cut: veal-leg, weight: 6.5 lb, count: 2, finish: sear}
`)
	if !p.Feasible {
		t.Fatalf("%+v", p.Findings)
	}
}

// A wrap that waits for the end of quiet hours makes a kink in the times of the cook,
// which the window's three points do not show: what the plan says of its chance is not
// less than asked for all that.
func TestAWaitingWrapKeepsTheChance(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22+"quiet: [{from: \"13:00\", to: \"14:00\"}]\nconfidence: 0.6\nweather: {air: 92 F, altitude: 5280 ft}\noven: {hold: 170 F}",
		"{name: Brisket, cut: brisket, weight: 12 lb, hold: [oven], rest: 45m}"))
	if !p.Feasible || p.Dishes[0].Batches[0].Chance < 0.6-1e-3 { // three digits are kept
		t.Errorf("feasible %t, chance %.3f", p.Feasible, p.Dishes[0].Batches[0].Chance)
	}
}
