package api

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// problemIn reads a problem document.
func problemIn(t *testing.T, a answer) (p Problem) {
	t.Helper()
	if err := json.Unmarshal(a.body, &p); err != nil {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	return p
}

func planIn(t *testing.T, a answer) schedule.Plan {
	t.Helper()
	p, err := schedule.ReadPlan(a.body)
	if err != nil || a.StatusCode >= 300 {
		t.Fatalf("%d %.300s: %v", a.StatusCode, a.body, err)
	}
	return p
}

// burgersUnderWay are planned two hours before they are eaten, at 18:00 in Chicago.
func burgersUnderWay(t *testing.T) (Config, *testClock, http.Handler, schedule.Plan) {
	t.Helper()
	cfg, clock := testConfig()
	clock.set("2027-07-03T16:00:00-05:00")
	h := New(cfg).Handler()
	return cfg, clock, h, planned(t, h, []byte(burgers), asJSON...)
}

func entry(clock, kind, value string) string {
	return fmt.Sprintf(`{"time": "2027-07-03T%s-05:00", "kind": %q, "value": %q}`, clock, kind, value)
}

// Clocks of probes and of services differ; the limit is two minutes (assumption).
func TestReadingsALittleAhead(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	clock.set("2027-07-03T17:20:00-05:00")
	target := "/v1/plans/" + p.ID + "/readings"
	for at, want := range map[string]int{"17:20:01": 200, "17:22:00": 200, "17:22:01": 400, "23:00:00": 400} {
		a := ask(t, h, http.MethodPost, target, []byte("["+entry("17:19:00", "grate", "370 F")+","+entry(at, "grate", "371 F")+"]"), asJSON...)
		if a.StatusCode != want {
			t.Errorf("%s: %d %s", at, a.StatusCode, a.body)
		}
		if want == 400 && problemIn(t, a).Errors[0].Pointer != "/1/time" {
			t.Errorf("%s: pointer %q", at, problemIn(t, a).Errors[0].Pointer)
		}
	}
	one := ask(t, h, http.MethodPost, target, []byte(entry("19:00:00", "grate", "370 F")), asJSON...)
	if problemIn(t, one).Errors[0].Pointer != "/time" {
		t.Errorf("one object: %s", one.body)
	}
	csv := ask(t, h, http.MethodPost, target, []byte("time,kind,value\n17:19,grate,370 F\n19:00,grate,370 F\n"), "Content-Type", "text/csv")
	if f := problemIn(t, csv).Errors; csv.StatusCode != 400 || len(f) != 1 || f[0].Line != 3 || f[0].Pointer != "" {
		t.Errorf("table: %s", csv.body)
	}
}

// A wrong instant must not shut a plan for those who are right.
func TestAWrongInstantDoesNotPoisonAPlan(t *testing.T) {
	cfg, clock, h, p := burgersUnderWay(t)
	target := "/v1/plans/" + p.ID + "/readings"
	a := ask(t, h, http.MethodPost, target+"?at=2027-07-03T23:00:00-05:00", []byte(entry("22:00:00", "grate", "370 F")), asJSON...)
	if a.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(string(a.body), "trial=true") {
		t.Errorf("at far ahead: %d %s", a.StatusCode, a.body)
	}
	// The service's own clock is wrong for a while, then right again.
	clock.set("2027-07-03T17:55:00-05:00")
	wrong := planIn(t, ask(t, h, http.MethodPost, target, []byte(entry("17:54:00", "grate", "371 F")), asJSON...))
	clock.set("2027-07-03T17:12:00-05:00")
	right := planIn(t, ask(t, h, http.MethodPost, target, []byte(entry("17:11:00", "lit", "")), asJSON...))
	if right.Revision != wrong.Revision+1 || len(right.Log) != 2 {
		t.Errorf("revision %d, log of %d", right.Revision, len(right.Log))
	}
	history, err := cfg.Store.History(t.Context(), p.ID, -1, 10)
	if err != nil || history[2].At.Before(history[1].At) {
		t.Errorf("revisions are kept at %v and %v: streams go by their order", history[1].At, history[2].At)
	}
}

// A cook takes back what was wrong; it stays listed and changes nothing.
func TestEntriesAreWithdrawn(t *testing.T) {
	cfg, clock, h, p := burgersUnderWay(t)
	clock.set("2027-07-03T17:20:00-05:00")
	base := "/v1/plans/" + p.ID
	planIn(t, ask(t, h, http.MethodPost, base+"/readings", []byte("["+entry("17:12:00", "lit", "")+","+entry("17:18:00", "grate", "90 F")+"]"), asJSON...))
	var list struct{ Entries []LogEntry }
	read := func() []LogEntry {
		a := ask(t, h, http.MethodGet, base+"/readings", nil)
		if err := json.Unmarshal(a.body, &list); err != nil || a.StatusCode != http.StatusOK {
			t.Fatalf("%d %s", a.StatusCode, a.body)
		}
		return list.Entries
	}
	log := read()
	if len(log) != 2 || log[0].Kind != "lit" || log[1].TempC == nil || *log[1].TempC < 32 || *log[1].TempC > 33 { // 90 F are 32.2 degC
		t.Fatalf("%+v", log)
	}
	after := planIn(t, ask(t, h, http.MethodDelete, fmt.Sprintf("%s/readings/%d", base, log[1].ID), nil))
	if after.Revision != 2 || len(after.Log) != 1 || after.Log[0].Kind != "lit" {
		t.Errorf("revision %d, log %+v", after.Revision, after.Log)
	}
	if log = read(); !log[1].Withdrawn || log[0].Withdrawn {
		t.Errorf("%+v", log)
	}
	again := planIn(t, ask(t, h, http.MethodDelete, fmt.Sprintf("%s/readings/%d", base, log[1].ID), nil))
	if again.Revision != 2 {
		t.Errorf("withdrawn twice: revision %d", again.Revision)
	}
	for entry, want := range map[string]int{"9": 404, "0": 404, "x": 404, "-1": 404} {
		if a := ask(t, h, http.MethodDelete, base+"/readings/"+entry, nil); a.StatusCode != want {
			t.Errorf("entry %s: %d", entry, a.StatusCode)
		}
	}
	back := planIn(t, ask(t, h, http.MethodPost, base+"/readings", []byte(entry("17:18:00", "grate", "90 F")), asJSON...))
	if back.Revision != 3 || len(back.Log) != 2 {
		t.Errorf("logged again: revision %d, log %+v", back.Revision, back.Log)
	}
	bare := planIn(t, ask(t, h, http.MethodDelete, base+"/readings/1", nil))
	bare = planIn(t, ask(t, h, http.MethodDelete, base+"/readings/4", nil))
	if len(bare.Log) != 0 || !bare.Feasible {
		t.Errorf("nothing is left of the log: %+v", bare.Log)
	}
	if rows, err := cfg.Store.Readings(t.Context(), p.ID); err != nil || len(rows) != 6 {
		t.Errorf("%d rows, %v: three entries and three withdrawals", len(rows), err)
	}
}

// Dinner is moved, and moved back.
func TestServingMovesBack(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	target := "/v1/plans/" + p.ID + "/readings"
	moved := func(at, to string) schedule.Plan {
		clock.set("2027-07-03T" + at + "-05:00")
		return planIn(t, ask(t, h, http.MethodPost, target, []byte(entry(at, "serving-moved", to)), asJSON...))
	}
	for i, c := range []struct{ at, to string }{{"16:10:00", "19:00"}, {"16:20:00", "18:00"}, {"16:30:00", "19:00"}, {"16:40:00", "18:00"}} {
		got := moved(c.at, c.to)
		if want := c.to; got.ServeAt.Format("15:04") != want {
			t.Errorf("move %d: served at %s, want %s", i, got.ServeAt.Format("15:04"), want)
		}
	}
}

// An hour before the meal a brisket of 12 lb cannot be had, burgers can; a meal that is
// past is refused but for a trial.
func TestTooLate(t *testing.T) {
	brisket := strings.NewReplacer(`"burger"`, `"brisket"`, "6 oz", "12 lb", `"count": 4`, `"count": 1`).Replace(burgers)
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	now := time.Date(2027, 7, 3, 22, 0, 0, 0, time.UTC) // 17:00 in Chicago
	clock.set(now.Format(time.RFC3339))
	p := planned(t, h, []byte(brisket), asJSON...)
	if p.Feasible || len(p.Remedies) == 0 {
		t.Errorf("feasible %v, %d remedies", p.Feasible, len(p.Remedies))
	}
	for _, r := range p.Remedies {
		if r.LightAt != nil && r.LightAt.Before(now) {
			t.Errorf("a remedy lights at %s, before %s", r.LightAt, now)
		}
	}
	b := planned(t, h, []byte(burgers), asJSON...)
	if !b.Feasible || b.Steps[0].At.Before(now) {
		t.Errorf("feasible %v, first step at %s", b.Feasible, b.Steps[0].At)
	}
	if trial := plannedTrial(t, h, []byte(brisket), asJSON...); !trial.Feasible {
		t.Error("a trial goes by the clock")
	}
	clock.set("2027-07-03T18:00:00-05:00")
	a := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), asJSON...)
	if a.StatusCode != http.StatusUnprocessableEntity || !strings.Contains(string(a.body), "trial=true") {
		t.Errorf("past: %d %s", a.StatusCode, a.body)
	}
	if a := ask(t, h, http.MethodPost, "/v1/plans?trial=perhaps", []byte(burgers), asJSON...); a.StatusCode != http.StatusBadRequest {
		t.Errorf("trial=perhaps: %d", a.StatusCode)
	}
}

// What is told of instants is on the clock of the plan and in whole seconds.
func TestInstantsAreThePlans(t *testing.T) {
	cfg, clock, h, p := burgersUnderWay(t)
	clock.mu.Lock()
	clock.t = clock.t.Add(123_456_789)
	clock.mu.Unlock()
	a := ask(t, h, http.MethodGet, "/v1/plans/"+p.ID+"/due", nil)
	if !strings.Contains(string(a.body), `"at":"2027-07-03T16:00:00-05:00","within_minutes"`) {
		t.Errorf("%.300s", a.body)
	}
	if record, err := cfg.Store.Plan(t.Context(), p.ID); err != nil || record.Trial || record.NotBefore.IsZero() {
		t.Errorf("%+v %v", record, err)
	}
}
