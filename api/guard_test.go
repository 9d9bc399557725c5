package api

import (
	"bytes"
	"context"
	"encoding/base64"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"strings"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

func TestTokenAndNames(t *testing.T) {
	cfg, _ := testConfig()
	cfg.Token, cfg.Hosts = "a-secret-of-the-terrace", []string{"localhost", "::1", "example.com"} // example.com is what httptest asks for
	h := New(cfg).Handler()
	for header, want := range map[string]int{"": 401, "Bearer a-secret-of-the-terrace": 200, "bearer a-secret-of-the-terrace": 200, "Bearer a-secret-of-the-terrac": 401, "Basic a-secret-of-the-terrace": 401,
		"Basic " + base64.StdEncoding.EncodeToString([]byte("calendar:a-secret-of-the-terrace")): 200, "Basic " + base64.StdEncoding.EncodeToString([]byte("a-secret-of-the-terrace:")): 401, "Bearer ": 401} {
		a := ask(t, h, http.MethodGet, "/v1/cuts", nil, "Authorization", header)
		if a.StatusCode != want || want == 401 && a.Header.Get("WWW-Authenticate") == "" {
			t.Errorf("%q: %d, want %d", header, a.StatusCode, want)
		}
	}
	if a := ask(t, h, http.MethodGet, "/healthz", nil); a.StatusCode != http.StatusOK {
		t.Errorf("health needs no token: %d", a.StatusCode)
	}
	for host, want := range map[string]int{"localhost:8018": 200, "[::1]:8018": 200, "LOCALHOST": 200, "evil.example:8018": 421, "": 421} {
		r := httptest.NewRequest(http.MethodGet, "/healthz", nil)
		r.Host = host
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != want {
			t.Errorf("host %q: %d, want %d", host, w.Code, want)
		}
	}
}

func TestMethodsAndAddresses(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	a := ask(t, h, http.MethodPatch, "/v1/plans/"+testID, nil)
	if a.StatusCode != http.StatusMethodNotAllowed || !strings.Contains(a.Header.Get("Allow"), "DELETE") || !strings.Contains(a.Header.Get("Allow"), "HEAD") {
		t.Errorf("patch: %d, Allow %q", a.StatusCode, a.Header.Get("Allow"))
	}
	for _, target := range []string{"/", "/v1", "/v1/plans/", "/v1/plans/x", "/v1/plans/" + strings.ToUpper("abcdefab-0000-4000-8000-000000000000"),
		"/v1/plans/" + testID + "x", "/v1/plans/" + testID + ".ics/due", "/v1/plans/..%2f..%2fetc", "/v1/cuts/", "/v2/cuts", "/v1/plans/%00"} {
		if a := ask(t, h, http.MethodGet, target, nil); a.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %d", target, a.StatusCode)
		}
	}
}

func TestRequestIDs(t *testing.T) {
	cfg, _ := testConfig()
	h := New(cfg).Handler()
	if a := ask(t, h, http.MethodGet, "/healthz", nil, "X-Request-Id", "flow-7"); a.Header.Get("X-Request-Id") != "flow-7" {
		t.Errorf("got %q", a.Header.Get("X-Request-Id"))
	}
	for _, bad := range []string{"", "a b", strings.Repeat("x", 65), "a\"b"} {
		if a := ask(t, h, http.MethodGet, "/healthz", nil, "X-Request-Id", bad); len(a.Header.Get("X-Request-Id")) != 36 {
			t.Errorf("%q: got %q", bad, a.Header.Get("X-Request-Id"))
		}
	}
}

// slowPlanner waits until it is let go.
type slowPlanner struct {
	Library
	started, release chan struct{}
}

func (p slowPlanner) Make(ctx context.Context, r schedule.Request, notBefore time.Time) (schedule.Plan, error) {
	p.started <- struct{}{}
	select {
	case <-p.release:
		return p.Library.Make(ctx, r, notBefore)
	case <-ctx.Done():
		return schedule.Plan{}, ctx.Err()
	}
}

func TestSolvesAreCapped(t *testing.T) {
	cfg, _ := testConfig()
	planner := slowPlanner{started: make(chan struct{}), release: make(chan struct{})}
	cfg.Planner, cfg.Solves, cfg.Queue, cfg.Patience = planner, 1, 1, 30*time.Millisecond
	s := New(cfg)
	codes := make(chan int, 3)
	post := func() {
		w := httptest.NewRecorder()
		r := httptest.NewRequest(http.MethodPost, "/v1/plans", strings.NewReader(burgers))
		r.Header.Set("Content-Type", typeJSON)
		s.Handler().ServeHTTP(w, r)
		if w.Code == http.StatusServiceUnavailable && w.Header().Get("Retry-After") == "" {
			t.Error("no Retry-After")
		}
		codes <- w.Code
	}
	go post()
	<-planner.started // holds the only place
	go post()         // may wait, but not for ever
	if code := <-codes; code != http.StatusServiceUnavailable {
		t.Errorf("who waited too long: %d", code)
	}
	for range 2 {
		go post() // one may wait, the other is sent away at once
	}
	for range 2 {
		if code := <-codes; code != http.StatusServiceUnavailable {
			t.Errorf("beyond the queue: %d", code)
		}
	}
	close(planner.release)
	if code := <-codes; code != http.StatusCreated {
		t.Errorf("who held the place: %d", code)
	}
	cfg.SolveTime = time.Millisecond
	cfg.Planner = slowPlanner{started: make(chan struct{}, 1), release: make(chan struct{})}
	if a := ask(t, New(cfg).Handler(), http.MethodPost, "/v1/plans", []byte(burgers), asJSON...); a.StatusCode != http.StatusServiceUnavailable {
		t.Errorf("a plan that takes too long: %d", a.StatusCode)
	}
}

type brokenPlanner struct{ Library }

func (brokenPlanner) Make(context.Context, schedule.Request, time.Time) (schedule.Plan, error) {
	panic("a bug")
}
func (brokenPlanner) Fire(context.Context, schedule.FireInquiry) (schedule.Steer, error) {
	panic("nothing asks for it here")
}
func (brokenPlanner) Learn(context.Context, schedule.Plan, []schedule.Entry) (schedule.GrillLesson, error) {
	panic("nothing asks for it here")
}
func (brokenPlanner) LearnFire(context.Context, schedule.FireInquiry) (schedule.GrillLesson, error) {
	panic("nothing asks for it here")
}
func (brokenPlanner) Forecast(context.Context, schedule.Inquiry) (schedule.Outlook, error) {
	return schedule.Outlook{}, errors.New("a secret of the machine")
}

func TestFaultsAreLoggedNotShown(t *testing.T) {
	cfg, _ := testConfig()
	var log bytes.Buffer
	cfg.Log = slog.New(slog.NewJSONHandler(&log, nil))
	cfg.Planner = brokenPlanner{}
	s := New(cfg)
	marked := strings.Replace(burgers, "Burgers", "Marinade", 1)
	a := ask(t, s.Handler(), http.MethodPost, "/v1/plans", []byte(marked), append(asJSON, "Authorization", "Bearer hidden")...)
	b := ask(t, s.Handler(), http.MethodGet, "/v1/forecasts?cut=brisket&weight=12+lb", nil)
	ask(t, s.Handler(), http.MethodGet, "/v1/plans/"+testID, nil)
	for _, x := range []answer{a, b} {
		if x.StatusCode != http.StatusInternalServerError || strings.Contains(string(x.body), "bug") || strings.Contains(string(x.body), "machine") {
			t.Errorf("%d %s", x.StatusCode, x.body)
		}
	}
	text := log.String()
	for _, want := range []string{"a bug", "a secret of the machine", `"status":500`, a.Header.Get("X-Request-Id"), `"route":"/v1/plans/:id"`} {
		if !strings.Contains(text, want) {
			t.Errorf("the log lacks %q", want)
		}
	}
	for _, secret := range []string{"Marinade", "hidden", testID, "brisket"} {
		if strings.Contains(text, secret) {
			t.Errorf("the log tells %q", secret)
		}
	}
	if s.gates.light.enter(context.Background()) != nil || len(s.gates.light.places) != 1 || len(s.gates.forecast.places) != 0 {
		t.Error("the panic kept its place")
	}
}

func TestClientAddressIsThePeers(t *testing.T) {
	for name, c := range map[string]struct {
		proxies []netip.Prefix
		want    string
	}{
		"nobody is believed":      {nil, "192.0.2.1"},
		"the proxy is believed":   {[]netip.Prefix{netip.MustParsePrefix("192.0.2.0/24")}, "203.0.113.9"},
		"another one is believed": {[]netip.Prefix{netip.MustParsePrefix("198.51.100.0/24")}, "192.0.2.1"},
	} {
		cfg, _ := testConfig()
		var log bytes.Buffer
		cfg.Log, cfg.Proxies = slog.New(slog.NewTextHandler(&log, nil)), c.proxies
		ask(t, New(cfg).Handler(), http.MethodGet, "/healthz", nil, "X-Forwarded-For", "203.0.113.9", "X-Real-Ip", "203.0.113.9")
		if !strings.Contains(log.String(), "client="+c.want) {
			t.Errorf("%s: %s", name, log.String())
		}
	}
}

func TestServeEndsInPeace(t *testing.T) {
	cfg, _ := testConfig()
	planner := slowPlanner{started: make(chan struct{}), release: make(chan struct{})}
	cfg.Planner = planner
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	served := make(chan error)
	go func() { served <- New(cfg).Serve(ctx, l) }()
	answered := make(chan int)
	go func() {
		r, err := http.Post(fmt.Sprintf("http://%s/v1/plans", l.Addr()), typeJSON, strings.NewReader(burgers))
		if err != nil {
			t.Error(err)
			answered <- 0
			return
		}
		r.Body.Close()
		answered <- r.StatusCode
	}()
	<-planner.started
	cancel()
	close(planner.release)
	if code := <-answered; code != http.StatusCreated {
		t.Errorf("the call under way: %d", code)
	}
	if err := <-served; err != nil {
		t.Error(err)
	}
}
