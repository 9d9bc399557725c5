package safety_test

import (
	"fmt"

	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// The household chart, FoodSafety.gov 2019, and for injected meat the Food Code's pair.
func ExampleMinimumFor() {
	for _, food := range []struct {
		name string
		c    safety.Category
		p    safety.Prep
	}{
		{"beef", safety.Beef, safety.Prep{}},
		{"beef, injected", safety.Beef, safety.Prep{Injected: true}},
		{"ground beef", safety.Ground, safety.Prep{}},
		{"fish", safety.Fish, safety.Prep{}},
		{"fish, stuffed", safety.Fish, safety.Prep{Stuffed: true}},
		{"chicken", safety.Poultry, safety.Prep{}},
		{"leftovers", safety.Leftovers, safety.Prep{}},
	} {
		m := safety.MinimumFor(food.c, food.p)
		fmt.Printf("%-15s %.0f °F", food.name, unit.Temperature(m.CoreC).Fahrenheit())
		if m.RestMinutes > 0 {
			fmt.Printf(", rest %.0f min", m.RestMinutes)
		}
		if m.HoldSeconds > 0 {
			fmt.Printf(", for %.0f s", m.HoldSeconds)
		}
		fmt.Println()
	}
	// Output:
	// beef            145 °F, rest 3 min
	// beef, injected  155 °F, rest 3 min, for 15 s
	// ground beef     160 °F
	// fish            145 °F
	// fish, stuffed   165 °F
	// chicken         165 °F
	// leftovers       165 °F
}

// How food may wait, by what it is, how hot it comes off, and what it waits in.
func ExampleHoldFor_ways() {
	f := unit.FToC
	for _, x := range []struct {
		name string
		off  safety.Finished
	}{
		{"brisket off at 203 °F, in a box", safety.Finished{Piece: safety.Shoulder, Category: safety.Beef, CoreC: f(203), Place: safety.InBox, AirC: f(84)}},
		{"roast off at 130 °F, under a tent", safety.Finished{Piece: safety.Joint, Category: safety.Beef, CoreC: f(130), Place: safety.InOpen, AirC: f(84)}},
		{"the same at 95 °F outside", safety.Finished{Piece: safety.Joint, Category: safety.Beef, CoreC: f(130), Place: safety.InOpen, AirC: f(95)}},
		{"the same in an oven at 170 °F", safety.Finished{Piece: safety.Joint, Category: safety.Beef, CoreC: f(130), Place: safety.InOven, AirC: f(84), OvenC: f(170), ByRoast: true}},
		{"turkey off at 165 °F, in a box", safety.Finished{Piece: safety.Turkey, Category: safety.Poultry, CoreC: f(165), Place: safety.InBox, AirC: f(84), BoxAirC: f(70)}},
		{"burger off at 160 °F", safety.Finished{Piece: safety.Portion, Category: safety.Ground, CoreC: f(160), Place: safety.InOpen, AirC: f(84)}},
	} {
		r := safety.HoldFor(x.off)
		fmt.Printf("%s: %s", x.name, r.Kind)
		if r.LimitC > 0 {
			fmt.Printf(" %.0f °F", unit.Temperature(r.LimitC).Fahrenheit())
		}
		if c := r.Clock(150); c.Eaten > 0 { // were it hot for 150 min
			fmt.Printf(", on the table within %.0f min, eaten within %.0f", c.Served, c.Eaten)
		}
		fmt.Println()
	}
	// Output:
	// brisket off at 203 °F, in a box: outer-above 140 °F, on the table within 210 min, eaten within 270
	// roast off at 130 °F, under a tent: by-clock, on the table within 60 min, eaten within 120
	// the same at 95 °F outside: by-clock, on the table within 30 min, eaten within 60
	// the same in an oven at 170 °F: roast-oven 130 °F, on the table within 240 min, eaten within 300
	// turkey off at 165 °F, in a box: outer-above 140 °F, on the table within 120 min, eaten within 180
	// burger off at 160 °F: none
}

// An outer layer that falls evenly from 180 °F to 130 °F in 100 min is at 140 °F after 80.
func ExampleJudgeHold() {
	f := unit.FToC
	rule := safety.HoldFor(safety.Finished{Piece: safety.Shoulder, Category: safety.Beef, CoreC: f(203), Place: safety.InOven, AirC: f(84), OvenC: f(170)})
	report, err := safety.JudgeHold(rule, []safety.Sample{{Minute: 0, C: f(180)}, {Minute: 100, C: f(130)}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("ends: %v, after %.0f min\n", report.Ends, report.UntilMinute)
	fmt.Println(report.Finding.Sentence)
	// Output:
	// ends: true, after 80 min
	// Hold it hot, 16 hr at the most. When the meat just under its surface falls to 140 °F (60 °C) serve it at once, and eat or chill it within 1 hr. The hold goes on after the published limit.
}

// Five hours on the way from 40 to 140 °F: the trade warns of ground meat and not of an
// intact muscle.
func ExampleDangerClock() {
	var clock safety.DangerClock
	for _, s := range []safety.Sample{{Minute: 0, C: unit.FToC(40)}, {Minute: 300, C: unit.FToC(140)}, {Minute: 600, C: unit.FToC(203)}} {
		if err := clock.Add(s); err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("%.0f min between 40 and 140 °F\n", clock.Minutes())
	for _, c := range []safety.Category{safety.Ground, safety.Beef} {
		_, warned := clock.Finding(c, safety.Prep{})
		fmt.Println(c, "warned of:", warned)
	}
	// Output:
	// 300 min between 40 and 140 °F
	// ground warned of: true
	// beef warned of: false
}

// At the slow end of the published ranges: a day for each 4 lb in the refrigerator, half
// an hour for each pound in cold water, small packages longer (USDA FSIS, thawing).
func ExampleThawInRefrigerator() {
	for _, lb := range []float64{4, 12, 20} {
		mass := float64(unit.FromPounds(lb))
		slow, quick := safety.ThawInRefrigerator(safety.Poultry, mass), safety.ThawInColdWater(mass)
		fmt.Printf("%.0f lb: %.0f h, or %.0f h in cold water\n", lb, slow.MostHours, quick.MostHours)
	}
	// Output:
	// 4 lb: 24 h, or 3 h in cold water
	// 12 lb: 72 h, or 6 h in cold water
	// 20 lb: 120 h, or 10 h in cold water
}
