package schedule_test

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
)

// roundTrip wants the JSON of r to be read as r and to be the only JSON of it.
func roundTrip(t interface{ Fatalf(string, ...any) }, r schedule.Request) {
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatalf("%v", err)
	}
	again, err := schedule.Read(text)
	if err != nil {
		t.Fatalf("%v\nin %s", err, text)
	}
	if want := r.WithDefaults(); !reflect.DeepEqual(again, want) {
		t.Fatalf("read %+v\nwant %+v\nfrom %s", again, want, text)
	}
	second, err := json.Marshal(again)
	if err != nil || string(second) != string(text) {
		t.Fatalf("%v\n%s\nis not\n%s", err, second, text)
	}
	if plans.Hash(r) != plans.Hash(again) || len(plans.Hash(r)) != 64 {
		t.Fatalf("hashes %q and %q", plans.Hash(r), plans.Hash(again))
	}
}

func TestJSONOfRequestReadsBackTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { roundTrip(t, anyRequest(t)) })
}

func TestCanonicalJSON(t *testing.T) {
	r, err := schedule.Read([]byte(plantest.Terrace))
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"guests":24`, `"serve":{"date":"2027-07-03","time":"18:00","tz":"America/Chicago"}`,
		`"quiet":[{"from":"23:00","to":"05:30"}]`, `"oven":{}`, `"diameter":"0.5588 m"`, `"id":"burgers"`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%s is not in %s", want, text)
		}
	}
	for _, not := range []string{"confidence", "units", "fuel", `"count":1,`} {
		if strings.Contains(string(text), not) {
			t.Errorf("%s is in %s", not, text)
		}
	}
}

func TestHashTellsRequestsApart(t *testing.T) {
	base, err := schedule.Read([]byte(plantest.Terrace))
	if err != nil {
		t.Fatal(err)
	}
	for _, change := range [][2]string{{"12 lb", "12.1 lb"}, {"guests: 24", "guests: 25"}, {"\"18:00\"", "\"18:01\""}, {"count: 12", "count: 13"}} {
		other, err := schedule.Read([]byte(plantest.With(t, change[0], change[1])))
		if err != nil {
			t.Fatal(err)
		}
		if plans.Hash(base) == plans.Hash(other) {
			t.Errorf("%s and %s have one hash", change[0], change[1])
		}
	}
	if plans.Hash(schedule.Request{Dishes: []schedule.Dish{{Target: &schedule.Target{}}}}) != "" {
		t.Error("a request without JSON has a hash")
	}
}

func TestDefaultsDoNotWriteIntoTheRequest(t *testing.T) {
	r := schedule.Request{Oven: &schedule.Oven{}, Dishes: []schedule.Dish{{Cut: "corn"}}}
	full := r.WithDefaults()
	if r.Oven.Hold != 0 || r.Dishes[0].ID != "" || full.Oven.Hold == 0 || full.Dishes[0].ID != "corn" || full.Dishes[0].Weight == 0 {
		t.Errorf("%+v, %+v", r, full)
	}
	if !reflect.DeepEqual(full, full.WithDefaults()) {
		t.Error("a second call changes something")
	}
}

// A value on its own keeps its JSON too, as a program that builds requests needs.
func TestPartsRoundTrip(t *testing.T) {
	for _, tt := range []struct {
		into any
		text string
	}{
		{&schedule.Serve{}, `{"date":"2027-07-03","time":"18:00","tz":"America/Chicago"}`},
		{&schedule.Clock{}, `"05:00"`},
		{&schedule.Clock{}, `{"date":"2027-07-02","time":"05:00"}`},
		{&schedule.Quiet{}, `{"from":"23:00","to":"05:30"}`},
		{&schedule.Guests{}, `24`},
		{&schedule.Guests{}, `{"adults":20,"children":8,"frail":true}`},
		{&schedule.Target{}, `"95 C"`},
		{&schedule.Target{}, `"medium-rare"`},
		{&schedule.Target{}, `{"final":"54.5 C"}`},
		{&schedule.Start{}, `"frozen"`},
		{&schedule.Start{}, `"0 C"`},
		{&schedule.Wrap{}, `"none"`},
		{&schedule.Wrap{}, `{"with":"foil","from":"66 C"}`},
		{&schedule.Wrap{}, `{"with":"paper","after":"PT4H"}`},
	} {
		if err := json.Unmarshal([]byte(tt.text), tt.into); err != nil {
			t.Errorf("%s: %v", tt.text, err)
		}
		if got, err := json.Marshal(tt.into); err != nil || string(got) != tt.text {
			t.Errorf("%s becomes %s, %v", tt.text, got, err)
		}
		plantest.Faults(t, json.Unmarshal([]byte(`[true]`), tt.into))
	}
	var r schedule.Request
	plantest.Faults(t, json.Unmarshal([]byte(`{"format":1}`), &r))
}
