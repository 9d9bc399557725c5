package schedule_test

import (
	"context"
	"fmt"
	"log"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// Take the first remedy of a day that cannot be done, and plan again. Invented:
// twenty-four burgers do not fit on 18 in at one time, and burgers do not wait.
func ExampleRequest_With() {
	r, p := planOf(`format: 1
serve: {date: 2027-07-03, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 18 in}
dishes:
  - {name: Burgers, cut: burger, weight: 6 oz, count: 24}
`)
	fmt.Println("feasible:", p.Feasible)
	take := p.Remedies[0]
	fmt.Println(take.Text)
	r, err := r.With(take.Edits...)
	if err != nil {
		log.Fatal(err)
	}
	p, err = planner.Make(context.Background(), r, planner.Judged())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("feasible:", p.Feasible)
	for _, d := range p.Dishes {
		fmt.Println(d.Name, d.Count, d.ServeAt.Format("15:04"))
	}
	// Output:
	// feasible: false
	// Serve Burgers in two sittings, 12 at 6:00 PM, 12 at 6:30 PM.
	// feasible: true
	// Burgers 12 18:00
	// Burgers, sitting 2 12 18:30
}

// A change of one's own. The request itself stays as it was.
func ExampleNewEdit() {
	r, err := schedule.Read([]byte(chickenForLunch))
	if err != nil {
		log.Fatal(err)
	}
	changed, err := r.With(schedule.NewEdit("dishes[0].name", "Hen"), schedule.NewEdit("confidence", 0.8))
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(r.Dishes[0].Name, "->", changed.Dishes[0].Name)
	_, err = r.With(schedule.NewEdit("dishes[0].colour", "brown"))
	fmt.Println(err)
	// Output:
	// Chicken -> Hen
	// dishes[0].colour: there is no such field; a path is written as in faults, such as dishes[0].level
}
