package planner_test

import (
	"context"
	"fmt"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// The government chart of 2006 (fsis_chicken_2006) roasts bone-in parts at 350 F;
// its minutes are those of the 180 F that was advised until then. It prints one
// line for legs of 8 oz and thighs of 4 oz, so the lighter thigh was set near the
// lower end of it; the wing likewise. Below the range by a tenth is allowed (the
// rounding of the chart to five minutes), above it nothing.
func TestSmallPartsAgainstTheChart(t *testing.T) {
	for _, c := range []struct {
		cut    string
		ounces float64
		lo, hi float64 // minutes
	}{
		{"chicken-leg", 8, 40, 50},
		{"chicken-thigh", 4, 40, 50},
		{"chicken-drum", 4, 35, 45},
		{"chicken-wing", 2.5, 30, 40},
	} {
		grate, core := unit.FromFahrenheit(350), unit.FromFahrenheit(180)
		o, err := planner.Forecast(context.Background(), schedule.Inquiry{Layout: "two-zone", Dish: schedule.Dish{
			Cut: c.cut, Weight: unit.FromPounds(c.ounces / 16), Level: &grate, Target: &schedule.Target{Core: &core},
		}})
		if err != nil {
			t.Fatal(err)
		}
		got := o.Milestones[len(o.Milestones)-2].ExpectedMinutes
		line := fmt.Sprintf("%s of %.1f oz: %.0f min, the chart says %.0f-%.0f", c.cut, c.ounces, got, c.lo, c.hi)
		if t.Log(line); got < 0.9*c.lo || got > c.hi {
			t.Error(line)
		}
	}
}
