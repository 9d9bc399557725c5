package planner_test

import (
	"bytes"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
	"example.com/cookday/schedule/internal/plantest"
)

const buttToNoon = "2027-07-03 00:20,,lit,\n2027-07-03 00:40,butt,on,\n2027-07-03 04:00,butt,core,140 F\n2027-07-03 06:00,butt,core,160 F\n2027-07-03 06:05,butt,wrapped,foil\n2027-07-03 11:30,butt,core,201 F\n"

// A dish that is served is over: no step is left of it, and what is left of it has a deadline.
// It was "serving moved to now".
func TestWhatIsServedIsOver(t *testing.T) {
	c := trouble{served("16:00") + "quiet: []\n", troubledButt, buttToNoon + "2027-07-03 11:31,butt,pulled,\n2027-07-03 11:40,butt,boxed,cooler\n2027-07-03 13:05,,served,\n", "2027-07-03 13:10"}
	q := c.revised(t)
	q.wants(t, schedule.Leftovers, "served at 1:05 PM", "refrigerator by 3:05 PM") // hot in its cooler until it was opened
	q.lacks(t, schedule.CodeHoldShort, schedule.CodeOvenDries, schedule.StandsOpen)
	for _, s := range q.Steps {
		if !s.Done && s.Kind != schedule.StepCloseDown {
			t.Errorf("still to do: %s", s.Text)
		}
	}
	c.now = "2027-07-03 15:30"
	c.revised(t).wants(t, schedule.Leftovers, "Throw away what was not in the refrigerator by 3:05 PM")

	c = trouble{served("16:00") + "quiet: []\n", troubledButt, buttToNoon + "2027-07-03 11:31,butt,pulled,\n2027-07-03 11:35,butt,counter,\n2027-07-03 13:05,butt,served,\n", "2027-07-03 13:10"}
	c.revised(t).wants(t, schedule.Leftovers, "Eat it by 1:31 PM, and keep nothing") // two hours without heat, from the take-off
	// Of two dishes the one that still cooks is not part of the meal.
	two := trouble{served("16:00") + "quiet: []\n", troubledButt + troubledBirds, buttToNoon + "2027-07-03 13:50,,lit,\n2027-07-03 14:20,chickens,on,\n2027-07-03 15:20,chickens,core,166 F\n2027-07-03 15:21,chickens,pulled,\n2027-07-03 15:50,,served,\n", "2027-07-03 15:55"}
	two.log = strings.Replace(two.log, "butt,core,201 F", "butt,core,180 F", 1)
	q = two.revised(t)
	if f, ok := plantest.Finding(q.Plan, schedule.Leftovers); !ok || f.Dishes[0] != "chickens" {
		t.Errorf("leftovers of %v", f.Dishes)
	}
	if s := q.first(schedule.StepTakeOff); s.Dish != "butt" {
		t.Errorf("what still cooks: %+v", s)
	}
}

// Where a piece really is says how long it keeps: a cooler on a plan that holds it in the oven
// does not keep it for the afternoon.
func TestWhereItIsHeldCounts(t *testing.T) {
	head := served("20:00") + "quiet: []\n"
	log := buttToNoon + "2027-07-03 11:31,butt,pulled,\n2027-07-03 11:40,butt,boxed,"
	for _, at := range []string{"2027-07-03 12:00", "2027-07-03 14:00"} {
		oven := trouble{head, troubledButt, log + "oven\n", at}.revised(t)
		oven.lacks(t, schedule.CodeHoldShort)
		cooler := trouble{head, troubledButt, log + "cooler\n", at}.revised(t)
		cooler.wants(t, schedule.CodeHoldShort, "Put Pork butt into an oven at 170 °F now, or eat it by")
		if in := heldIn(cooler.Plan); in != schedule.HoldBox {
			t.Errorf("held in %s", in)
		}
	}
	late := trouble{head, troubledButt, log + "cooler\n", "2027-07-03 19:30"}.revised(t)
	late.wants(t, schedule.CodeHoldShort, "Measure Pork butt just under the surface now", "throw it away")
	done := trouble{head, troubledButt, buttToNoon + "2027-07-03 11:31,butt,pulled,\n2027-07-03 11:40,butt,to-oven,170 F\n", "2027-07-03 14:00"}.revised(t)
	if in := heldIn(done.Plan); in != schedule.HoldOven {
		t.Errorf("taken off, then into the oven: held in %s", in)
	}
}

// heldIn is where the first batch waits.
func heldIn(p schedule.Plan) string {
	all := p.Dishes[0].Batches[0].Stages
	return all[len(all)-1].Place
}

// A reading at the target is an order for as long as it is news, then a question; and a fire
// that was lit is not told to be lit.
func TestAnOldReadingAsks(t *testing.T) {
	c := trouble{served("16:00") + "quiet: []\n", troubledButt, buttToNoon, "2027-07-03 11:35"}
	c.revised(t).wants(t, schedule.PastTarget, "Take Pork butt off now")
	c.now = "2027-07-03 14:00"
	q := c.revised(t)
	q.wants(t, schedule.PastTarget, "Is Pork butt off? It was read at 201 °F at 11:30 AM")
	if s := q.first(schedule.StepTakeOff); !strings.Contains(s.Text, "is it off?") {
		t.Errorf("step: %s", s.Text)
	}
	var b bytes.Buffer
	if err := export.Text(&b, q.Plan, export.Options{Now: *q.RevisedAt, Width: 80}); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), "Lit at    12:20 AM") {
		t.Errorf("the light: %s", b.String()[:600])
	}
}

// What was found below its line in a cooler is reheated once, within two hours of the earliest
// that it crossed it; it was thrown away though an hour of that was left. Later it goes.
func TestAColdHoldIsReheatedInTime(t *testing.T) {
	c := trouble{served("18:00") + "quiet: []\n", troubledButt, buttToNoon + "2027-07-03 11:31,butt,pulled,\n2027-07-03 11:40,butt,boxed,cooler\n2027-07-03 14:00,butt,core,165 F\n2027-07-03 15:30,butt,outer,139 F\n", "2027-07-03 15:31"}
	q := c.revised(t)
	q.wants(t, "hold-over", "into an oven at 325 °F now", "165 °F", "once, or throw it away", "Do not serve it as it is")
	if q.Chance.All > 0 {
		t.Errorf("%.2f sure before it is hot again", q.Chance.All)
	}
	c.log += "2027-07-03 16:00,butt,coldest,167 F\n"
	c.now = "2027-07-03 16:01"
	q = c.revised(t)
	q.wants(t, schedule.HoldRead, "reheated to 167 °F at 4:00 PM. Eat it now")
	q.lacks(t, "hold-over")
	c.log, c.now = strings.Replace(c.log, "16:00,butt,coldest,167", "16:00,butt,coldest,150", 1), "2027-07-03 18:30"
	c.revised(t).wants(t, "hold-over", "throw it away")
}
