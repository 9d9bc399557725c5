package schedule_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/plantest"
)

func TestReadParty(t *testing.T) {
	r, err := schedule.Read([]byte(plantest.Terrace))
	if err != nil {
		t.Fatal(err)
	}
	if r.Guests.Adults != 24 || r.Dishes[0].Weight.Pounds() != 12 || r.Dishes[2].Count != 12 || r.Dishes[0].Count != 1 {
		t.Errorf("read %+v", r)
	}
	if got := r.Dishes[0].ID + " " + r.Dishes[1].ID + " " + r.Dishes[2].ID; got != "brisket chickens burgers" {
		t.Errorf("ids %s", got)
	}
	if got := r.Serve.Date.String() + " " + r.Serve.Time.HhMm(); got != "2027-07-03 18:00" {
		t.Errorf("serve %s", got)
	}
	if got := r.Weather.Air.Fahrenheit(); got < 83.9999 || got > 84.0001 { // rounding of the conversion
		t.Errorf("air %v °F", got)
	}
}

// Every file of testdata/requests is read, and reads the same as JSON.
func TestReadFiles(t *testing.T) {
	files, err := filepath.Glob("testdata/requests/*.*")
	if err != nil || len(files) < 4 {
		t.Fatalf("only %d files: %v", len(files), err)
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		r, err := schedule.Read(data)
		if err != nil {
			t.Errorf("%s: %v", file, err)
			continue
		}
		roundTrip(t, r)
	}
}

func TestReadTellsAllFaultsInOrderWithLines(t *testing.T) {
	_, err := schedule.Read([]byte(`format: 1
serve:
  date: 2027-07-03
  time: "25:00"
  tz: America/Chicago
grill: {kind: kettle, diameter: 22}
colour: red
dishes:
  - cut: brisket
    wieght: 12 lb
    weight: 12
    count: a few
  - cut: burger
    weight: 6 oz
    weight: 7 oz
`))
	want := []struct {
		path string
		line int
	}{
		{"serve.time", 4}, {"grill.diameter", 6}, {"colour", 7},
		{"dishes[0].wieght", 10}, {"dishes[0].weight", 11}, {"dishes[0].count", 12},
		{"dishes[1].weight", 15},
	}
	got := plantest.Faults(t, err)
	if len(got) != len(want) {
		t.Fatalf("got %d faults, want %d:\n%v", len(got), len(want), err)
	}
	for i, w := range want {
		if got[i].Path != w.path || got[i].Line != w.line {
			t.Errorf("fault %d is at %s, line %d; want %s, line %d", i, got[i].Path, got[i].Line, w.path, w.line)
		}
	}
}

func TestReadGivesLinesOfMissingAndValidatedFields(t *testing.T) {
	document := strings.Replace(plantest.Terrace, "weight: 4.5 lb", "weight: 450 lb", 1)
	_, err := schedule.Read([]byte(strings.Replace(document, "confidence: 0.9", "confidence: 90", 1)))
	got := plantest.Faults(t, err)
	if len(got) != 2 || got[0].Path != "confidence" || got[0].Line != 9 || got[1].Path != "dishes[1].weight" || got[1].Line != 13 {
		t.Errorf("got %+v", got)
	}
}

func TestReadShorthands(t *testing.T) {
	tests := []struct{ old, short, long string }{
		{"guests: 24", "guests: 24", "guests: {adults: 24}"},
		{"weight: 12 lb, wrap: {with: foil, from: 150 °F}", "weight: 12 lb, wrap: foil", "weight: 12 lb, wrap: {with: foil}"},
		{"hold: [insulated-box, oven]", "hold: oven", "hold: [oven]"},
		{"weight: 6 oz", "weight: 6 oz, serve: \"17:00\"", "weight: 6 oz, serve: {time: \"17:00\"}"},
		{"units: us", "earliest: \"07:00\"", "earliest: {time: \"7:00\"}"},
		{"confidence: 0.9\n", "", "confidence: 0.9\n"},
		{"weight: 6 oz", "weight: 6 oz", "weight: 0.375 lb"},
	}
	for _, tt := range tests {
		short, err := schedule.Read([]byte(plantest.With(t, tt.old, tt.short)))
		if err != nil {
			t.Errorf("%s: %v", tt.short, err)
		}
		long, err := schedule.Read([]byte(plantest.With(t, tt.old, tt.long)))
		if err != nil {
			t.Errorf("%s: %v", tt.long, err)
		}
		if plans.Hash(short) == "" || plans.Hash(short) != plans.Hash(long) {
			t.Errorf("%q and %q are not the same request", tt.short, tt.long)
		}
	}
}

func TestReadUnions(t *testing.T) {
	r, err := schedule.Read([]byte(plantest.With(t, "  - {name: Burgers, cut: burger, weight: 6 oz, count: 12}\n", `
  - {cut: steak, weight: 1 lb, target: {final: 130 °F}, start: 38 °F, finish: sear}
  - {cut: steak, weight: 1 lb, target: medium-rare, start: frozen, wrap: none}
  - {cut: brisket, weights: [11 lb, 9.5 lb], target: 203 °F, wrap: {with: paper, after: 4h}, serve: {date: 2027-07-03, time: "17:30"}}
`)))
	if err != nil {
		t.Fatal(err)
	}
	a, b, c := r.Dishes[2], r.Dishes[3], r.Dishes[4]
	if a.Target.Final == nil || a.Target.Core != nil || a.Start.Frozen || a.Start.Core < 3 || a.Start.Core > 4 { // 38 F = 3.3 °C
		t.Errorf("%+v %+v", a.Target, a.Start)
	}
	if b.Target.Doneness != "medium-rare" || !b.Start.Frozen || b.Wrap.With != schedule.WrapNone {
		t.Errorf("%+v %+v %+v", b.Target, b.Start, b.Wrap)
	}
	if c.Target.Core == nil || len(c.Weights) != 2 || c.Wrap.After == nil || c.Serve.Date == nil || c.Count != 0 {
		t.Errorf("%+v", c)
	}
	if a.ID != "steak" || b.ID != "steak-2" || c.ID != "brisket-2" {
		t.Errorf("ids %s %s %s", a.ID, b.ID, c.ID)
	}
}
