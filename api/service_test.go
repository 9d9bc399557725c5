package api

import (
	"context"
	"fmt"
	"net/http"
	"os"
	"slices"
	"sync"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

// mapStore is the least a store must do; the real ones cannot be imported here.
type mapStore struct {
	mu        sync.Mutex
	revisions map[string][]Revision
	readings  map[string][][]byte
	broken    error
}

func newMapStore() *mapStore {
	return &mapStore{revisions: map[string][]Revision{}, readings: map[string][][]byte{}}
}

func (m *mapStore) Create(_ context.Context, id string, first Revision) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.revisions[id] = []Revision{first}
	return m.broken
}

func (m *mapStore) Newest(ctx context.Context, id string) (Revision, error) {
	list, err := m.History(ctx, id)
	if err != nil {
		return Revision{}, err
	}
	return list[len(list)-1], nil
}

func (m *mapStore) Revision(ctx context.Context, id string, n int) (Revision, error) {
	list, err := m.History(ctx, id)
	if err != nil || n >= len(list) {
		return Revision{}, ErrNotFound
	}
	return list[n], nil
}

func (m *mapStore) History(_ context.Context, id string) ([]Revision, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.broken != nil {
		return nil, m.broken
	}
	if m.revisions[id] == nil {
		return nil, ErrNotFound
	}
	return slices.Clone(m.revisions[id]), nil
}

func (m *mapStore) Readings(_ context.Context, id string) ([][]byte, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.readings[id], nil
}

func (m *mapStore) Append(_ context.Context, id string, readings [][]byte, next Revision) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.revisions[id] = append(m.revisions[id], next)
	m.readings[id] = append(m.readings[id], readings...)
	return nil
}

func (m *mapStore) Delete(_ context.Context, id string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	delete(m.revisions, id)
	return nil
}

func (m *mapStore) Ready(context.Context) error { return m.broken }
func (m *mapStore) Close() error                { return nil }

// testClock is set by hand.
type testClock struct {
	mu sync.Mutex
	t  time.Time
}

func (c *testClock) now() time.Time { c.mu.Lock(); defer c.mu.Unlock(); return c.t }

func (c *testClock) set(text string) {
	t, err := time.Parse(time.RFC3339, text)
	if err != nil {
		panic(err)
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.t = t
}

// testID is the first id a test service gives; the next ones count up.
const testID = "00000000-0000-4000-8000-000000000000"

// testConfig is a service without chance: a clock that stands still and ids that count.
func testConfig() (Config, *testClock) {
	clock := &testClock{}
	clock.set("2027-07-01T12:00:00Z") // two days before the meals of the tests
	n := -1
	var mu sync.Mutex
	id := func() string {
		mu.Lock()
		defer mu.Unlock()
		n++
		return fmt.Sprintf("%s%012d", testID[:24], n)
	}
	return Config{Store: newMapStore(), Clock: clock.now, NewID: id}, clock
}

// burgers is a small request.
const burgers = `{"format": 1, "serve": {"date": "2027-07-03", "time": "18:00", "tz": "America/Chicago"},
 "grill": {"kind": "kettle", "diameter": "22 in"}, "dishes": [{"name": "Burgers", "cut": "burger", "weight": "6 oz", "count": 4}]}`

// party is the request of the example that all doors share.
func party(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

var asJSON, asYAML = []string{"Content-Type", typeJSON}, []string{"Content-Type", typeYAML}

// planned posts a request and returns the plan.
func planned(t testing.TB, h http.Handler, body []byte, headers ...string) schedule.Plan {
	t.Helper()
	a := call(t, h, http.MethodPost, "/v1/plans", body, headers...)
	if a.StatusCode != http.StatusCreated {
		t.Fatalf("%d %s", a.StatusCode, a.body)
	}
	p, err := schedule.ReadPlan(a.body)
	if err != nil {
		t.Fatal(err)
	}
	if a.Header.Get("Location") != "/v1/plans/"+p.ID {
		t.Errorf("Location %q of plan %s", a.Header.Get("Location"), p.ID)
	}
	return p
}
