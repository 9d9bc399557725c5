package export_test

import (
	"log"
	"os"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// The next two steps of a plan, as they fit a small terminal.
func ExampleText() {
	at := func(hour, minute int) time.Time { return time.Date(2027, 7, 3, hour, minute, 0, 0, time.UTC) }
	plan := schedule.Plan{TZ: "UTC", Units: "metric", Feasible: true, ServeAt: at(18, 0),
		Dishes: []schedule.DishPlan{{ID: "thighs", Name: "Chicken thighs", Count: 8}},
		Steps: []schedule.Step{
			{At: at(16, 50), Kind: schedule.StepLight, Attended: true, Text: "light a full chimney"},
			{At: at(17, 20), Kind: schedule.StepPutOn, Dish: "thighs", Attended: true, Text: "put the chicken thighs on, skin up"},
			{At: at(17, 50), Kind: schedule.StepTakeOff, Dish: "thighs", Attended: true, Text: "take the chicken thighs off at 74 °C in the core",
				Window: schedule.Window{Early: at(17, 43), Expected: at(17, 50), Late: at(17, 58)}},
		}}
	if err := export.Text(os.Stdout, plan, export.Options{Now: at(17, 0), Brief: 2, Width: 60}); err != nil {
		log.Fatal(err)
	}
	// Output:
	// Chicken thighs, Saturday
	// ========================
	// 17:00 now. Eat at 18:00 on Saturday 3 July 2027. Odds: less
	// than 1%: long odds that everything is ready on time. Expect
	// to eat late.
	//
	// Saturday 3 July
	// ---------------
	// [ ] 17:20  Put the chicken thighs on, skin up.
	// [ ] 17:50  (17:43 to 17:58) Take the chicken thighs off at
	//            74 °C in the core.
}
