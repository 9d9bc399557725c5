package api_test

import (
	"fmt"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store/testdb"
	"example.com/cookday/schedule"
)

// TestOtherProcessOfADatabase: what one process writes reaches the streams of the other
// within a second.
func TestOtherProcessOfADatabase(t *testing.T) {
	name := testdb.Schema(t)
	otherProcess(t, serving(t, name, api.Config{}), serving(t, name, api.Config{}), time.Second)
}

// reading posts one to a plan, with If-Match if a tag is given.
func reading(t *testing.T, service string, p schedule.Plan, minute int, tag string) (status int, newTag string) {
	at := p.ServeAt.Add(time.Duration(minute-500) * time.Minute)
	r, err := http.NewRequest(http.MethodPost, service+"/v1/plans/"+p.ID+"/readings", strings.NewReader(fmt.Sprintf(`[{"time": %q, "kind": "grate", "value": "370 F"}]`, at.Format(time.RFC3339))))
	if err != nil {
		t.Error(err)
		return 0, ""
	}
	r.Header.Set("Content-Type", "application/json")
	if tag != "" {
		r.Header.Set("If-Match", tag)
	}
	a, err := patient.Do(r)
	if err != nil {
		t.Error(err)
		return 0, ""
	}
	a.Body.Close()
	return a.StatusCode, a.Header.Get("ETag")
}

// TestRacesOfTwoProcesses: of two that write for the same revision, by two processes, one
// wins; those that only add never hear of it.
func TestRacesOfTwoProcesses(t *testing.T) {
	name := testdb.Schema(t)
	services := [2]string{serving(t, name, api.Config{Patience: time.Minute}), serving(t, name, api.Config{Patience: time.Minute})}
	const races = 300
	p := posted(t, services[0]+"/v1/plans?trial=true", burger)
	a, err := http.Get(services[0] + "/v1/plans/" + p.ID)
	if err != nil {
		t.Fatal(err)
	}
	a.Body.Close()
	tag := a.Header.Get("ETag")
	for race := range races {
		if race%50 == 49 { // a plan with a long log is slow
			p = posted(t, services[0]+"/v1/plans?trial=true", burger)
			tag = `"0-0"`
		}
		var codes [2]int
		var tags [2]string
		var both sync.WaitGroup
		for i := range 2 {
			both.Go(func() { codes[i], tags[i] = reading(t, services[i], p, 2*(race%50)+i, tag) })
		}
		both.Wait()
		won := -1
		for i, code := range codes {
			switch {
			case code == http.StatusOK && won < 0:
				won = i
			case code != http.StatusPreconditionFailed:
				t.Fatalf("race %d: %v", race, codes)
			}
		}
		if won < 0 {
			t.Fatalf("race %d has no winner: %v", race, codes)
		}
		tag = tags[won]
	}
	p = posted(t, services[0]+"/v1/plans?trial=true", burger)
	var all sync.WaitGroup
	for i := range 40 {
		all.Go(func() {
			if code, _ := reading(t, services[i%2], p, i, ""); code != http.StatusOK {
				t.Errorf("an additive post is answered with %d", code)
			}
		})
	}
	all.Wait()
	plans := opened(t, name)
	defer plans.Close()
	log, err := plans.Readings(t.Context(), p.ID)
	record, again := plans.Plan(t.Context(), p.ID)
	if err != nil || again != nil || len(log) != 40 || record.Newest != 40 {
		t.Errorf("%d readings, revision %d, %v %v", len(log), record.Newest, err, again)
	}
}

// TestTheServerGoesAndComes: while the database is away calls say so, health is well and
// readiness is not; when it is back everything that was acknowledged is there.
func TestTheServerGoesAndComes(t *testing.T) {
	testdb.Mortal(t)
	name := testdb.Schema(t)
	service := serving(t, name, api.Config{Probe: time.Millisecond})
	p := posted(t, service+"/v1/plans?trial=true", burger)
	acknowledged := 0
	for round := range 2 {
		back := make(chan bool)
		go func() { defer close(back); testdb.Kill(t, 2*time.Second) }()
		seen := map[int]int{}
		for minute, is := 0, true; is; minute++ {
			select {
			case <-back:
				is = false
			default:
			}
			code, _ := reading(t, service, p, 100*round+minute%90, "")
			if seen[code]++; code == http.StatusOK && minute < 90 {
				acknowledged++
			}
			for path, want := range map[string][]int{"/healthz": {200}, "/readyz": {200, 503}} {
				a, err := patient.Get(service + path)
				if err != nil || a.StatusCode != want[0] && a.StatusCode != want[len(want)-1] {
					t.Fatal(path, a, err)
				}
				a.Body.Close()
			}
			time.Sleep(20 * time.Millisecond)
		}
		t.Logf("answers while it went and came: %v", seen)
		for code := range seen {
			if code != http.StatusOK && code != http.StatusServiceUnavailable {
				t.Errorf("an answer of %d", code)
			}
		}
		if code, _ := reading(t, service, p, 100*round+95, ""); code != http.StatusOK {
			t.Errorf("it is back, and a reading is answered with %d", code)
		}
	}
	plans := opened(t, name)
	defer plans.Close()
	if log, err := plans.Readings(t.Context(), p.ID); err != nil || len(log) < acknowledged {
		t.Errorf("%d readings of %d acknowledged, %v", len(log), acknowledged, err)
	}
}
