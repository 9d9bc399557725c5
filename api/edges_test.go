package api

import (
	"context"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// RFC 9110, 9.1 and 9.3.2: HEAD is answered where GET is, with the same header and
// without a body.
func TestHEADIsGETWithoutABody(t *testing.T) {
	cfg, _ := testConfig()
	cfg.Document = []byte("openapi: 3.1.0\ninfo: {title: a, version: '1'}\npaths: {}\n")
	h := New(cfg).Handler()
	a := ask(t, h, http.MethodPost, "/v1/plans", []byte(burgers), asJSON...)
	base, feed := a.Header.Get("Location"), linkTarget.FindStringSubmatch(a.Header.Get("Link"))[1]
	for _, target := range []string{base, base + ".ics", base + "/due", base + "/now", base + "/readings", base + "/feed", feed, feed + ".svg", feed + "/due", "/v1/cuts", "/v1/layouts", "/v1/entries", "/v1/schemas/plan", "/healthz", "/readyz",
		"/openapi.yaml", "/openapi.html", "/v1/forecasts?cut=brisket&weight=12+lb", base + "/nothing", "/v1/forecasts?cut=x"} {
		get, head := ask(t, h, http.MethodGet, target, nil), ask(t, h, http.MethodHead, target, nil)
		for _, name := range []string{"Content-Type", "Content-Length", "ETag", "Vary"} {
			if name == "Content-Length" && get.StatusCode >= 400 { // the id of the request is in the body
				continue
			}
			if get.Header.Get(name) != head.Header.Get(name) {
				t.Errorf("%s: %s is %q and %q", target, name, get.Header.Get(name), head.Header.Get(name))
			}
		}
		if get.StatusCode != head.StatusCode || len(head.body) > 0 {
			t.Errorf("%s: %d and %d, a body of %d bytes", target, get.StatusCode, head.StatusCode, len(head.body))
		}
	}
	stream := ask(t, h, http.MethodHead, base+"/stream", nil) // it must come back at all
	if stream.StatusCode != http.StatusOK || stream.Header.Get("Content-Type") != typeEvents || len(stream.body) > 0 {
		t.Errorf("stream: %d %s", stream.StatusCode, stream.body)
	}
	if a := ask(t, h, http.MethodHead, base+"/remedies/1", nil); a.StatusCode != http.StatusMethodNotAllowed {
		t.Errorf("where there is no GET: %d", a.StatusCode)
	}
}

// Clients that wait for a challenge get the one they can answer.
func TestChallenges(t *testing.T) {
	cfg, _ := testConfig()
	cfg.Token = "a-secret-of-the-terrace"
	a := ask(t, New(cfg).Handler(), http.MethodGet, "/v1/cuts", nil)
	offered := a.Header.Values("WWW-Authenticate")
	if len(offered) != 2 || !strings.HasPrefix(offered[0], `Basic realm="`) || !strings.HasPrefix(offered[1], `Bearer realm="`) {
		t.Errorf("%q", offered)
	}
}

// Lists that never change have a tag; so have they as a kept answer.
func TestListsAreKept(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	for _, target := range []string{"/v1/cuts", "/v1/layouts", "/v1/entries", "/v1/schemas/request"} {
		tag := ask(t, h, http.MethodGet, target, nil).Header.Get("ETag")
		if a := ask(t, h, http.MethodGet, target, nil, "If-None-Match", tag); tag == "" || a.StatusCode != http.StatusNotModified {
			t.Errorf("%s: %d, tag %q", target, a.StatusCode, tag)
		}
	}
	var kinds []string
	for _, e := range entryKinds() {
		kinds = append(kinds, string(e.Kind))
	}
	if len(kinds) != len(schedule.EntryForms()) {
		t.Errorf("%v", kinds)
	}
	for _, e := range openAPI(t).Components.Schemas["LogEntry"].Value.Properties["kind"].Value.Enum {
		if !slices.Contains(kinds, e.(string)) {
			t.Errorf("the document has the kind %v, which the library has not", e)
		}
	}
	if n := len(openAPI(t).Components.Schemas["LogEntry"].Value.Properties["kind"].Value.Enum); n != len(kinds) {
		t.Errorf("the document has %d kinds of entries, the library %d", n, len(kinds))
	}
}

// A disk that is full: writes say so, and so does the check; reads go on.
func TestAFullDisk(t *testing.T) {
	cfg, _ := testConfig()
	cfg.Probe = time.Nanosecond
	h := New(cfg).Handler()
	p := planned(t, h, []byte(burgers), asJSON...)
	full := &fullStore{mapStore: cfg.Store.(*mapStore)}
	cfg.Store = full
	h = New(cfg).Handler()
	for _, c := range []struct {
		says error
		want map[string]int
	}{{ErrFull, map[string]int{"POST /v1/plans": 507, "GET /readyz": 507, "GET /v1/plans/" + p.ID: 200, "GET /healthz": 200}},
		{ErrReadOnly, map[string]int{"POST /v1/plans": 503, "GET /readyz": 503, "GET /v1/plans/" + p.ID: 200}}} {
		full.says = c.says
		for what, want := range c.want {
			method, target, _ := strings.Cut(what, " ")
			if a := ask(t, h, method, target, []byte(burgers), asJSON...); a.StatusCode != want {
				t.Errorf("%v, %s: %d %s", c.says, what, a.StatusCode, a.body)
			}
		}
	}
}

type fullStore struct {
	*mapStore
	says error
}

func (f *fullStore) Create(context.Context, Record, Revision) error { return f.says }
func (f *fullStore) Ready(context.Context) error                    { return f.says }

// racingStore lets somebody else revise the plan before each of the first appends.
type racingStore struct {
	*mapStore
	races int
}

func (r *racingStore) Append(ctx context.Context, id string, rows [][]byte, next Revision, facts Facts) error {
	if r.races > 0 {
		r.races--
		other := next
		other.JSON = r.mapStore.revisions[id][0].JSON
		if err := r.mapStore.Append(ctx, id, nil, other, facts); err != nil {
			return err
		}
	}
	return r.mapStore.Append(ctx, id, rows, next, facts)
}

// Who only adds readings needs no precondition: the call is made up anew.
func TestAddingNeedsNoPrecondition(t *testing.T) {
	cfg, clock := testConfig()
	clock.set("2027-07-03T16:00:00-05:00")
	racing := &racingStore{mapStore: cfg.Store.(*mapStore)}
	cfg.Store = racing
	h := New(cfg).Handler()
	p := planned(t, h, []byte(burgers), asJSON...)
	clock.set("2027-07-03T17:40:00-05:00")
	racing.races = 3
	q := planIn(t, ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/readings", []byte(entry("17:30:00", "grate", "370 F")), asJSON...))
	if q.Revision != 4 || len(q.Log) != 1 {
		t.Errorf("revision %d, log of %d", q.Revision, len(q.Log))
	}
	racing.races = 1
	a := ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/readings", []byte(entry("17:31:00", "grate", "371 F")), "Content-Type", typeJSON, "If-Match", `"4-x"`)
	if a.StatusCode != http.StatusPreconditionFailed {
		t.Errorf("with If-Match: %d", a.StatusCode)
	}
	racing.races = 1000
	if a := ask(t, h, http.MethodPost, "/v1/plans/"+p.ID+"/readings", []byte(entry("17:32:00", "grate", "372 F")), asJSON...); a.StatusCode != http.StatusConflict {
		t.Errorf("against a thousand others: %d", a.StatusCode)
	}
}

// One client leaves places for the others; an event source is let go so that it comes
// back.
func TestStreamsAreShared(t *testing.T) {
	cfg, clock := testConfig()
	cfg.Streams, cfg.StreamsEach = 3, 2
	cfg.Store.(*mapStore).revisions[testID] = []Revision{keptPlan(t, stepPlan(0, map[string]int{"a": 10}), noon(0))}
	clock.set(noon(5).Format(time.RFC3339))
	s := New(cfg)
	open := func(address string) {
		r := httptest.NewRequest(http.MethodGet, "/v1/plans/"+testID+"/stream", nil)
		r.RemoteAddr = address
		before := s.taken()
		go s.Handler().ServeHTTP(httptest.NewRecorder(), r)
		for s.taken() == before {
			time.Sleep(time.Millisecond)
		}
	}
	asked := func(address, accept string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(http.MethodGet, "/v1/plans/"+testID+"/stream", nil)
		r.RemoteAddr = address
		r.Header.Set("Accept", accept)
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, r)
		return w
	}
	open("192.0.2.7:1")
	open("192.0.2.7:2")
	if w := asked("192.0.2.7:3", "*/*"); w.Code != http.StatusServiceUnavailable || w.Header().Get("Retry-After") == "" {
		t.Errorf("the third of one client: %d", w.Code)
	}
	open("192.0.2.8:1")
	if w := asked("192.0.2.9:1", "*/*"); w.Code != http.StatusServiceUnavailable {
		t.Errorf("beyond all: %d", w.Code)
	}
	if w := asked("192.0.2.9:1", typeEvents); w.Code != http.StatusOK || !strings.HasPrefix(w.Body.String(), "retry: ") || w.Header().Get("Retry-After") == "" {
		t.Errorf("an event source: %d %s", w.Code, w.Body)
	}
	s.CloseStreams()
}
