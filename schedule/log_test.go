package schedule_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plantest"
	"example.com/cookday/schedule/unit"
)

// A log may be CSV with its columns in any order, or JSON; times may be RFC 3339,
// local with a date, or a clock that goes on over midnight.
func TestReadLogReads(t *testing.T) {
	p := plantest.Party(t, "..")
	loc, _ := time.LoadLocation(p.TZ)
	at := func(text string) time.Time {
		v, err := time.ParseInLocation("2006-01-02 15:04", text, loc)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for name, text := range map[string]string{
		"csv":     "time,dish,kind,value\n07:40,Brisket,on,\n12:00,brisket,core,152 F\n12:05,grill,grate,121 °C\n00:15,,lid-opened,\n",
		"columns": "kind,value,time,dish\non,,2027-07-03 07:40,brisket\ncore,152 F,2027-07-03T12:00:00-05:00,Brisket\ngrate,121 C,12:05,\nlid-opened,,00:15,\n",
		"json": `[{"time":"07:40","dish":"brisket","kind":"on"},{"time":"12:00","dish":"brisket","kind":"core","value":"152 F"},
			{"time":"12:05","kind":"grate","value":"121 C"},{"time":"2027-07-04 00:15","kind":"lid-opened"}]`,
	} {
		log, err := schedule.ReadLog([]byte(text), p)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		want := []schedule.Entry{
			{At: at("2027-07-03 07:40"), Dish: "brisket", Kind: schedule.LogOn},
			{At: at("2027-07-03 12:00"), Dish: "brisket", Kind: schedule.LogCore, C: unit.FToC(152)},
			{At: at("2027-07-03 12:05"), Kind: schedule.LogGrate, C: 121},
			{At: at("2027-07-04 00:15"), Kind: schedule.LogLidOpened},
		}
		for i, w := range want {
			got := log[i]
			if got.Line == 0 || !got.At.Equal(w.At) || got.Dish != w.Dish || got.Kind != w.Kind || got.C-w.C > 1e-9 || w.C-got.C > 1e-9 {
				t.Errorf("%s: entry %d is %+v, want %+v", name, i, got, w)
			}
		}
	}
}

// One object is a log of one entry.
func TestReadLogOfOneObject(t *testing.T) {
	p := plantest.Party(t, "..")
	log, err := schedule.ReadLog([]byte(`{"time": "2027-07-03T12:00:00-05:00", "dish": "Brisket", "kind": "core", "value": "152 F"}`), p)
	if err != nil || len(log) != 1 || log[0].Dish != "brisket" || log[0].Kind != schedule.LogCore || log[0].C != unit.FToC(152) {
		t.Errorf("%+v, %v", log, err)
	}
	_, err = schedule.ReadLog([]byte("{\n\"time\": \"12:00\", \"dish\": \"brisket\", \"kind\": \"core\", \"value\": \"152\"}"), p)
	var bad *schedule.InputError
	if !errors.As(err, &bad) || bad.Faults[0].Path != "value" || bad.Faults[0].Line == 0 {
		t.Errorf("got %v, want a fault of value with its line", err)
	}
}

// Faults name their line, and all are told at once.
func TestReadLogRefuses(t *testing.T) {
	p := plantest.Party(t, "..")
	for _, c := range []struct{ text, want string }{
		{"when,kind\n12:00,core\n", "no such column"},
		{"time,dish,value\n12:00,brisket,3\n", "kind: is missing"},
		{"time,dish,kind,value\n12:00,brisket,core,152\n", "line 2: value"},
		{"time,dish,kind,value\n12:00,brisket,core,152 F\n25:00,brisket,core,152 F\n", "line 3: time"},
		{"time,dish,kind,value\n12:00,goose,core,152 F\n", "no dish of this plan"},
		{"time,dish,kind,value\n12:00,brisket,cor,152 F\n", "is not known"},
		{"time,dish,kind,value\n12:00,brisket,grate,250 F\n", "leave the dish empty"},
		{"time,dish,kind,value\n12:00,brisket,core,5000 F\n", "line 2: value"},
		{"time,dish,kind,value\n12:00,brisket,wrapped,cloth\n", "is no wrap"},
		{"time,kind,value\n12:00,fire-out,perhaps\n", "goes into the column time"},
		{"time,dish,kind,value\n12:00,brisket,pulled,before 11\n", "goes into the column time"},
		{"time,dish,kind,value\n13:40,,lit,\n14:20,brisket,on,\n2027-07-03 04:58,brisket,core,112 F\n", "if it was at 4:58 PM, write 16:58"},
		{"time,dish,kind,value\n12:00,brisket,boxed,on the porch\n", "no place where food waits"},
		{"time,dish,kind,value\n12:00,,serving-moved,soon\n", "must be a time"},
		{"time,dish,kind,value\n12:00,,dish-added,\"{\"\"cut\"\": 3}\"\n", "line 2: value"},
		{"time,dish,kind,value\n2027-09-01 12:00,brisket,on,\n", "outside the days of this plan"},
		{"[{\"time\": \"12:00\", \"kind\": \"core\", \"celsius\": 3}]", "no such field"},
		{"time,dish,kind,value\n12:00,goose,core,1 F\n12:10,brisket,core,152\n", "line 3"},
	} {
		_, err := schedule.ReadLog([]byte(c.text), p)
		var bad *schedule.InputError
		if !errors.As(err, &bad) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want a fault with %q", c.text, err, c.want)
		}
	}
}

// When something was is read where a cook wrote it beside the kind; who says 8:00 of a dinner
// at 4 PM means the evening; an oven may be said to be that of a dish.
func TestReadLogReadsWhatIsWrittenByHand(t *testing.T) {
	p := plantest.Party(t, "..")
	for _, c := range []struct{ line, kind, at, value string }{
		{"15:30,,fire-out,since 3:10", "fire-out", "15:10", ""},
		{"15:30,,fire-out,2 hours ago", "fire-out", "13:30", ""},
		{"15:30,brisket,pulled,at 2:45", "pulled", "14:45", ""},
		{"15:30,,serving-moved,8:00", "serving-moved", "15:30", "2027-07-03T20:00:00-05:00"},
		{"15:30,,serving-moved,08:00 PM", "serving-moved", "15:30", "2027-07-03T20:00:00-05:00"},
		{"15:30,brisket,oven,90 F", "oven", "15:30", ""},
	} {
		log, err := schedule.ReadLog([]byte("time,dish,kind,value\n09:00,,lit,\n"+c.line+"\n"), p)
		if err != nil || len(log) != 2 {
			t.Errorf("%s: %v", c.line, err)
			continue
		}
		if e := log[1]; string(e.Kind) != c.kind || e.At.Format("15:04") != c.at || e.Value != c.value {
			t.Errorf("%s: %+v", c.line, e)
		}
	}
}

func FuzzReadLog(f *testing.F) {
	f.Add([]byte("time,dish,kind,value\n07:40,Brisket,on,\n12:00,brisket,core,152 F\n"))
	f.Add([]byte(`[{"time":"07:40","dish":"brisket","kind":"on"}]`))
	f.Add([]byte("time,kind,value\n12:00,dish-added,\"{\"\"cut\"\":\"\"burger\"\"}\"\n"))
	p := plantest.Party(f, "..")
	f.Fuzz(func(t *testing.T, data []byte) {
		log, err := schedule.ReadLog(data, p)
		for _, e := range log {
			known := slices.ContainsFunc(schedule.EntryForms(), func(f schedule.EntryForm) bool { return f.Kind == e.Kind })
			if !known || e.At.IsZero() || err != nil {
				t.Errorf("%+v with error %v", e, err)
			}
		}
	})
}

// A clock alone is of the day of the cook, not of the days of thawing before it.
func TestAClockIsNoDayOfThawing(t *testing.T) {
	p := plantest.Day(t, "format: 1\nserve: {date: 2026-11-26, time: \"16:00\", tz: America/Chicago}\n"+plantest.Kettle22+"dishes:\n  - {id: turkey, cut: turkey, weight: 12 lb, start: frozen}\n")
	log, err := schedule.ReadLog([]byte("time,dish,kind,value\n11:54,turkey,on,\n"), p)
	if err != nil {
		t.Fatal(err)
	}
	if y, m, d := log[0].At.Date(); y != 2026 || m != 11 || d != 26 {
		t.Errorf("on at %v; the first step is at %v", log[0].At, p.Steps[0].At)
	}
}
