package schedule_test

import (
	"context"
	"fmt"
	"log"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// planOf is the plan of a request, judged.
func planOf(document string) (schedule.Request, schedule.Plan) {
	r, err := schedule.Read([]byte(document))
	if err != nil {
		log.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r, planner.Judged())
	if err != nil {
		log.Fatal(err)
	}
	return r, p
}

// A chicken for lunch, invented.
const chickenForLunch = `format: 1
serve: {date: 2027-07-03, time: "13:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb}
`

// A clock alone means the day of the plan, and a dish goes by its name or its id.
func ExampleReadLog() {
	_, p := planOf(chickenForLunch)
	entries, err := schedule.ReadLog([]byte(`time,dish,kind,value
11:25,,lit,
11:45,chicken,on,
12:15,Chicken,core,104 F
`), p)
	if err != nil {
		log.Fatal(err)
	}
	for _, e := range entries {
		fmt.Printf("%s %-7s %s", e.At.Format("2006-01-02 15:04"), e.Dish, e.Kind)
		if e.C != 0 {
			fmt.Printf(" %.0f degC", e.C)
		}
		fmt.Println()
	}
	// Output:
	// 2027-07-03 11:25         lit
	// 2027-07-03 11:45 chicken on
	// 2027-07-03 12:15 chicken core 40 degC
}

// All faults come at once, each with its line.
func ExampleReadLog_faults() {
	_, p := planOf(chickenForLunch)
	_, err := schedule.ReadLog([]byte(`time,dish,kind,value
11:45,duck,on,
12:15,chicken,core,104
12:30,chicken,peeked,
`), p)
	fmt.Println(err)
	// Output:
	// line 2: dish: "duck" is no dish of this plan; there are chicken
	// line 3: value: 104: a temperature needs a unit: F or C
	// line 4: kind: "peeked" is not known; there are ash-cleared, boxed, chilled, coals-out, coldest, core, counter, dish-added, dish-cancelled, fire-out, gauge, grate, level, lid-closed, lid-opened, lit, lit-coals, no-fuel, on, outer, oven, oven-off, pulled, rain, refuelled, restarted, served, serving-moved, stopped, to-oven, unlit-coals, vents, wind and wrapped
}
