package api

import (
	"net/http"
	"strings"
	"testing"
	"time"
)

// TestNowFollowsTheClock: what to do now is said of this minute, not of the last reading,
// and looking changes nothing.
func TestNowFollowsTheClock(t *testing.T) {
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	p := planned(t, h, party(t), asYAML...)
	base := "/v1/plans/" + p.ID
	log, at := cookLog(p)
	clock.set(at.Format(time.RFC3339))
	kept := ask(t, h, http.MethodPost, base+"/readings", []byte(log), "Content-Type", "text/csv")
	if kept.StatusCode != http.StatusOK {
		t.Fatalf("%d %s", kept.StatusCode, kept.body)
	}
	first := ask(t, h, http.MethodGet, base+"/now", nil)
	clock.set(at.Add(5 * time.Hour).Format(time.RFC3339))
	later := ask(t, h, http.MethodGet, base+"/now", nil)
	for what, a := range map[string]answer{"after the reading": first, "five hours later": later} {
		text := string(a.body)
		if a.StatusCode != http.StatusOK || !strings.Contains(text, "Do now\n") || !strings.Contains(text, "118 °F") {
			t.Errorf("%s: %d\n%s", what, a.StatusCode, text)
		}
		for line := range strings.Lines(text) {
			if len([]rune(line)) > 81 {
				t.Errorf("%s: wider than 80 columns: %s", what, line)
			}
		}
	}
	if string(first.body) == string(later.body) {
		t.Error("five hours change nothing")
	}
	if again := ask(t, h, http.MethodGet, base, nil); string(again.body) != string(kept.body) {
		t.Error("a look has changed the plan")
	}
	t.Logf("\n%s\n%s", first.body, later.body)
	if far := ask(t, h, http.MethodGet, base+"/now?at=2027-01-01T00:00:00Z", nil); far.StatusCode != http.StatusUnprocessableEntity {
		t.Errorf("half a year off: %d", far.StatusCode)
	}
}

// TestNowOfADayThatCannotBeHad says what would help.
func TestNowOfADayThatCannotBeHad(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	p := planned(t, h, []byte(strings.Replace(burgers, `"format": 1,`, `"format": 1, "earliest": "17:45",`, 1)), "Content-Type", "application/json")
	a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+"/now", nil)
	if p.Feasible || a.StatusCode != http.StatusOK || !strings.Contains(string(a.body), "17:45") && !strings.Contains(string(a.body), "5:45") {
		t.Errorf("%v %d %s", p.Feasible, a.StatusCode, a.body)
	}
}
