package metrics

import (
	"context"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/prometheus/client_golang/prometheus/testutil/promlint"

	"example.com/cookday/api"
	"example.com/cookday/api/push"
	"example.com/cookday/api/store"
)

const (
	burger = `{"format": 1, "serve": {"date": "2027-07-03", "time": "18:00", "tz": "America/Chicago"},
 "grill": {"kind": "kettle", "diameter": "22 in"}, "dishes": [{"name": "Aunt May's burgers", "cut": "burger", "weight": "6 oz", "count": 4}]}`
	token = "a-token-of-this-test-only"
)

var errNo = errors.New("no")

// deaf is a way that takes nothing.
type deaf struct{ refuses bool }

func (deaf) Name() string                             { return "webhook http://bell.example 01234567" }
func (deaf) Send(context.Context, push.Message) error { return errNo }
func (d deaf) Refused(error) bool                     { return d.refuses }

// house is a service with metrics, on a store that can be broken.
func house(t *testing.T) (*Metrics, http.Handler, *brittle) {
	t.Helper()
	m, plans := New("1.2.3"), &brittle{Store: store.NewMemory()}
	if err := plans.OpenWay(t.Context(), deaf{}.Name(), time.Now()); err != nil {
		t.Fatal(err)
	}
	s := api.New(api.Config{Store: m.Store(plans), Observer: m, Metrics: m.Handler(), Token: token})
	m.Watch(s, plans)
	return m, s.Handler(), plans
}

type brittle struct {
	api.Store
	broken error
}

func (b *brittle) Plan(ctx context.Context, id string) (api.Record, error) {
	if b.broken != nil {
		return api.Record{}, b.broken
	}
	return b.Store.Plan(ctx, id)
}

func called(t *testing.T, h http.Handler, method, path, body string) *httptest.ResponseRecorder {
	t.Helper()
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Authorization", "Bearer "+token)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// line is the value of a sample, "" if it is not told.
func line(text, sample string) string {
	for l := range strings.Lines(text) {
		if rest, ok := strings.CutPrefix(l, sample+" "); ok {
			return strings.TrimSpace(rest)
		}
	}
	return ""
}

func TestWhatIsTold(t *testing.T) {
	m, h, plans := house(t)
	made := called(t, h, http.MethodPost, "/v1/plans?trial=true", burger)
	if made.Code != http.StatusCreated {
		t.Fatal(made.Body)
	}
	at := made.Header().Get("Location")
	called(t, h, http.MethodGet, at, "")
	called(t, h, http.MethodGet, at+".ics", "")
	called(t, h, http.MethodGet, "/v1/plans/00000000-0000-4000-8000-000000000000", "")
	called(t, h, "BREW", at, "")
	called(t, h, http.MethodGet, "/nowhere/"+token, "")
	plans.broken = api.ErrAway
	called(t, h, http.MethodGet, at, "")
	plans.broken = nil
	if err := m.Way(deaf{}).Send(t.Context(), push.Message{}); err == nil {
		t.Error("it was taken")
	}
	_ = m.Way(deaf{true}).Send(t.Context(), push.Message{})
	list, err := plans.TakeMarks(t.Context(), deaf{}.Name(), api.Lease{Owner: "me", Now: time.Now(), Until: time.Now().Add(time.Second)}, 1)
	if err != nil || len(list) != 1 {
		t.Fatal(list, err)
	}
	list[0].Tries, list[0].Next = 1, time.Now()
	if err := plans.PutMark(t.Context(), list[0], api.Lease{Owner: "me", Now: time.Now(), Until: time.Now()}, api.DeadLetter{Way: deaf{}.Name()}); err != nil {
		t.Fatal(err)
	}
	a := called(t, h, http.MethodGet, "/metrics", "")
	text := a.Body.String()
	if a.Code != http.StatusOK || !strings.HasPrefix(a.Header().Get("Content-Type"), "text/plain; version=0.0.4") {
		t.Fatalf("%d %s", a.Code, a.Header())
	}
	for sample, want := range map[string]string{
		`cookday_calls_total{method="GET",route="/v1/plans/:id",status="200"}`:               "2",
		`cookday_calls_total{method="GET",route="/v1/plans/:id",status="404"}`:               "1",
		`cookday_calls_total{method="GET",route="/v1/plans/:id",status="503"}`:               "1",
		`cookday_calls_total{method="POST",route="/v1/plans",status="201"}`:                  "1",
		`cookday_calls_total{method="other",route="(none)",status="405"}`:                    "1",
		`cookday_calls_total{method="GET",route="(none)",status="404"}`:                      "1",
		`cookday_call_seconds_count{route="/v1/plans"}`:                                      "1",
		`cookday_store_seconds_count{operation="create"}`:                                    "1",
		`cookday_store_faults_total{kind="away",operation="plan"}`:                           "1",
		`cookday_pushed_total{outcome="failed",way="webhook http://bell.example 01234567"}`:  "1",
		`cookday_pushed_total{outcome="refused",way="webhook http://bell.example 01234567"}`: "1",
		`cookday_outbox_waiting{way="webhook http://bell.example 01234567"}`:                 "1",
		`cookday_outbox_dead{way="webhook http://bell.example 01234567"}`:                    "1",
		`cookday_outbox_away`: "0", `cookday_streams_open`: "0", `cookday_streams_most`: "5000", `cookday_gate_busy{gate="light"}`: "0",
		`cookday_build_info{version="1.2.3"}`: "1",
	} {
		if got := line(text, sample); got != want {
			t.Errorf("%s is %q, want %s", sample, got, want)
		}
	}
	problems, err := promlint.New(strings.NewReader(text)).Lint()
	for _, p := range problems {
		if strings.HasPrefix(p.Metric, space) {
			t.Errorf("%s: %s", p.Metric, p.Text)
		}
	}
	if err != nil || len(text) < 3000 {
		t.Errorf("%d bytes, %v", len(text), err)
	}
}

var anID = regexp.MustCompile(`[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}`)

// TestNothingSecretIsTold: neither an id, nor the token, nor a name, nor what a stranger
// sends gets into a label; and nobody sees it who has no token.
func TestNothingSecretIsTold(t *testing.T) {
	_, h, _ := house(t)
	at := called(t, h, http.MethodPost, "/v1/plans?trial=true", burger).Header().Get("Location")
	feed := called(t, h, http.MethodGet, at+"/feed", "").Body.String()
	for _, path := range []string{at, at + ".html", at + "/due", at + "/now", at + "/feed", "/v1/feeds/" + anID.FindString(feed), "/x/" + strings.TrimPrefix(at, "/"), "/v1/plans?zebra=" + token, "/%00", "/v1/plans/" + token} {
		for _, method := range []string{http.MethodGet, http.MethodHead, http.MethodDelete + "X", http.MethodPut} {
			called(t, h, method, path, "{}")
		}
	}
	text := called(t, h, http.MethodGet, "/metrics", "").Body.String()
	if found := anID.FindString(text); found != "" {
		t.Errorf("an id is told: %s", found)
	}
	for _, secret := range []string{token, "May", "DELETEX", "zebra"} {
		if strings.Contains(text, secret) {
			t.Errorf("%q is told", secret)
		}
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/metrics", nil))
	if body, _ := io.ReadAll(w.Body); w.Code != http.StatusUnauthorized || strings.Contains(string(body), "cookday_calls_total") {
		t.Errorf("without a token: %d %s", w.Code, body)
	}
}

// TestAHearerStaysOne: a store that hears of other processes does so when it is measured.
func TestAHearerStaysOne(t *testing.T) {
	m := New("")
	if _, ok := m.Store(store.NewMemory()).(api.Hearer); ok {
		t.Error("memory hears of nobody")
	}
	if _, ok := m.Store(hearing{store.NewMemory()}).(api.Hearer); !ok {
		t.Error("it is deaf now")
	}
}

type hearing struct{ api.Store }

func (hearing) Heard() <-chan string { return nil }
