package planner_test

import (
	"context"
	"fmt"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// The cases below are days that cooks tell of (common practice, no source). What
// is checked is the shape of the day: what goes on in which order, on which fire.

const saturday = "format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\n"

// shape prints the phases, and each batch with the hour it goes on and comes off
// as planned.
func shape(document string) {
	r, err := schedule.Read([]byte(document))
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := planner.Make(context.Background(), r, planner.Judged())
	if err != nil {
		fmt.Println(err)
		return
	}
	if !p.Feasible {
		fmt.Println("cannot be done:", p.Findings[0].Code)
		for _, r := range p.Remedies {
			fmt.Println("remedy:", r.Text)
		}
		return
	}
	var fires []string
	for _, ph := range p.Phases {
		fires = append(fires, ph.Layout+" "+ph.Band)
	}
	fmt.Println("fires:", strings.Join(fires, ", "))
	for _, d := range p.Dishes {
		for _, b := range d.Batches {
			fmt.Printf("%s: %d on the fire %s", d.Name, len(b.Pieces), hour(b.Stages[0].From))
			for _, s := range b.Stages {
				if s.Kind == schedule.StageWrapped || s.Kind == schedule.StageSear {
					fmt.Printf(", %s %s", s.Kind, hour(s.From))
				}
				if s.Kind == schedule.StageRest {
					fmt.Printf(", off %s", hour(s.From))
				}
			}
			fmt.Println()
		}
	}
}

// hour is the nearest hour, so that the shape does not hang on a minute.
func hour(t time.Time) string { return t.Round(time.Hour).Format("Mon 15h") }

// A brisket through the night, chickens at 375 F, burgers last.
func ExampleMake_overnight() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
quiet: [{from: "23:00", to: "05:30"}]
oven: {hold: 170 F}
dishes:
  - {name: Brisket, cut: brisket, weight: 14 lb, level: 250 F}
  - {name: Chickens, cut: chicken, weight: 4 lb, count: 2, level: 375 F}
  - {name: Burgers, cut: burger, weight: 6 oz, count: 10}
`)
	// Output:
	// fires: banked low, two-zone hot
	// Brisket: 1 on the fire Fri 22h, wrapped Sat 10h, off Sat 15h
	// Chickens: 2 on the fire Sat 16h, off Sat 18h
	// Burgers: 5 on the fire Sat 18h
	// Burgers: 5 on the fire Sat 18h
}

// Ribs and a shoulder share one low fire; the shoulder goes on first.
func ExampleMake_ribsAndShoulder() {
	shape(saturday + `grill: {kind: kettle, diameter: 26 in}
dishes:
  - {name: Ribs, cut: baby-backs, weight: 2.25 lb, count: 2}
  - {name: Shoulder, cut: pork-butt, weight: 8 lb}
`)
	// Output:
	// fires: banked low
	// Ribs: 2 on the fire Sat 15h, off Sat 18h
	// Shoulder: 1 on the fire Sat 08h, wrapped Sat 14h, off Sat 18h
}

// Twenty-four burgers do not fit on 18 in at one time, and burgers do not wait.
func ExampleMake_manyBurgers() {
	shape(saturday + `grill: {kind: kettle, diameter: 18 in}
dishes:
  - {name: Burgers, cut: burger, weight: 6 oz, count: 24}
`)
	// Output:
	// cannot be done: clash
	// remedy: Serve Burgers in two sittings, 12 at 6:00 PM, 12 at 6:30 PM.
	// remedy: Serve Burgers in two sittings, 12 at 5:30 PM, 12 at 6:00 PM.
	// remedy: Cook 14 of the 24 Burgers.
}

// A turkey and a rib roast that want different heat on one grill: one of them
// has to give way.
func ExampleMake_turkeyAndRibRoast() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Turkey, cut: turkey, weight: 12 lb, level: 350 F}
  - {name: Rib roast, cut: rib-roast-bone-in, weight: 5 lb, level: 250 F}
`)
	// Output:
	// cannot be done: clash
	// remedy: Cook Rib roast the day before, chill, and warm for the table.
	// remedy: Move Rib roast to another grill or the kitchen, or off the menu.
	// remedy: Move Turkey to another grill or the kitchen, or off the menu.
}

// A picnic shoulder for noon when nobody gets up before six: it is cooked the day before
// and kept in the oven through the night.
func ExampleMake_picnicByNoon() {
	shape(`format: 1
serve: {date: 2027-07-03, time: "12:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
quiet: [{from: "22:00", to: "06:00"}]
oven: {hold: 170 F}
dishes:
  - {name: Shoulder, cut: pork-picnic, weight: 8 lb}
`)
	// Output:
	// fires: banked low
	// Shoulder: 1 on the fire Fri 07h, wrapped Fri 16h, off Fri 22h
}

// Two butts for lunch, an oven that keeps warm, and a night's sleep: cooked the day
// before, wrapped in the afternoon, off before bed, and in the oven until noon.
func ExampleMake_nightInTheOven() {
	shape(`format: 1
serve: {date: 2027-07-03, time: "12:30", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in}
quiet: [{from: "22:00", to: "07:00"}]
oven: {hold: 170 F}
dishes:
  - {name: Butts, cut: pork-butt, weight: 9 lb, count: 2}
`)
	// Output:
	// fires: banked low
	// Butts: 2 on the fire Fri 09h, wrapped Fri 17h, off Fri 22h
}

// A turkey comes off close to its rest: as planned, nine days in ten, an hour and less
// before it is carved.
func ExampleMake_turkeyAndItsRest() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: Turkey, cut: turkey, weight: 13 lb, level: 350 F}
`)
	// Output:
	// fires: two-zone hot
	// Turkey: 1 on the fire Sat 14h, off Sat 18h
}

// Burgers for two sittings an hour apart.
func ExampleMake_twoSittings() {
	shape(saturday + `grill: {kind: kettle, diameter: 22 in}
dishes:
  - {name: First sitting, cut: burger, weight: 6 oz, count: 10, serve: "17:00"}
  - {name: Second sitting, cut: burger, weight: 6 oz, count: 10}
`)
	// Output:
	// fires: spread hot
	// First sitting: 10 on the fire Sat 17h
	// Second sitting: 10 on the fire Sat 18h
}
