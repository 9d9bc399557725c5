package planner_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/check"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/planner"
)

// Somebody comes with meat on the fire: a butt that went on at ten past five cannot be
// eaten at noon. The day is invented.
const buttOnTheFire = "format: 1\nserve: {date: 2027-07-04, time: \"12:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 22 in}\n" +
	"quiet: [{from: \"23:00\", to: \"05:00\"}]\n" +
	"dishes:\n  - {id: butt, name: Pork butt, cut: pork-butt, weight: 8 lb, level: 250 °F, wrap: none, target: 200 °F, went_on: \"05:10\", measured: {at: \"08:00\", core: 121 °F}}\n"

func read(t *testing.T, text string) schedule.Request {
	t.Helper()
	r, err := schedule.Read([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func sound(t *testing.T, p schedule.Plan) {
	t.Helper()
	for _, f := range check.Plan(p) {
		t.Errorf("the judge: %s", f)
	}
}

func at(t *testing.T, text string) time.Time {
	t.Helper()
	loc, err := time.LoadLocation("America/Chicago")
	if err != nil {
		t.Fatal(err)
	}
	when, err := time.ParseInLocation("2006-01-02 15:04", text, loc)
	if err != nil {
		t.Fatal(err)
	}
	return when
}

func TestADayThatHasBegunIsFollowed(t *testing.T) {
	r := read(t, buttOnTheFire)
	now := at(t, "2027-07-04 08:10")
	p, err := planner.Make(t.Context(), r, planner.NotBefore(now))
	if err != nil {
		t.Fatal(err)
	}
	sound(t, p)
	if !p.Feasible || p.RevisedAt == nil || !p.RevisedAt.Equal(now) || len(p.Log) != 2 {
		t.Fatalf("feasible %v, as of %v, log %v", p.Feasible, p.RevisedAt, p.Log)
	}
	if want := plans.ID(r, plans.Hash(r)); p.ID != want {
		t.Errorf("id %s, want that of the request, %s", p.ID, want)
	}
	if on := plantest.Step(t, p, schedule.StepPutOn, "butt"); !on.Done || !on.At.Equal(at(t, "2027-07-04 05:10")) {
		t.Errorf("put on at %v, done %v", on.At, on.Done)
	}
	for _, s := range p.Steps {
		if !s.Done && s.At.Before(now) {
			t.Errorf("%s is to be done at %v", s.Kind, s.At)
		}
	}
	// Its fire burned when it went on, and is not said to have been lit the evening before.
	if light := plantest.FirstAt(p, schedule.StepLight, ""); light.Before(at(t, "2027-07-04 03:00")) || light.After(at(t, "2027-07-04 05:10")) {
		t.Errorf("lit at %v", light)
	}
	if p.Findings[0].Code != "served-later" || !strings.HasPrefix(p.Findings[0].Text, "At 12:00 PM: 1%") {
		t.Errorf("first %v", p.Findings[0])
	}
	q, err := planner.Revise(t.Context(), p, []schedule.Entry{{At: at(t, "2027-07-04 09:00"), Dish: "butt", Kind: schedule.LogCore, C: 60}}, at(t, "2027-07-04 09:02"))
	if err != nil {
		t.Fatal(err)
	}
	sound(t, q)
	ids := map[string]schedule.StepKind{}
	for _, s := range p.Steps {
		ids[s.ID] = s.Kind
	}
	for _, s := range q.Steps {
		if s.Kind != schedule.StepCheckFire && s.Kind != schedule.StepRefuel && ids[s.ID] != s.Kind {
			t.Errorf("%s at %v has no step of its id before", s.Kind, s.At)
		}
	}
}

// A plan that cannot be had as asked is followed all the same, from the log alone.
func TestWhatCannotBeHadIsFollowed(t *testing.T) {
	r := read(t, strings.Replace(buttOnTheFire, `, went_on: "05:10", measured: {at: "08:00", core: 121 °F}`, "", 1)+"earliest: \"05:00\"\n")
	p, err := planner.Make(t.Context(), r)
	if err != nil || p.Feasible {
		t.Fatal(err, "the day can be had")
	}
	log, err := schedule.ReadLog([]byte("time,dish,kind,value\n04:50,,lit,\n05:10,butt,on,\n08:00,butt,core,121 °F\n"), p)
	if err != nil {
		t.Fatal(err)
	}
	q, err := planner.Revise(t.Context(), p, log, at(t, "2027-07-04 08:10"))
	if err != nil {
		t.Fatal(err)
	}
	sound(t, q)
	if q.Asked == nil || q.ID != p.ID {
		t.Errorf("asked %v, id %s, was %s", q.Asked, q.ID, p.ID)
	}
	with := read(t, buttOnTheFire)
	made, err := planner.Make(t.Context(), with, planner.NotBefore(at(t, "2027-07-04 08:10")))
	if err != nil {
		t.Fatal(err)
	}
	// The same facts give the same hours, however they were told; the light was told here.
	if a, b := plantest.TakeOff(t, q, "butt").Expected, plantest.TakeOff(t, made, "butt").Expected; a.Sub(b).Abs() > time.Minute {
		t.Errorf("off at %v by the log, at %v by the request", a, b)
	}
}

// What nobody said went on is not on.
func TestNothingIsInventedOnADayThatHasBegun(t *testing.T) {
	r := read(t, strings.Replace(buttOnTheFire, "12:00", "18:00", 1)+"  - {id: birds, name: Birds, cut: chicken-spatchcock, weight: 4 lb}\n")
	for _, now := range []string{"2027-07-04 08:10", "2027-07-04 16:50", "2027-07-04 17:30"} {
		p, err := planner.Make(t.Context(), r, planner.NotBefore(at(t, now)))
		if err != nil {
			t.Fatal(err)
		}
		sound(t, p)
		if on := plantest.Step(t, p, schedule.StepPutOn, "birds"); on.Done {
			t.Errorf("at %s the birds went on at %v", now, on.At)
		}
	}
}

func TestWhatHappenedIsRefusedWhereItCannotBe(t *testing.T) {
	for _, c := range []struct{ from, to, path string }{
		{`went_on: "05:10"`, `went_on: {date: 2027-07-04, time: "13:00"}`, "dishes[0].went_on"},
		{`went_on: "05:10"`, `went_on: {date: 2027-07-01, time: "05:10"}`, "dishes[0].went_on"},
		{`at: "08:00"`, `at: "05:00"`, "dishes[0].measured[0].at"},
		{`core: 121 °F`, `core: 2000 °F`, "dishes[0].measured[0].core"},
		{`went_on: "05:10", `, ``, "dishes[0].measured"},
	} {
		r, err := schedule.Read([]byte(strings.Replace(buttOnTheFire, c.from, c.to, 1)))
		if err == nil {
			_, err = planner.Make(t.Context(), r)
		}
		var bad *schedule.InputError
		if !errors.As(err, &bad) || bad.Faults[0].Path != c.path {
			t.Errorf("%s for %s: %v", c.to, c.from, err)
		}
	}
}
