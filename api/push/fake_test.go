package push

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
)

// clock is set by hand and goes no further by itself.
type clock struct {
	mu sync.Mutex
	t  time.Time
}

func (c *clock) now() time.Time { c.mu.Lock(); defer c.mu.Unlock(); return c.t }

func (c *clock) set(t time.Time) { c.mu.Lock(); defer c.mu.Unlock(); c.t = t }

// bell is a way that may fail: what it took, in order.
type bell struct {
	mu     sync.Mutex
	broken error
	lost   bool // it takes the message, but the answer is lost
	took   []string
	bodies map[string]string // by topic and id
	t      *testing.T
}

var errSilent, errNever = errors.New("no answer"), errors.New("never")

func (b *bell) Name() string { return "bell" }

func (b *bell) Refused(err error) bool { return errors.Is(err, errNever) }

func (b *bell) Send(_ context.Context, m Message) error {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.broken != nil && !b.lost {
		return b.broken
	}
	text, err := json.Marshal(eventOf(m))
	if err != nil {
		b.t.Error(err)
	}
	key := m.Topic + " " + m.ID
	if before, again := b.bodies[key]; again && before != string(text) {
		b.t.Errorf("%s was told as\n%s and then as\n%s", m.ID, before, text)
	}
	b.bodies[key] = string(text)
	b.took = append(b.took, key)
	return b.broken
}

func (b *bell) set(broken error, lost bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.broken, b.lost = broken, lost
}

// heard are the ids that were told of a plan, in order, each once.
func (b *bell) heard(plan string) (ids []string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, key := range b.took {
		topic, id, _ := strings.Cut(key, " ")
		if topic == api.TopicOf(plan) && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// house is a service with a pusher, by a clock of its own.
type house struct {
	t       *testing.T
	clock   *clock
	bell    *bell
	store   api.Store
	handler http.Handler
	cfg     Config
	ways    []Way // the bell if there are none
	stop    func()
}

// start is 16:00 in Chicago, two hours before the meal of the tests.
var start = time.Date(2027, 7, 3, 21, 0, 0, 0, time.UTC)

const burgers = `{"format": 1, "serve": {"date": "2027-07-03", "time": "18:00", "tz": "America/Chicago"},
 "grill": {"kind": "kettle", "diameter": "22 in"}, "dishes": [{"name": "Burgers", "cut": "burger", "weight": "6 oz", "count": 4}]}`

func newHouse(t *testing.T, plans api.Store) *house {
	t.Helper()
	h := &house{t: t, clock: &clock{t: start}, bell: &bell{bodies: map[string]string{}, t: t}, store: plans}
	t.Cleanup(func() { h.end() })
	return h
}

func onDisk(t *testing.T) api.Store {
	t.Helper()
	f, err := store.OpenFile(t.Context(), filepath.Join(t.TempDir(), "plans.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

// begin runs a new process on the store.
func (h *house) begin() {
	h.t.Helper()
	service := api.New(api.Config{Store: h.store, Clock: h.clock.now})
	h.handler = service.Handler()
	cfg := h.cfg
	cfg.Store, cfg.Service, cfg.Ways, cfg.Clock = h.store, service, h.ways, h.clock.now
	if len(cfg.Ways) == 0 {
		cfg.Ways = []Way{h.bell}
	}
	cfg.Look, cfg.Lease, cfg.Shortest = 2*time.Millisecond, 15*time.Second, time.Second
	p, err := New(h.t.Context(), cfg)
	if err != nil {
		h.t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan struct{})
	go func() { p.Run(ctx); close(ended) }()
	h.stop = func() { cancel(); <-ended }
}

func (h *house) end() {
	if h.stop != nil {
		h.stop()
		h.stop = nil
	}
}

func (h *house) call(method, target, body string) []byte {
	h.t.Helper()
	r := httptest.NewRequest(method, target, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/json")
	w := httptest.NewRecorder()
	h.handler.ServeHTTP(w, r)
	if w.Code >= 300 {
		h.t.Fatalf("%s %s: %d %s", method, target, w.Code, w.Body)
	}
	return w.Body.Bytes()
}

func (h *house) planned(query string) schedule.Plan {
	h.t.Helper()
	return h.plan(h.call(http.MethodPost, "/v1/plans"+query, burgers))
}

func (h *house) plan(text []byte) schedule.Plan {
	h.t.Helper()
	var p schedule.Plan
	if err := json.Unmarshal(text, &p); err != nil {
		h.t.Fatal(err)
	}
	return p
}

func (h *house) logged(p schedule.Plan, kind, value string) schedule.Plan {
	h.t.Helper()
	entry := fmt.Sprintf(`{"time": %q, "kind": %q, "value": %q}`, h.clock.now().Format(time.RFC3339), kind, value)
	return h.plan(h.call(http.MethodPost, "/v1/plans/"+p.ID+"/readings", entry))
}

// until waits for what must come to be.
func (h *house) until(what string, is func() bool) {
	h.t.Helper()
	for range 2000 {
		if is() {
			return
		}
		time.Sleep(2 * time.Millisecond)
	}
	h.t.Fatalf("it never came: %s", what)
}

// settled waits until the outbox has nothing that is due.
func (h *house) settled() {
	h.t.Helper()
	n := -1
	h.until("quiet", func() bool {
		h.bell.mu.Lock()
		defer h.bell.mu.Unlock()
		was := n
		n = len(h.bell.took)
		time.Sleep(20 * time.Millisecond)
		return n == was
	})
}

// expected are the ids that a plan's followers must have been told by an instant, worked
// out from the plan as it was first answered: the plan, then its steps by their time.
func expected(p schedule.Plan, by time.Time) (ids []string) {
	ids = []string{"0.0"}
	for _, s := range p.Steps {
		if !s.At.After(by) {
			ids = append(ids, fmt.Sprintf("0.%d", len(ids)))
		}
	}
	return ids
}
