package api

import (
	"context"
	"encoding/json"
	"net/http"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
)

var nextPage = regexp.MustCompile(`^<([^>]+)>; rel="next"$`)

func TestPlansAreListedInPages(t *testing.T) {
	cfg, _ := testConfig()
	if a := ask(t, New(cfg).Handler(), http.MethodGet, "/v1/plans", nil); a.StatusCode != http.StatusForbidden {
		t.Errorf("without a token: %d %s", a.StatusCode, a.body)
	}
	cfg.Token = "a-secret-of-the-terrace"
	h := New(cfg).Handler()
	auth := []string{"Authorization", "Bearer " + cfg.Token}
	var made []string
	for range 5 {
		made = append(made, planned(t, h, []byte(burgers), append(asJSON, auth...)...).ID)
	}
	var seen []string
	for target := "/v1/plans?limit=2"; target != ""; {
		a := ask(t, h, http.MethodGet, target, nil, auth...)
		var page struct{ Plans []PlanEntry }
		if err := json.Unmarshal(a.body, &page); err != nil || a.StatusCode != http.StatusOK || len(page.Plans) > 2 {
			t.Fatalf("%d %s", a.StatusCode, a.body)
		}
		for _, p := range page.Plans {
			seen = append([]string{p.ID}, seen...) // the newest comes first
		}
		target = ""
		if m := nextPage.FindStringSubmatch(a.Header.Get("Link")); m != nil {
			target = m[1]
		}
	}
	if strings.Join(seen, " ") != strings.Join(made, " ") {
		t.Errorf("made %v, listed %v", made, seen)
	}
	for query, want := range map[string]int{"?limit=0": 400, "?limit=501": 400, "?limit=x": 400, "?after=nothing": 200, "?x=1": 400} {
		if a := ask(t, h, http.MethodGet, "/v1/plans"+query, nil, auth...); a.StatusCode != want {
			t.Errorf("%s: %d, want %d", query, a.StatusCode, want)
		}
	}
	if a := ask(t, h, http.MethodGet, "/v1/plans", nil); a.StatusCode != http.StatusUnauthorized {
		t.Errorf("without the token: %d", a.StatusCode)
	}
}

// A call that is repeated makes one plan, also if both come at once.
func TestIdempotencyKey(t *testing.T) {
	cfg, clock := testConfig()
	h := New(cfg).Handler()
	keyed := append([]string{"Idempotency-Key", "saturday"}, asJSON...)
	answers := make([]answer, 8)
	var wg sync.WaitGroup
	for i := range answers {
		wg.Go(func() { answers[i] = ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), keyed...) })
	}
	wg.Wait()
	for _, a := range answers[1:] {
		if a.StatusCode != http.StatusCreated || string(a.body) != string(answers[0].body) || a.Header.Get("Location") != answers[0].Header.Get("Location") || a.Header.Get("Link") == "" {
			t.Errorf("%d %s", a.StatusCode, a.Header.Get("Location"))
		}
	}
	if n := len(cfg.Store.(*mapStore).records); n != 1 {
		t.Errorf("%d plans were made", n)
	}
	clock.set("2027-07-03T17:12:00-05:00")
	planIn(t, ask(t, h, http.MethodPost, answers[0].Header.Get("Location")+"/readings", []byte(entry("17:11:00", "lit", "")), asJSON...))
	if again := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), keyed...); string(again.body) != string(answers[0].body) {
		t.Error("the answer is another one after a revision")
	}
	other := ask(t, h, http.MethodPost, "/v1/plans", []byte(strings.Replace(burgers, "6 oz", "5 oz", 1)), keyed...)
	if other.StatusCode != http.StatusUnprocessableEntity {
		t.Errorf("another body: %d %s", other.StatusCode, other.body)
	}
	if trial := ask(t, h, http.MethodPost, "/v1/plans?trial=true", []byte(burgers), keyed...); trial.StatusCode != http.StatusUnprocessableEntity {
		t.Errorf("another query: %d", trial.StatusCode)
	}
	if bad := ask(t, h, http.MethodPost, "/v1/plans", []byte(`{}`), "Idempotency-Key", "sunday", "Content-Type", typeJSON); bad.StatusCode != http.StatusBadRequest {
		t.Errorf("a faulty body: %d", bad.StatusCode)
	}
	if good := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), "Idempotency-Key", "sunday", "Content-Type", typeJSON); good.StatusCode != http.StatusCreated {
		t.Errorf("mended under the same key: %d", good.StatusCode)
	}
	long := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), "Idempotency-Key", strings.Repeat("x", 256), "Content-Type", typeJSON)
	if long.StatusCode != http.StatusBadRequest {
		t.Errorf("a long key: %d", long.StatusCode)
	}
}

// A plan goes so long after its meal and its last change, whichever is later.
func TestOldPlansGo(t *testing.T) {
	cfg, clock := testConfig()
	cfg.Keep = 24 * time.Hour
	s := New(cfg)
	p := planned(t, s.Handler(), []byte(burgers), asJSON...) // served on the 3rd at 23:00 UTC
	for _, c := range []struct {
		now  string
		want int
	}{{"2027-07-04T22:59:00Z", 200}, {"2027-07-04T23:01:00Z", 404}} {
		clock.set(c.now)
		s.sweep(context.Background())
		if a := ask(t, s.Handler(), http.MethodGet, "/v1/plans/"+p.ID, nil); a.StatusCode != c.want {
			t.Errorf("%s: %d, want %d", c.now, a.StatusCode, c.want)
		}
	}
}
