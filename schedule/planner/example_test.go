package planner_test

import (
	"context"
	"fmt"
	"log"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// The days below are invented. What is printed are kinds, names and orders, so that it
// stays true when the model of heat learns something.

const lunch = `format: 1
serve: {date: 2027-07-03, time: "13:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Chicken, cut: chicken-spatchcock, weight: 4.5 lb}
  - {name: Burgers, cut: burger, weight: 6 oz, count: 6}
`

// From a request to its plan: what goes on in which order, what the fire becomes.
func ExampleMake() {
	r, err := schedule.Read([]byte(lunch))
	if err != nil {
		log.Fatal(err) // every fault of the request, one a line
	}
	p, err := planner.Make(context.Background(), r, planner.Judged())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("feasible:", p.Feasible)
	for _, ph := range p.Phases {
		fmt.Println("fire:", ph.Layout, ph.Band)
	}
	for _, s := range p.Steps {
		switch s.Kind {
		case schedule.StepLight:
			fmt.Println(s.Kind)
		case schedule.StepPutOn, schedule.StepTakeOff:
			fmt.Println(s.Kind, s.Dish)
		}
	}
	// Output:
	// feasible: true
	// fire: two-zone hot
	// light
	// put-on chicken
	// light
	// take-off chicken
	// put-on burgers
	// take-off burgers
}

// A day that cannot be done is a plan that says so, and no error.
func ExampleMake_infeasible() {
	r, err := schedule.Read([]byte(`format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
earliest: "11:00"
dishes:
  - {name: Shoulder, cut: pork-butt, weight: 8 lb}
`))
	if err != nil {
		log.Fatal(err)
	}
	p, err := planner.Make(context.Background(), r, planner.Judged())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("feasible:", p.Feasible)
	for _, f := range p.Findings {
		fmt.Println(f.Severity, f.Code, f.Dishes)
	}
	for _, rem := range p.Remedies {
		fmt.Println("remedy:", rem.Code)
	}
	// Output:
	// feasible: false
	// danger clash [shoulder]
	// info assumed []
	// remedy: earlier
}

// One piece without a schedule: when it reaches what, in minutes from the put-on.
func ExampleForecast() {
	q, err := schedule.ReadInquiry(map[string]string{
		"cut": "pork-butt", "weight": "8 lb", "grate": "225 °F", "wrap": "none",
	})
	if err != nil {
		log.Fatal(err)
	}
	o, err := planner.Forecast(context.Background(), q)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("gets there:", o.Reaches)
	for _, m := range o.Milestones {
		fmt.Println(m.Kind, "spread:", m.EarlyMinutes < m.ExpectedMinutes && m.ExpectedMinutes < m.LateMinutes)
	}
	// Output:
	// gets there: true
	// on spread: false
	// stall-begins spread: true
	// stall-ends spread: true
	// take-off spread: true
	// rested spread: true
}

// A grate that is far cooler than the target is no error either: the answer says why not.
func ExampleForecast_neverArrives() {
	q, err := schedule.ReadInquiry(map[string]string{"cut": "chicken", "weight": "5 lb", "grate": "150 °F", "target": "180 °F"})
	if err != nil {
		log.Fatal(err)
	}
	o, err := planner.Forecast(context.Background(), q)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("gets there:", o.Reaches)
	why, _, _ := strings.Cut(o.Reason, ":")
	fmt.Println(why)
	// Output:
	// gets there: false
	// Whole chicken will not get to 180 °F with the grate at 150 °F
}

// The plan while the day goes on: what the log says is done is fixed, the rest stands.
func ExampleRevise() {
	ctx := context.Background()
	r, err := schedule.Read([]byte(lunch))
	if err != nil {
		log.Fatal(err)
	}
	first, err := planner.Make(ctx, r, planner.Judged())
	if err != nil {
		log.Fatal(err)
	}
	entries, err := schedule.ReadLog([]byte("time,dish,kind,value\n11:40,chicken,on,\n12:00,chicken,core,85 °F\n"), first)
	if err != nil {
		log.Fatal(err)
	}
	now := entries[len(entries)-1].At.Add(time.Minute)
	p, err := planner.Revise(ctx, first, entries, now, planner.Judged())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("a revision:", p.Revision > 0, "feasible:", p.Feasible)
	for _, s := range p.Steps {
		if s.Kind == schedule.StepPutOn || s.Kind == schedule.StepTakeOff {
			fmt.Println(s.Kind, s.Dish, "done:", s.Done)
		}
	}
	// Output:
	// a revision: true feasible: true
	// put-on chicken done: true
	// take-off chicken done: false
	// put-on burgers done: false
	// take-off burgers done: false
}
