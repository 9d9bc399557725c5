package check_test

import (
	"context"
	"fmt"
	"log"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/planner"
)

// A plan as it was made is sound; one that somebody has written into is not, and each
// fault is led by the name of the rule that it breaks.
func ExamplePlan() {
	r, err := schedule.Read([]byte(`format: 1
serve: {date: 2027-07-03, time: "13:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Burgers, cut: burger, weight: 6 oz, count: 6}
`))
	if err != nil {
		log.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("faults as made:", len(check.Plan(p)))
	p.Dishes[0].TargetC = 60
	p.Dishes[0].Batches[0].Pieces = p.Dishes[0].Batches[0].Pieces[1:]
	for _, f := range check.Plan(p) {
		fmt.Println(f)
	}
	// Output:
	// faults as made: 0
	// dishes[0].target_c: target: 60.0 degC is refused for Burgers: A target of 140 °F (60 °C) is below the USDA minimum of 160 °F (72 °C). Grinding mixes surface bacteria through the meat, so it can't go lower.
	// dishes[0].target_c: target: 60.0 is not what the request asks for, 71.1
	// dishes[0].batches: pieces: 5 pieces of 0.850 kg in all; the request has 6 of 1.021 kg
}
