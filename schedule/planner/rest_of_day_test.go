package planner_test

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
)

// A butt for four in the afternoon, over the coals all night. Weights, heat and hours
// are invented; that such a piece may take eight hours or twenty is common practice, no
// source.
const buttDay = "format: 1\nserve: {date: 2027-07-04, time: \"16:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\n" +
	"dishes:\n  - {id: butt, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 °F, wrap: none, target: 200 °F}\n"

const lateButt = "time,dish,kind,value\n2027-07-03 23:00,butt,on,\n05:00,butt,core,140 °F\n09:00,butt,core,152 °F\n12:00,butt,core,158 °F\n"

// What is expected off after its serving is not rested, cut up or served before it, and
// dinner follows: the first line sets both hours side by side.
func TestServingFollowsALateDish(t *testing.T) {
	p := plantest.Day(t, buttDay)
	q := plantest.Revised(t, p, lateButt+"12:45,butt,core,159 °F\n", "2027-07-04 12:50")
	restsBeforeItIsServed(t, q)
	said := regexp.MustCompile(`^At 4:00 PM: ([0-9]+|less than 1)%; at [0-9:]+ [AP]M: (8[89]|9[0-9])%\.`)
	if f := q.Findings[0]; f.Code != "served-later" || !said.MatchString(f.Text) {
		t.Errorf("the first finding is %q: %s", f.Code, f.Text)
	}
	if q.Chance.All < 0.88 { // the asked 0.9, and what rounding to minutes makes of it
		t.Errorf("the chance at %v is %v", q.ServeAt, q.Chance.All)
	}
	offers(t, q, "likely", "hotter", "wrap-now", "likely")
}

// While the asked hour is not lost dinner moves by no more than is expected, and the first line has
// the hour that is surer: that is for the cook to choose. It moved by five hours at 35 %, and back
// at the next reading.
func TestDinnerKeepsNearAnHourThatIsNotLost(t *testing.T) {
	p := plantest.Day(t, buttDay)
	q := plantest.Revised(t, p, lateButt, "2027-07-04 12:05")
	restsBeforeItIsServed(t, q)
	said := regexp.MustCompile(`^At 4:00 PM: [34][0-9]%; at [0-9:]+ PM: 5[0-9]%; at [0-9:]+ PM: (8[89]|9[0-9])%\. The plan is for`)
	if f := q.Findings[0]; f.Code != "served-later" || !said.MatchString(f.Text) {
		t.Errorf("the first finding is %q: %s", f.Code, f.Text)
	}
	if late := q.ServeAt.Sub(p.ServeAt); late > 90*time.Minute {
		t.Errorf("dinner moved by %v", late)
	}
	offers(t, q, "later", "hotter", "wrap-now", "later")
}

// restsBeforeItIsServed wants a butt off, rested and then served.
func restsBeforeItIsServed(t *testing.T, q schedule.Plan) {
	t.Helper()
	off := plantest.TakeOff(t, q, "butt").Expected
	for _, kind := range []schedule.StepKind{schedule.StepRest, schedule.StepBox, schedule.StepSlice} {
		if at := plantest.FirstAt(q, kind, "butt"); !at.IsZero() && at.Before(off) {
			t.Errorf("%s at %v, off at %v", kind, at, off)
		}
	}
	if rested := off.Add(30 * time.Minute); q.ServeAt.Before(rested) { // the rest of the cut's row
		t.Errorf("served at %v, rested at %v", q.ServeAt, rested)
	}
}

// offers wants choices of some codes; all but one of them with an earlier dinner.
func offers(t *testing.T, q schedule.Plan, but string, codes ...string) {
	t.Helper()
	offered := map[string]bool{}
	for _, r := range q.Remedies {
		offered[r.Code] = true
		if r.ServeAt.Before(*q.RevisedAt) {
			t.Errorf("%s asks for the past, %v", r.Text, r.ServeAt)
		}
		if r.Code != but && !r.ServeAt.Before(q.ServeAt) {
			t.Errorf("%s: dinner is at %v with it, at %v without", r.Text, r.ServeAt, q.ServeAt)
		}
	}
	for _, code := range codes {
		if !offered[code] {
			t.Errorf("no choice %q among %v", code, q.Remedies)
		}
	}
}

// A dish that was carried to the oven needs no fire: nothing looks after it any more,
// and the grill is shut down.
func TestNoFireForWhatIsInTheOven(t *testing.T) {
	p := plantest.Day(t, buttDay)
	q := plantest.Revised(t, p, lateButt+"12:10,butt,to-oven,275 °F\n", "2027-07-04 12:15")
	for _, s := range q.Steps {
		if !s.Done && (s.Kind == schedule.StepCheckFire || s.Kind == schedule.StepRefuel) {
			t.Errorf("%s at %v: %s", s.Kind, s.At, s.Text)
		}
	}
	if at := plantest.FirstAt(q, schedule.StepCloseDown, ""); at.Sub(*q.RevisedAt) > time.Minute {
		t.Errorf("shut down at %v, it is %v", at, q.RevisedAt)
	}
}

// Where all may be off, the fire is looked at only if something is still on.
func TestLaterLooksAreForFoodThatIsStillOn(t *testing.T) {
	p := plantest.Day(t, buttDay+"oven: {hold: 170 F}\n") // which keeps it: it goes on early
	off, after := plantest.TakeOff(t, p, "butt").Expected, 0
	for _, s := range p.Steps {
		if s.Kind != schedule.StepCheckFire && s.Kind != schedule.StepRefuel {
			continue
		}
		if late := s.At.After(off); late != strings.HasPrefix(s.Text, "Pork butt still on? Then ") {
			t.Errorf("off at %v; at %v: %s", off, s.At, s.Text)
		} else if late {
			after++
		}
	}
	if after == 0 {
		t.Error("no look after the expected take-off: the day no longer tests what it is for")
	}
}

// What was held outside the published limits is not cut up nor served.
func TestWhatWasHeldTooCoolIsNotServed(t *testing.T) {
	p := plantest.Day(t, plantest.ReadFile(t, "testdata/logs/brisket-alone.yaml"))
	q := plantest.Revised(t, p, "time,dish,kind,value\n08:00,brisket,on,\n13:00,brisket,core,203 °F\n13:05,brisket,pulled,\n13:30,brisket,boxed,\n15:00,brisket,outer,132 °F\n17:30,brisket,outer,118 °F\n", "2027-07-03 17:31")
	if _, ok := plantest.Finding(q, "hold-over"); !ok {
		t.Fatalf("no finding hold-over; there are %v", q.Findings)
	}
	for _, s := range q.Steps {
		if !s.Done && (s.Kind == schedule.StepSlice || s.Kind == schedule.StepServe && !strings.HasPrefix(s.Text, "Do not serve")) {
			t.Errorf("%s at %v: %s", s.Kind, s.At, s.Text)
		}
	}
}
