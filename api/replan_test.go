package api

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strings"
	"testing"

	"example.com/cookday/schedule"
)

func stepIDs(p schedule.Plan) map[string]schedule.Step {
	ids := map[string]schedule.Step{}
	for _, s := range p.Steps {
		ids[s.ID] = s
	}
	return ids
}

// A request is changed in place: the plan keeps its id, the steps theirs.
func TestRequestIsChangedInPlace(t *testing.T) {
	_, clock, h, p := burgersUnderWay(t)
	base := "/v1/plans/" + p.ID
	tag := ask(t, h, http.MethodGet, base, nil).Header.Get("ETag")
	later := []byte(strings.Replace(burgers, "18:00", "18:30", 1))
	if a := ask(t, h, http.MethodPut, base, later, asJSON...); a.StatusCode != http.StatusPreconditionRequired {
		t.Errorf("without If-Match: %d", a.StatusCode)
	}
	matched := append([]string{"If-Match", tag}, asJSON...)
	put := ask(t, h, http.MethodPut, base, later, matched...)
	q := planIn(t, put)
	if q.ID != p.ID || q.Revision != 1 || !q.Feasible || q.ServeAt.Sub(p.ServeAt).Minutes() != 30 {
		t.Errorf("id %s, revision %d, served at %s", q.ID, q.Revision, q.ServeAt)
	}
	before, shared := stepIDs(p), 0
	for id, s := range stepIDs(q) {
		if old, ok := before[id]; ok && s.At.Sub(old.At).Minutes() == 30 {
			shared++
		}
	}
	if shared != len(p.Steps) {
		t.Errorf("%d of %d steps moved by half an hour under their ids", shared, len(p.Steps))
	}
	own, err := json.Marshal(q.Request) // as a client that reads, edits and puts back has it
	if err != nil || q.Request.ID != p.ID {
		t.Fatalf("%s %v", own, err)
	}
	if a := ask(t, h, http.MethodPut, base, own, "If-Match", `"1-x"`, "Content-Type", typeJSON); a.StatusCode != http.StatusOK {
		t.Errorf("its own request: %d %s", a.StatusCode, a.body)
	}
	if a := ask(t, h, http.MethodPut, base, later, matched...); a.StatusCode != http.StatusPreconditionFailed {
		t.Errorf("stale: %d", a.StatusCode)
	}
	if a := ask(t, h, http.MethodGet, base+"?revision=0", nil); planIn(t, a).ServeAt != p.ServeAt {
		t.Error("the past was changed")
	}
	// With a log the day is followed through it.
	clock.set("2027-07-03T17:45:00-05:00")
	logged := ask(t, h, http.MethodPost, base+"/readings", []byte(entry("17:40:00", "lit", "")), asJSON...)
	later = []byte(strings.Replace(burgers, "18:00", "19:00", 1))
	r := planIn(t, ask(t, h, http.MethodPut, base, later, "If-Match", logged.Header.Get("ETag"), "Content-Type", typeJSON))
	if r.Revision != 4 || len(r.Log) != 1 || r.ServeAt.Format("15:04") != "19:00" {
		t.Errorf("revision %d, log %v, served at %s", r.Revision, r.Log, r.ServeAt)
	}
	fired := planIn(t, ask(t, h, http.MethodPost, base+"/readings", []byte(`[{"time": "2027-07-03T17:44:00-05:00", "kind": "on", "dish": "burgers"}]`), asJSON...))
	chicken := []byte(strings.NewReplacer("Burgers", "Chicken", `"burger"`, `"chicken-spatchcock"`, "6 oz", "4 lb", `"count": 4`, `"count": 1`, "18:00", "21:00").Replace(burgers))
	a := ask(t, h, http.MethodPut, base, chicken, "If-Match", fmt.Sprintf(`"%d-x"`, fired.Revision), "Content-Type", typeJSON)
	if a.StatusCode != http.StatusConflict || !strings.Contains(string(a.body), "burgers") {
		t.Errorf("a dish of the log is left out: %d %s", a.StatusCode, a.body)
	}
	for name, body := range map[string]string{"no dishes": `{"format": 1}`, "an id": strings.Replace(burgers, `"format": 1`, `"format": 1, "id": "x"`, 1)} {
		if a := ask(t, h, http.MethodPut, base, []byte(body), "If-Match", "*", "Content-Type", typeJSON); a.StatusCode != http.StatusBadRequest {
			t.Errorf("%s: %d", name, a.StatusCode)
		}
	}
}

// Each remedy of a day that cannot be had leads to the plan it promises.
func TestRemediesAreTaken(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	impossible := []byte(strings.Replace(burgers, `"dishes"`, `"earliest": "17:30", "dishes"`, 1)) // the fire alone needs longer
	first := planned(t, h, impossible, asJSON...)
	if first.Feasible || len(first.Remedies) == 0 {
		t.Fatalf("feasible %v, %d remedies", first.Feasible, len(first.Remedies))
	}
	for i, m := range first.Remedies {
		made := ask(t, h, http.MethodPost, "/v1/plans", impossible, asJSON...)
		base := made.Header.Get("Location")
		target := fmt.Sprintf("%s/remedies/%d", base, i+1)
		if a := ask(t, h, http.MethodPost, target, nil); a.StatusCode != http.StatusPreconditionRequired {
			t.Errorf("without If-Match: %d", a.StatusCode)
		}
		q := planIn(t, ask(t, h, http.MethodPost, target, nil, "If-Match", made.Header.Get("ETag")))
		if !q.Feasible || !q.ServeAt.Equal(m.ServeAt) || q.Revision != 1 {
			t.Errorf("%s: feasible %v, served at %s, promised %s", m.Code, q.Feasible, q.ServeAt, m.ServeAt)
		}
		for number, want := range map[string]int{"0": 404, "99": 404, "x": 404} {
			if a := ask(t, h, http.MethodPost, base+"/remedies/"+number, nil, "If-Match", "*"); a.StatusCode != want {
				t.Errorf("remedy %s: %d", number, a.StatusCode)
			}
		}
	}
}

// While cooking, a remedy is an entry of the log.
func TestRemedyWhileCooking(t *testing.T) {
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	p := plannedTrial(t, h, party(t), asYAML...)
	log, now := cookLog(p)
	clock.set(now.Format("2006-01-02T15:04:05Z07:00"))
	base := "/v1/plans/" + p.ID
	dead := now.Add(-1e9).Format("2006-01-02T15:04:05Z07:00")
	a := ask(t, h, http.MethodPost, base+"/readings", []byte(log+dead+",,fire-out,\r\n"), "Content-Type", "text/csv")
	q := planIn(t, a)
	for i, m := range q.Remedies {
		if len(m.Edits) == 0 || m.Edits[0].Path != "log" {
			continue
		}
		r := planIn(t, ask(t, h, http.MethodPost, fmt.Sprintf("%s/remedies/%d", base, i+1), nil, "If-Match", a.Header.Get("ETag")))
		if r.Revision != 2 || len(r.Log) != len(q.Log)+1 {
			t.Errorf("%s: revision %d, log of %d after %d", m.Code, r.Revision, len(r.Log), len(q.Log))
		}
		return
	}
	t.Errorf("no remedy writes into the log: %+v", q.Remedies)
}
