package api

import (
	"net/http"
	"strings"
	"testing"
)

// Bodies that are far larger as a tree than as a text are refused before there is one.
func TestValuesAreCountedBeforeATreeIsBuilt(t *testing.T) {
	_, _, h, p := burgersUnderWay(t)
	plans, readings := "/v1/plans", "/v1/plans/"+p.ID+"/readings"
	for name, c := range map[string]struct{ target, kind, body string }{
		"flat list":        {plans, typeYAML, "a: [" + strings.Repeat("1,", 1<<19)[:1<<20-10] + "]"},
		"block list":       {plans, typeYAML, "a:\n" + strings.Repeat("- 1\n", 1<<18)[:1<<20-4]},
		"many fields":      {plans, typeYAML, strings.Repeat("a: 1\n", 200_000)},
		"comments":         {plans, typeYAML, strings.Repeat("#\n", 1<<19)},
		"one-line nesting": {plans, typeYAML, strings.Repeat("- ", 1<<19)},
		"JSON numbers":     {plans, typeJSON, `{"a":[` + strings.Repeat("1,", 1<<19)[:1<<20-10] + `1]}`},
		"JSON nesting":     {plans, typeJSON, `{"a":` + strings.Repeat("[", 1<<19)},
		"log of numbers":   {readings, typeJSON, "[" + strings.Repeat("1,", 1<<19)[:1<<20-4] + "1]"},
		"log in a log":     {readings, typeJSON, `[{"time": "17:00", "kind": "dish-added", "value": "[` + strings.Repeat("1,", 500_000) + `1]"}]`},
		"empty lines":      {readings, "text/csv", "time,kind\n" + strings.Repeat("\n", 1<<19)},
	} {
		if a := ask(t, h, http.MethodPost, c.target, []byte(c.body), "Content-Type", c.kind); a.StatusCode != http.StatusRequestEntityTooLarge {
			t.Errorf("%s: %d %.200s", name, a.StatusCode, a.body)
		}
	}
	if a := ask(t, h, http.MethodPost, "/v1/forecasts", []byte(`{"probability": [`+strings.Repeat("0.5,", 1000)+`0.5]}`), asJSON...); a.StatusCode != http.StatusRequestEntityTooLarge {
		t.Errorf("forecast: %d", a.StatusCode)
	}
}

// What a cook may write passes: forty dishes with all their fields, a full log.
func TestLargestBodiesPassTheCount(t *testing.T) {
	dish := `{name: A long name of a dish, with commas, and more, cut: brisket, weight: 12 lb, wrap: {with: foil, from: 150 F}, hold: [insulated-box, oven], target: 203 F, start: 38 F, prep: [injected, brined], zone: indirect, level: 250 F, rest: 1h, finish: sear, earliest: {date: 2027-07-02, time: "15:00"}, travel: 10m}`
	if err := scanned([]byte(strings.Repeat("  - "+dish+"\n", 40)), maxRequestSigns); err != nil {
		t.Error(err)
	}
	row := `{"time": "2027-07-03T08:00:00-05:00", "dish": "brisket", "kind": "core", "value": "139 F"},` + "\n"
	if err := scanned([]byte("["+strings.Repeat(row, 5000)), maxLogSigns); err != nil {
		t.Error(err)
	}
}

// A number of thousands of digits is not told again, wherever it stands.
func TestLongWordsAreNotEchoed(t *testing.T) {
	_, _, h, p := burgersUnderWay(t)
	long := strings.Repeat("9", 50_000)
	for name, c := range map[string]struct{ method, target, body string }{
		"format":      {"POST", "/v1/plans", strings.Replace(burgers, `"format": 1`, `"format": `+long, 1)},
		"count":       {"POST", "/v1/plans", strings.Replace(burgers, `"count": 4`, `"count": `+long, 1)},
		"confidence":  {"POST", "/v1/plans", strings.Replace(burgers, `"format"`, `"confidence": `+long+`, "format"`, 1)},
		"weight":      {"POST", "/v1/plans", strings.Replace(burgers, `6 oz`, long+` oz`, 1)},
		"field":       {"POST", "/v1/plans", strings.Replace(burgers, `"format"`, `"`+long+`": 1, "format"`, 1)},
		"name":        {"POST", "/v1/plans", strings.Replace(burgers, `Burgers`, long, 1)},
		"log value":   {"POST", "/v1/plans/" + p.ID + "/readings", `[{"time": "17:00", "kind": "grate", "value": "` + long + ` F"}]`},
		"log kind":    {"POST", "/v1/plans/" + p.ID + "/readings", `[{"time": "17:00", "kind": "` + long + `", "value": "1 F"}]`},
		"inquiry":     {"POST", "/v1/forecasts", `{"cut": "brisket", "weight": ` + long + `}`},
		"inquiry cut": {"POST", "/v1/forecasts", `{"cut": "` + long + `"}`},
	} {
		a := ask(t, h, c.method, c.target, []byte(c.body), asJSON...)
		if a.StatusCode != http.StatusBadRequest || len(a.body) > 2000 || strings.Contains(string(a.body), strings.Repeat("9", maxWord+1)) {
			t.Errorf("%s: %d, %d bytes: %.300s", name, a.StatusCode, len(a.body), a.body)
		}
	}
}

// The log of a plan has an end, not only that of one call.
func TestALogFills(t *testing.T) {
	cfg, clock, h, p := burgersUnderWay(t)
	clock.set("2027-07-03T17:40:00-05:00")
	store := cfg.Store.(*mapStore)
	for range maxEntries - 1 {
		store.readings[p.ID] = append(store.readings[p.ID], Reading{0, []byte(`{"time":"2027-07-03T17:12:00-05:00","kind":"lit"}`)})
	}
	target := "/v1/plans/" + p.ID + "/readings"
	a := ask(t, h, http.MethodPost, target, []byte("["+entry("17:30:00", "grate", "370 F")+","+entry("17:31:00", "grate", "371 F")+"]"), asJSON...)
	if a.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(string(a.body), "5001") {
		t.Errorf("%d %s", a.StatusCode, a.body)
	}
}
