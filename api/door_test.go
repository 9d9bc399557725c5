package api

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

func TestFaultsHavePointers(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	a := ask(t, h, http.MethodPost, "/v1/plans", []byte(`format: 1
serve: {date: 2027-02-30, time: "18:00", tz: America/Chicago}
grill: {kind: kettle, diameter: 22 in, colour: black}
dishes:
  - {cut: brisket, weight: 12}
`), asYAML...)
	var p Problem
	if err := json.Unmarshal(a.body, &p); err != nil || a.StatusCode != http.StatusBadRequest {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	want := map[string]int{"/serve/date": 2, "/grill/colour": 3, "/dishes/0/weight": 5} // pointer, line
	if len(p.Errors) != len(want) {
		t.Errorf("got %+v", p.Errors)
	}
	for _, f := range p.Errors {
		if want[f.Pointer] != f.Line || f.Detail == "" {
			t.Errorf("%+v", f)
		}
	}
}

func TestPointer(t *testing.T) {
	for path, want := range map[string]string{
		"": "", "name": "/name", "dishes[0].weight": "/dishes/0/weight", "[3].kind": "/3/kind", "weather.hours[12].from.time": "/weather/hours/12/from/time",
		`"a.b[c]".d`: "/a.b[c]/d", `grill."x/y~z"`: "/grill/x~1y~0z", `"broken`: `/"broken`, "a[0][1]": "/a/0/1", "a[": "/a/", "a.": "/a",
	} {
		if got := pointer(path); got != want {
			t.Errorf("%q: got %q, want %q", path, got, want)
		}
	}
}

func TestBodiesThatAreRefused(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	withID := strings.Replace(burgers, `"format": 1`, `"format": 1, "id": "mine"`, 1)
	for name, c := range map[string]struct {
		body    string
		headers []string
		status  int
		says    string
	}{
		"empty":            {"", asJSON, 400, "empty"},
		"blank":            {" \n", asJSON, 400, "empty"},
		"no type":          {burgers, nil, 415, "Content-Type"},
		"form":             {burgers, []string{"Content-Type", "application/x-www-form-urlencoded"}, 415, "Content-Type"},
		"latin-1":          {burgers, []string{"Content-Type", "application/json; charset=iso-8859-1"}, 415, "UTF-8"},
		"compressed":       {burgers, append([]string{"Content-Encoding", "gzip"}, asJSON...), 415, "Content-Encoding"},
		"YAML as JSON":     {"format: 1", asJSON, 400, "JSON object"},
		"trailing":         {burgers + "{}", asJSON, 400, "JSON"},
		"unknown field":    {strings.Replace(burgers, `"format"`, `"colour": 1, "format"`, 1), asJSON, 400, "colour"},
		"twice":            {strings.Replace(burgers, `"format"`, `"format": 1, "format"`, 1), asJSON, 400, "twice"},
		"own id":           {withID, asJSON, 400, "given by the service"},
		"second document":  {"format: 1\n---\nformat: 1\n", asYAML, 400, ""},
		"alias":            {"format: &a 1\nserve: *a\n", asYAML, 400, ""},
		"large":            {strings.Repeat(" ", maxBodyBytes+1), asJSON, 413, "1 MiB"},
		"deep":             {strings.Repeat("[", 200_000), asYAML, 413, "nested more than 64 deep"},
		"number as string": {`{"format": NaN}`, asJSON, 400, ""},
	} {
		a := ask(t, h, http.MethodPost, "/v1/plans", []byte(c.body), c.headers...)
		if a.StatusCode != c.status || !strings.Contains(string(a.body), c.says) {
			t.Errorf("%s: %d %.200s", name, a.StatusCode, a.body)
		}
	}
	if a := ask(t, h, http.MethodPost, "/v1/plans?x=1", []byte(burgers), asJSON...); a.StatusCode != http.StatusBadRequest {
		t.Errorf("query on a post: %d", a.StatusCode)
	}
}

// A forecast takes the record of one's own grill, and says what is wrong with it.
func TestForecastOnOnesOwnGrill(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	const figures = `"figures": [{"name": "pace", "times": 1.2, "spread": 0.06}]`
	body := func(own string) []byte {
		return []byte(`{"cut": "brisket", "weight": "12 lb", "grate": "250 F"` + own + `}`)
	}
	expected := func(a answer) float64 {
		var o schedule.Outlook
		if err := json.Unmarshal(a.body, &o); err != nil || a.StatusCode != http.StatusOK || len(o.Milestones) == 0 {
			t.Fatalf("%d %s", a.StatusCode, a.body)
		}
		return o.Milestones[len(o.Milestones)-1].ExpectedMinutes
	}
	usual := ask(t, h, http.MethodPost, "/v1/forecasts", body(""), asJSON...)
	own := ask(t, h, http.MethodPost, "/v1/forecasts", body(`, "own": {"cooks": 4, `+figures+`}`), asJSON...)
	if by := expected(own) / expected(usual); by < 1.1 || by > 1.3 || !strings.Contains(string(own.body), "own-grill") {
		t.Errorf("%.2f of the usual minutes on a grill that takes 1.2: %s", by, own.body)
	}
	for _, bad := range []string{`{"cooks": 0, ` + figures + `}`, `{"cooks": 4}`, `[1]`, `{"cooks": 4, "figures": [{"name": "luck", "times": 1, "spread": 1}]}`} {
		if a := ask(t, h, http.MethodPost, "/v1/forecasts", body(`, "own": `+bad), asJSON...); a.StatusCode != http.StatusBadRequest || !strings.Contains(string(a.body), "own") {
			t.Errorf("%s: %d %s", bad, a.StatusCode, a.body)
		}
	}
}

func TestForecasts(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	const query = "/v1/forecasts?cut=brisket&weight=12+lb&grate=250+F&probability=0.5,0.95"
	byQuery := ask(t, h, http.MethodGet, query, nil)
	byBody := ask(t, h, http.MethodPost, "/v1/forecasts", []byte(`{"cut": "brisket", "weight": "12 lb", "grate": "250 F", "probability": [0.5, 0.95]}`), asJSON...)
	if byQuery.StatusCode != http.StatusOK || !bytes.Equal(byQuery.body, byBody.body) {
		t.Errorf("query and body differ:\n%s\n%s", byQuery.body, byBody.body)
	}
	q, err := schedule.ReadInquiry(map[string]string{"cut": "brisket", "weight": "12 lb", "grate": "250 F", "probability": "0.5,0.95"})
	if err != nil {
		t.Fatal(err)
	}
	o, err := planner.Forecast(context.Background(), q)
	if err != nil {
		t.Fatal(err)
	}
	if want, _ := json.Marshal(o); !json.Valid(want) || compacted(t, byQuery.body) != compacted(t, want) {
		t.Error("the answer is not the library's")
	}
	for _, a := range []answer{ask(t, h, http.MethodGet, query+"&format=csv", nil), ask(t, h, http.MethodGet, query, nil, "Accept", "text/csv")} {
		lines := strings.Split(strings.TrimSuffix(string(a.body), "\r\n"), "\r\n")
		if len(lines) != 2 || !strings.HasPrefix(lines[0], "cut,mass_kg,") || !strings.HasSuffix(lines[0], ",take_off_0.5_minutes,take_off_0.95_minutes") {
			t.Errorf("%q", lines)
		}
	}
	for target, pointer := range map[string]string{"?cut=brisket&weight=12": "weight", "?cut=brisket&tarragon=1": "tarragon", "?weight=1kg": "cut", "?cut=x&cut=y": "cut", "?cut=brisket&format=xls": "format"} {
		a := ask(t, h, http.MethodGet, "/v1/forecasts"+target, nil)
		var p Problem
		if json.Unmarshal(a.body, &p); a.StatusCode != http.StatusBadRequest || len(p.Errors) == 0 || p.Errors[0].Parameter != pointer {
			t.Errorf("%s: %d %s", target, a.StatusCode, a.body)
		}
	}
	for body, says := range map[string]string{`{"cut": "brisket", "cut": "ribs"}`: "twice", `{"cut": {"a": 1}}`: "must be a text", `[]`: "one JSON object", `{"cut": "brisket"} x`: "one JSON object",
		`{"cut": null}`: "must be a text", `{"probability": ["0.5"]}`: "must be a text", `{"cut": "brisket", "weight": "12"}`: "unit"} {
		a := ask(t, h, http.MethodPost, "/v1/forecasts", []byte(body), asJSON...)
		if a.StatusCode != http.StatusBadRequest || !strings.Contains(string(a.body), says) {
			t.Errorf("%s: %d %s", body, a.StatusCode, a.body)
		}
	}
	if a := ask(t, h, http.MethodGet, query, nil, "Accept", "image/png"); a.StatusCode != http.StatusNotAcceptable {
		t.Errorf("png: %d", a.StatusCode)
	}
}

func compacted(t *testing.T, text []byte) string {
	var v any
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatal(err)
	}
	again, _ := json.Marshal(v)
	return string(again)
}

func TestNegotiation(t *testing.T) {
	offers := []string{typeJSON, "text/html", "text/calendar"}
	for header, want := range map[string]string{
		"": typeJSON, "*/*": typeJSON, "text/*": "text/html", "text/calendar": "text/calendar", "text/calendar;q=0.1, text/html;q=0.2": "text/html",
		"application/json;q=0, */*": "text/html", "image/png": "", "TEXT/HTML": "text/html", "text/html;q=2": "", "*/*;q=0": "", ",,;": typeJSON,
		"text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8": "text/html", // what a browser sends
	} {
		if got := negotiate(header, offers); got != want {
			t.Errorf("%q: got %q, want %q", header, got, want)
		}
	}
}
