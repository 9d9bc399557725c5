package schedule_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
)

// onePlan is a plan with something in every kind of field; it makes no sense as a cook.
func onePlan(t *testing.T) schedule.Plan {
	t.Helper()
	r, err := schedule.Read([]byte(plantest.Terrace))
	if err != nil {
		t.Fatal(err)
	}
	loc, err := r.Location()
	if err != nil {
		t.Fatal(err)
	}
	at := time.Date(2027, 7, 3, 18, 0, 0, 0, loc)
	return schedule.Plan{
		Format: 1, ID: "x", Feasible: true, ServeAt: at, LightAt: &at, TZ: r.Serve.TZ, Units: "us",
		Dishes: []schedule.DishPlan{{ID: "brisket", ServeAt: at, Batches: []schedule.Batch{{
			Number: 1, Pieces: []schedule.Piece{{MassKg: 5.5, Spots: []schedule.Spot{{Phase: 1, XM: -0.1}}}},
			Milestones: []schedule.Milestone{{Kind: schedule.MilestoneOn, Window: schedule.Window{at, at, at}}},
			Curve:      []schedule.Point{{At: at, CoreC: 1e-7}},
		}}}},
		Steps:   []schedule.Step{{ID: "s", At: at, Kind: schedule.StepLight, Attended: true, Text: "<Light> & wait"}},
		Request: r,
	}
}

func TestPlanRoundTrip(t *testing.T) {
	text, err := json.Marshal(onePlan(t))
	if err != nil {
		t.Fatal(err)
	}
	p, err := schedule.ReadPlan(text)
	if err != nil {
		t.Fatal(err)
	}
	again, err := json.Marshal(p)
	if err != nil || string(again) != string(text) {
		t.Errorf("%v\n%s\nis not\n%s", err, again, text)
	}
	var plain schedule.Plan
	if err := json.Unmarshal(text, &plain); err != nil || plans.Hash(plain.Request) != plans.Hash(p.Request) {
		t.Errorf("encoding/json alone: %v", err)
	}
}

func TestPlansThatAreRefused(t *testing.T) {
	text, err := json.MarshalIndent(onePlan(t), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct{ old, now, path, word string }{
		{`"format": 1,`, `"format": 2,`, "format", "format 1"},
		{`"format": 1,`, `"format": 1, "Format": 1,`, "Format", "no such field; did you mean format?"},
		{`"format": 1,`, `"format": 1.5,`, "format", "whole number"},
		{`"revision": 0,`, `"revision": 0, "revision": 0,`, "revision", "twice"},
		{`"feasible": true,`, `"feasible": "true",`, "feasible", "without quotes"},
		{`"tz": "America/Chicago",`, ``, "tz", "missing"},
		{`"serve_at": "2027-07-03T18:00:00-05:00",`, `"serve_at": "2027-07-03T18:00",`, "serve_at", "an instant such as"},
		{`"mass_kg": 5.5,`, `"mass_kg": 1e999,`, "dishes[0].batches[0].pieces[0].mass_kg", "plain number"},
		{`"mass_kg": 5.5,`, `"mass_kg": "5.5 kg",`, "dishes[0].batches[0].pieces[0].mass_kg", "a number"},
		{`"x_m": -0.1,`, `"x": -0.1,`, "dishes[0].batches[0].pieces[0].spots[0].x", "no such field"},
		{`"date": "2027-07-03"`, `"date": "2027-07-33"`, "request.serve.date", "calendar"},
		{`"diameter": "0.5588 m"`, `"diameter": "55.88 m"`, "request.grill.diameter", "40 in"},
		{`"steps": [`, `"steps": 7, "findings": [`, "steps", "list"},
	}
	for _, tt := range tests {
		broken := strings.Replace(string(text), tt.old, tt.now, 1)
		if broken == string(text) {
			t.Errorf("%s is not in the plan", tt.old)
		}
		_, err := schedule.ReadPlan([]byte(broken))
		found := false
		for _, f := range plantest.Faults(t, err) {
			found = found || f.Path == tt.path && strings.Contains(f.Sentence, tt.word) && f.Line > 0 == (tt.path != "format" || tt.word != "format 1")
		}
		if !found {
			t.Errorf("%s: got\n%v", tt.now, err)
		}
	}
	for _, other := range []string{"", "[]", "null", "{}", "x", plantest.Terrace} {
		if _, err := schedule.ReadPlan([]byte(other)); err == nil {
			t.Errorf("%.20q was accepted", other)
		}
	}
}
