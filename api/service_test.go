package api

import (
	"fmt"
	"net/http"
	"os"
	"sync"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

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
	return plannedAt(t, h, "/v1/plans", body, headers...)
}

// plannedTrial is planned for a day that does not go by the clock.
func plannedTrial(t testing.TB, h http.Handler, body []byte, headers ...string) schedule.Plan {
	t.Helper()
	return plannedAt(t, h, "/v1/plans?trial=true", body, headers...)
}

func plannedAt(t testing.TB, h http.Handler, target string, body []byte, headers ...string) schedule.Plan {
	t.Helper()
	a := ask(t, h, http.MethodPost, target, body, headers...)
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
