package planner_test

import (
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
	"example.com/cookday/schedule/unit"
)

// Ordinary menus on a kettle of 22 in, none of which may be refused. What is checked is the
// shape that a cook expects (common practice, no source).

// Two racks and four half chickens: one fire at the heat that both can share. The racks lie
// beside the coals; one half does too, the others brown over them once the racks are nearly done.
func ExampleMake_ribsAndHalves() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Ribs, cut: st-louis-ribs, weight: 2.75 lb, count: 2}
  - {name: Halves, cut: chicken-half, weight: 1.75 lb, count: 4}
`)
	// Output:
	// fires: two-zone low
	// Ribs: 2 on the fire Sat 14h, off Sat 18h
	// Halves: 1 on the fire Sat 16h, off Sat 18h
	// Halves: 3 on the fire Sat 17h, off Sat 18h
}

// Two racks and a chicken: one fire for both.
func ExampleMake_ribsAndAChicken() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Ribs, cut: st-louis-ribs, weight: 2.75 lb, count: 2}
  - {name: Chicken, cut: chicken, weight: 4 lb}
`)
	// Output:
	// fires: banked low
	// Ribs: 2 on the fire Sat 14h, off Sat 18h
	// Chicken: 1 on the fire Sat 16h, off Sat 18h
}

// Three racks of baby backs, standing: all at once on one low fire, at 300 F: of what only a
// cooler keeps the shorter cook is surer by a fifth.
func ExampleMake_threeRacksStanding() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Ribs, cut: baby-backs, weight: 2.25 lb, count: 3, lies: standing}
`)
	// Output:
	// fires: banked low
	// Ribs: 3 on the fire Sat 15h, off Sat 18h
}

// A brisket for noon, and nobody said when they sleep: it goes on before bed.
func ExampleMake_brisketForNoon() {
	shape(`format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Brisket, cut: brisket, weight: 12 lb}
`)
	// Output:
	// fires: ring low
	// Brisket: 1 on the fire Fri 22h, wrapped Sat 07h, off Sat 11h
}

// A menu of six on one fire, where the first edition lit two (a banked one at 275 F for the
// ribs, a two-zone one at 400 F for the rest): what is grilled goes over the coals in turn,
// while the ribs and the chicken lie beside them.
func ExampleMake_sixDishesOnOneFire() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
dishes:
  - {name: Ribs, cut: baby-backs, weight: 2.25 lb}
  - {name: Chicken, cut: chicken-spatchcock, weight: 4 lb}
  - {name: Sausages, cut: sausage, weight: 4 oz, count: 6}
  - {name: Corn, cut: corn, weight: 11 oz, count: 4}
  - {name: Peppers, cut: vegetables, weight: 4 oz, count: 6}
  - {name: Burgers, cut: burger, weight: 5 oz, count: 6}
`)
	// Output:
	// fires: two-zone low
	// Ribs: 1 on the fire Sat 15h, off Sat 18h
	// Chicken: 1 on the fire Sat 16h, off Sat 18h
	// Sausages: 6 on the fire Sat 17h
	// Corn: 4 on the fire Sat 17h
	// Peppers: 6 on the fire Sat 18h
	// Burgers: 6 on the fire Sat 18h
}

// Twelve burgers after two chickens: in two loads on the direct side of the fire that burns, not on a fire of their
// own.
func ExampleMake_burgersInTwoLoads() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
oven: {hold: 170 F}
dishes:
  - {name: Chickens, cut: chicken-spatchcock, weight: 4.5 lb, count: 2}
  - {name: Burgers, cut: burger, weight: 6 oz, count: 12}
`)
	// Output:
	// fires: two-zone hot
	// Chickens: 2 on the fire Sat 16h, off Sat 18h
	// Burgers: 6 on the fire Sat 18h
	// Burgers: 6 on the fire Sat 18h
}

// A turkey of which nothing is said is roasted at 325 to 350 F, and most likely off
// within an hour and a half of its serving.
func TestATurkeyIsRoastedAndRests(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{name: Turkey, cut: turkey, weight: 13 lb}"))
	if !p.Feasible || len(p.Phases) != 1 {
		t.Fatalf("feasible %t, %d fires: %v", p.Feasible, len(p.Phases), p.Findings)
	}
	if c := p.Phases[0].LevelC; c < unit.FToC(324) || c > unit.FToC(351) {
		t.Errorf("at %.0f degC", c)
	}
	off := plantest.TakeOff(t, p, p.Dishes[0].ID)
	if rest := p.ServeAt.Sub(off.Expected); rest < 20*time.Minute || rest > 90*time.Minute {
		t.Errorf("off %v before it is served", rest)
	}
	if s := plantest.Steps(p, schedule.StepPutOn); len(s) != 1 {
		t.Errorf("%d put-ons", len(s))
	}
}

// A tri-tip beside a hot fire is seared over the coals of that fire: no heap is built for it.
func ExampleMake_searOnTheFireThatBurns() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Tri-tip, cut: tri-tip, weight: 2 lb, level: 375 F, finish: sear}
`)
	// Output:
	// fires: two-zone hot
	// Tri-tip: 1 on the fire Sat 17h, sear Sat 18h, off Sat 18h
}

// Pizzas for which there is room one at a time are eaten as they come off: that is the way out
// that stands first, a quarter of an hour apart, and it is a day.
func TestPizzasAreEatenAsTheyComeOff(t *testing.T) {
	p := plantest.Plan(t, plantest.Evening(plantest.Kettle22, "{cut: pizza, count: 4}"))
	if p.Feasible || len(p.Remedies) == 0 || p.Remedies[0].Code != "sittings" {
		t.Fatalf("feasible %v, %v", p.Feasible, p.Remedies)
	}
	r, err := p.Request.With(p.Remedies[0].Edits...)
	if err != nil {
		t.Fatal(err)
	}
	q, err := planner.Make(t.Context(), r, planner.Judged())
	if err != nil || !q.Feasible || len(q.Dishes) != 4 {
		t.Fatal(q.Feasible, err)
	}
	for i := 1; i < len(q.Dishes); i++ {
		if by := q.Dishes[i].ServeAt.Sub(q.Dishes[i-1].ServeAt); by != 15*time.Minute {
			t.Errorf("pizza %d is eaten %v after the one before", i+1, by)
		}
	}
}
