package planner_test

import (
	"context"
	"fmt"
	"os"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// revise reads a request, plans it, and revises the plan by a log at a local time.
// What these examples ask for is common practice, no source.
func revise(path, log, now string) schedule.Plan {
	text, err := os.ReadFile(path)
	if err != nil {
		panic(err)
	}
	request, err := schedule.Read(text)
	if err != nil {
		panic(err)
	}
	plan, err := planner.Make(context.Background(), request, planner.Judged())
	if err != nil {
		panic(err)
	}
	entries, err := schedule.ReadLog([]byte("time,dish,kind,value\n"+log), plan)
	if err != nil {
		panic(err)
	}
	loc, err := time.LoadLocation(plan.TZ)
	if err != nil {
		panic(err)
	}
	at, err := time.ParseInLocation("2006-01-02 15:04", now, loc)
	if err != nil {
		panic(err)
	}
	revised, err := planner.Revise(context.Background(), plan, entries, at, planner.Judged())
	if err != nil {
		panic(err)
	}
	return revised
}

// say prints what a revision found of the given codes, and its advice; a log that does
// not fit is always said.
func say(p schedule.Plan, codes ...string) {
	codes = append(codes, "unsound")
	for _, f := range p.Findings {
		for _, c := range codes {
			if f.Code == c {
				fmt.Println(f.Text)
			}
		}
	}
	for _, r := range p.Remedies {
		fmt.Println("-", r.Text, r.Price+".")
	}
}

const (
	terrace   = "testdata/logs/brisket-alone.yaml"
	overnight = "testdata/logs/overnight.yaml"
)

// A brisket two hours ahead at noon: let the fire sink, or let it wait.
func ExampleRevise_ahead() {
	say(revise(terrace, `08:00,brisket,on,
10:00,brisket,core,148 F
10:30,brisket,wrapped,foil
12:00,brisket,core,185 F
`, "2027-07-03 12:00"), "early", "late", "served-later")
	// Output:
	// Brisket: expected off at 2:01 PM, 4 hr before serving. It can be held until then. Brisket: open the wrap over a pan, away from the fire, and let it sit about 1 hr 15 min, until it stops cooking. Wrapped and in a pan, into the oven at 170 °F. The meat should stay at 150 °F to 160 °F: check it with a probe, for many ovens run 20 to 30 °F hot. Holds until you serve it; eat it within 1 hr of that. Measure just under the surface: a probe in the middle is only an alarm.
	// - Let the fire sink to 225 °F. Brisket: done 2 hr 45 min later.
}

// A brisket that stands at 152 F for three hours is in its stall.
func ExampleRevise_stalled() {
	say(revise(terrace, `08:00,brisket,on,
11:00,brisket,core,152 F
12:30,brisket,core,152 F
14:00,brisket,core,153 F
`, "2027-07-03 14:00"), "stall", "late", "may-be-late", "served-later")
	// Output:
	// At 6:00 PM: 40%; at 6:30 PM: 50%; at 9:40 PM: 90%. The plan is for 6:30 PM now. Brisket: in its stall, and nothing is wrong; expected ready at 6:30 PM.
	// Brisket: expected off at 6:00 PM and, rested, ready at 6:30 PM; on a slow day at 9:39 PM. Odds for 6:30 PM: 50%.
	// Brisket: stood near 153 °F for 3 hr. That is the stall: water leaving the surface takes the heat. Nothing is wrong with the fire or the probe; these times allow for it: off at about 6:00 PM, between 3:59 PM and 9:09 PM.
	// - Bring the grate up to 300 °F. Brisket: done 50 min earlier; dinner is at 6:00 PM, not at 6:30 PM.
	// - Finish Brisket in the kitchen oven at 300 °F. Brisket: done 1 hr 10 min earlier; dinner is at 6:00 PM, not at 6:30 PM.
	// - Wrap Brisket in foil now. Brisket: done 13 min earlier; dinner is at 6:20 PM, not at 6:30 PM.
	// - Serve at 9:40 PM, to be surer. The cook stays as it is.
}

// A chicken that reads 340 F after twenty minutes is a probe in the air.
func ExampleRevise_probe() {
	say(revise("testdata/logs/chicken.yaml", `17:00,chicken,on,
17:15,chicken,core,70 F
17:20,chicken,core,340 F
`, "2027-07-03 17:20"), "probe-in-air", "late")
	// Output:
	// Chicken: the reading of 340 °F at 5:20 PM shows the air of the grill or the grate, not the meat: the probe has come out or touches metal. Push it into the thickest part. That reading is ignored.
	// - Serve at 6:40 PM. The cook stays as it is.
}

// Dinner is moved from six to eight at half past four.
func ExampleRevise_servingMoved() {
	p := revise("testdata/logs/chicken-and-burgers.yaml", `16:20,chicken,on,
16:30,,serving-moved,20:00
`, "2027-07-03 16:30")
	fmt.Println("serve at", p.ServeAt.Format("15:04"))
	for _, s := range p.Steps {
		if s.Kind == schedule.StepPutOn {
			fmt.Println("put on", s.Dish, s.At.Format("15:04"), "done:", s.Done)
		}
	}
	say(p, "early")
	// Output:
	// serve at 20:00
	// put on chicken 16:20 done: true
	// put on burgers 19:46 done: false
	// Chicken: expected off at 5:23 PM, 2 hr 30 min before serving. It can be held until about 6:15 PM, which is too short. Chicken: in foil, into a cooler warmed with hot water; pack with towels. The skin softens there. Good until 6:15 PM, and that is before you eat: eat it by then, or move it to an oven at 200 °F before that. Below 140 °F anywhere: serve at once.
	// - Serve Chicken by itself at 6:15 PM. That is 1 hr 45 min earlier.
}

// The fire went out at three in the night and is found at half past five.
func ExampleRevise_fireOut() {
	say(revise(overnight, `2027-07-02 22:00,butt,on,
2027-07-03 00:30,butt,core,95 F
2027-07-03 03:00,,fire-out,
2027-07-03 05:30,butt,core,118 F
`, "2027-07-03 05:30"), "fire-died", "fire-out", "fire-out-over", "slow-through-danger-zone")
	// Output:
	// The fire has been out since about 3:00 AM.
	// Butt: 2 hr 19 min without heat between 40 and 140 °F; the published limit is 2 hr. With the fire out this is outside the published limits: do not serve it. Throw it away. Was it hot again before that, and nobody logged it? Log when, and ask again.
}
