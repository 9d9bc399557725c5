package planner_test

import (
	"context"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// Budgets of allocations, about a tenth above what was measured when they were set
// (Make 8,760, Revise 23,900, Forecast 160): time cannot be tested on a shared
// machine, and most slips that cost time allocate.
func TestAllocations(t *testing.T) {
	if testing.Short() { // as with the race detector, which allocates
		t.Skip("left out of short runs")
	}
	party := plantest.Party(t, "../..")
	on := plantest.StepAt(t, party, schedule.StepPutOn, "brisket")
	log := twoHundredReadings(t, party, on)
	grate := unit.FromFahrenheit(250)
	for _, c := range []struct {
		name string
		most float64
		run  func() error
	}{
		{"Make of the example party", 9500, func() error {
			_, err := planner.Make(context.Background(), party.Request)
			return err
		}},
		{"Revise with 200 readings", 26200, func() error {
			_, err := planner.Revise(context.Background(), party, log, on.Add(300*time.Minute))
			return err
		}},
		{"Forecast of a brisket", 184, func() error {
			_, err := planner.Forecast(context.Background(), schedule.Inquiry{Dish: schedule.Dish{Cut: "brisket", Weight: unit.FromPounds(12), Level: &grate}})
			return err
		}},
	} {
		got := testing.AllocsPerRun(2, func() {
			if err := c.run(); err != nil {
				t.Fatal(err)
			}
		})
		if t.Logf("%s: %.0f allocations", c.name, got); got > c.most {
			t.Errorf("%s: %.0f allocations, the budget is %.0f", c.name, got, c.most)
		}
	}
}
