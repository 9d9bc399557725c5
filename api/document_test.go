package api

import (
	"net/http"
	"os"
	"slices"
	"strings"
	"testing"
)

// The document is served as it stands at the top of the repository, and to read.
func TestDocumentIsServed(t *testing.T) {
	text, err := os.ReadFile("../openapi.yaml")
	if err != nil {
		t.Fatal(err)
	}
	cfg, _ := testConfig()
	cfg.Document, cfg.Version, cfg.Token = text, "v9.9.9", "a-secret-of-the-terrace"
	h := New(cfg).Handler()
	if a := ask(t, h, http.MethodGet, "/openapi.yaml", nil); a.StatusCode != http.StatusOK || string(a.body) != string(text) {
		t.Errorf("%d, %d bytes", a.StatusCode, len(a.body))
	}
	page := ask(t, h, http.MethodGet, "/openapi.html", nil)
	for path, item := range openAPI(t).Paths.Map() {
		for method, o := range item.Operations() {
			if !strings.Contains(string(page.body), method+" "+path) || !strings.Contains(string(page.body), `id="`+o.OperationID+`"`) {
				t.Errorf("the page lacks %s %s", method, path)
			}
		}
	}
	for _, never := range []string{"<script", "http://", "https://", "{{", "[object"} {
		if i := strings.Index(string(page.body), never); i >= 0 {
			t.Errorf("the page has %q: %.80s", never, page.body[i:])
		}
	}
	health := ask(t, h, http.MethodGet, "/healthz", nil)
	if !strings.Contains(string(health.body), `"version":"v9.9.9"`) || health.Header.Get("Server") != "cookday/v9.9.9" {
		t.Errorf("%s, Server %q", health.body, health.Header.Get("Server"))
	}
	cfg.Document = nil
	if a := ask(t, New(cfg).Handler(), http.MethodGet, "/openapi.html", nil); a.StatusCode != http.StatusNotFound {
		t.Errorf("without a document: %d", a.StatusCode)
	}
}

// One value of a forecast, for a cell.
func TestFieldOfAForecast(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	const query = "/v1/forecasts?cut=brisket&weight=12+lb&grate=250+F"
	csv := ask(t, h, http.MethodGet, query+"&format=csv", nil)
	rows := strings.Split(strings.TrimSpace(string(csv.body)), "\r\n")
	names, values := strings.Split(rows[0], ","), strings.Split(rows[1], ",")
	i := slices.Index(names, "take_off_expected_minutes")
	if i < 0 {
		t.Fatal(names)
	}
	a := ask(t, h, http.MethodGet, query+"&field=take_off_expected_minutes", nil)
	if a.StatusCode != http.StatusOK || a.Header.Get("Content-Type") != "text/plain; charset=utf-8" || !slices.Contains(values, strings.TrimSpace(string(a.body))) {
		t.Errorf("%d %q", a.StatusCode, a.body)
	}
	for bad, says := range map[string]string{"&field=nothing": "take_off_expected_minutes", "&field=cut&format=csv": "leave format out"} {
		if a := ask(t, h, http.MethodGet, query+bad, nil); a.StatusCode != http.StatusBadRequest || !strings.Contains(string(a.body), says) {
			t.Errorf("%s: %d %s", bad, a.StatusCode, a.body)
		}
	}
}

// The fire in hand, for a cell and with a log.
func TestFireInHand(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	const query = "/v1/fire?want=250+F&top=1/2&bottom=1/4"
	a := ask(t, h, http.MethodGet, query+"&shows=315+F&field=text", nil)
	if text := string(a.body); a.StatusCode != http.StatusOK || !strings.HasPrefix(text, "Close the ") {
		t.Errorf("%d %s", a.StatusCode, text)
	}
	a = ask(t, h, http.MethodPost, query, []byte("time,kind,value\n10:00,grate,250 F\n10:30,grate,251 F\n"), "Content-Type", "text/csv")
	if text := string(a.body); a.StatusCode != http.StatusOK || !strings.Contains(text, `"do":`) {
		t.Errorf("%d %s", a.StatusCode, text)
	}
	for _, bad := range []string{"/v1/fire?want=250+F", "/v1/fire?shows=250+F", query + "&shows=250+F&field=colour", query + "&shows=warm", query + "&shows=250+F&nonsense=1"} {
		if a := ask(t, h, http.MethodGet, bad, nil); a.StatusCode != http.StatusBadRequest {
			t.Errorf("%s: %d", bad, a.StatusCode)
		}
	}
}

// What a log of a fire teaches of its grill, and what a kept plan's log does.
func TestGrillIsLearned(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	log := "time,kind,value\n09:00,lit,\n09:15,lit-coals,12\n09:15,vents,\"top 1/4, bottom 1/4\"\n09:30,grate,205 F\n09:45,grate,262 F\n10:00,grate,290 F\n10:15,grate,301 F\n" +
		"10:16,vents,top 1/6\n10:45,grate,280 F\n11:15,grate,262 F\n11:16,vents,bottom 1/8\n11:45,grate,250 F\n12:15,grate,246 F\n"
	a := ask(t, h, http.MethodPost, "/v1/fire/grill?want=250+F&lit=12&unlit=80", []byte(log), "Content-Type", "text/csv")
	for _, want := range []string{`"taught":true`, `"cooks":1`, `"name":"gain"`, `250 °F: begin with top vent`} {
		if text := strings.ReplaceAll(string(a.body), ": ", ":"); a.StatusCode != http.StatusOK || !strings.Contains(text, strings.ReplaceAll(want, ": ", ":")) {
			t.Errorf("%d, no %s in %s", a.StatusCode, want, a.body)
		}
	}
	if a = ask(t, h, http.MethodPost, "/v1/fire/grill?want=250+F&lit=many", []byte(log), "Content-Type", "text/csv"); a.StatusCode != http.StatusBadRequest {
		t.Errorf("%d %s", a.StatusCode, a.body)
	}
}
