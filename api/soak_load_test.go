package api_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

const (
	soakGuests  = 4
	guestPlans  = 12 // kept by one guest before it deletes the oldest
	logEntries  = 6  // posted to one plan
	streamTime  = 100 * time.Millisecond
	settleTime  = 300 * time.Millisecond // until the service has noticed that connections are closed
	bigRequests = 20                     // one plan in so many is the whole party
)

// household is all guests together: they call while it is loud.
type household struct {
	address             string
	loud                sync.RWMutex
	calls, plans, fails atomic.Int64
	idle                sync.Map // of *http.Transport
}

// quiet does something while nobody calls and no connection is open.
func (h *household) quiet(work func()) {
	h.loud.Lock()
	defer h.loud.Unlock()
	h.idle.Range(func(transport, _ any) bool {
		transport.(*http.Transport).CloseIdleConnections()
		return true
	})
	time.Sleep(settleTime)
	work()
}

func (h *household) tally() (calls, plans, fails int) {
	return int(h.calls.Load()), int(h.plans.Load()), int(h.fails.Load())
}

// guest calls one after the other what a person, a calendar and a thermometer would,
// and what they should not.
type guest struct {
	*household
	client *http.Client
	dice   *rand.Rand
	plans  []soakPlan
	t      *testing.T
}

type soakPlan struct {
	id      string
	serveAt time.Time
	entries int
}

func newGuest(h *household, seed uint64) *guest {
	transport := &http.Transport{MaxIdleConnsPerHost: 2}
	h.idle.Store(transport, nil)
	return &guest{household: h, client: &http.Client{Transport: transport, Timeout: time.Minute}, dice: rand.New(rand.NewPCG(seed, 0))}
}

func (g *guest) live(ctx context.Context, t *testing.T) {
	g.t = t
	party, err := os.ReadFile("../examples/backyard-party/request.yaml")
	if err != nil {
		t.Error(err)
		return
	}
	for ctx.Err() == nil {
		g.loud.RLock()
		g.turn(string(party))
		g.loud.RUnlock()
	}
}

// turn makes one call.
func (g *guest) turn(party string) {
	switch n := g.dice.IntN(20); {
	case len(g.plans) == 0 || n < 3:
		g.plan(party)
	case n < 6:
		g.read()
	case n < 9:
		g.revise()
	case n < 11:
		g.call(http.MethodGet, "/v1/forecasts?cut=tri-tip&weight=2.5%20lb&grate=275%20F", "", http.StatusOK)
	case n < 13:
		g.call(http.MethodPost, "/v1/plans", g.bad(), http.StatusBadRequest, http.StatusRequestEntityTooLarge)
	case n < 14:
		g.call(http.MethodGet, "/v1/plans/00000000-0000-4000-8000-000000000000", "", http.StatusNotFound)
	case n < 16:
		g.call(http.MethodGet, []string{"/v1/cuts", "/v1/layouts", "/healthz", "/readyz"}[g.dice.IntN(4)], "", http.StatusOK)
	case n < 17:
		g.stream()
	case n < 18:
		g.call(http.MethodGet, "/v1/plans/"+g.any().id+"/due", "", http.StatusOK)
	case len(g.plans) > guestPlans:
		g.forget()
	}
}

func (g *guest) any() *soakPlan { return &g.plans[g.dice.IntN(len(g.plans))] }

// bad is a body that must be refused.
func (g *guest) bad() string {
	return []string{"", "{", burger + "x", strings.Replace(burger, `"format"`, `"colour": 1, "format"`, 1), strings.Replace(burger, "6 oz", "-6 oz", 1),
		strings.Repeat("[", 5000)}[g.dice.IntN(6)]
}

// plan makes one, and forgets the oldest beyond what a guest keeps.
func (g *guest) plan(party string) {
	body, kind := burger, "application/json"
	if g.dice.IntN(bigRequests) == 0 {
		body, kind = party, "application/yaml"
	}
	text := g.send(http.MethodPost, "/v1/plans?trial=true", kind, body, http.StatusCreated)
	var p schedule.Plan
	if text == nil || json.Unmarshal(text, &p) != nil {
		return
	}
	g.household.plans.Add(1)
	g.plans = append(g.plans, soakPlan{id: p.ID, serveAt: p.ServeAt})
	for len(g.plans) > guestPlans {
		g.forget()
	}
}

func (g *guest) forget() {
	oldest := g.plans[0]
	g.plans = g.plans[1:]
	g.call(http.MethodDelete, "/v1/plans/"+oldest.id, "", http.StatusNoContent)
}

// read takes a plan in one of its formats.
func (g *guest) read() {
	suffix := []string{"", ".csv", ".ics", ".svg", ".html", ".txt"}[g.dice.IntN(6)]
	g.call(http.MethodGet, "/v1/plans/"+g.any().id+suffix, "", http.StatusOK)
}

// revise posts a reading of the grate from before the meal.
func (g *guest) revise() {
	p := g.any()
	if p.entries >= logEntries {
		return
	}
	at := p.serveAt.Add(time.Duration(p.entries-40) * time.Minute).UTC()
	p.entries++
	g.call(http.MethodPost, "/v1/plans/"+p.id+"/readings?at="+at.Format(time.RFC3339),
		fmt.Sprintf(`[{"time": %q, "kind": "grate", "value": "%d F"}]`, at.Format(time.RFC3339), 370+p.entries), http.StatusOK)
}

// stream listens for a moment and hangs up.
func (g *guest) stream() {
	ctx, cancel := context.WithTimeout(context.Background(), streamTime)
	defer cancel()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, g.address+"/v1/plans/"+g.any().id+"/stream", nil)
	if err != nil {
		g.t.Error(err)
		return
	}
	g.calls.Add(1)
	answer, err := g.client.Do(r)
	if err != nil {
		return // it was slow to begin, and the moment is over
	}
	_, _ = io.Copy(io.Discard, answer.Body) // ends with the context
	answer.Body.Close()
}

func (g *guest) call(method, path, body string, want ...int) {
	g.send(method, path, "application/json", body, want...)
}

// send makes a call and counts it as failed if its status is none of those wanted.
func (g *guest) send(method, path, kind, body string, want ...int) []byte {
	r, err := http.NewRequest(method, g.address+path, strings.NewReader(body))
	if err != nil {
		g.t.Error(err)
		return nil
	}
	if body != "" || method == http.MethodPost {
		r.Header.Set("Content-Type", kind)
	}
	g.calls.Add(1)
	answer, err := g.client.Do(r)
	if err != nil {
		g.fail("%s %s: %v", method, path, err)
		return nil
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	for _, status := range want {
		if answer.StatusCode == status && err == nil {
			return text
		}
	}
	g.fail("%s %s: %d, want %v: %.300s", method, path, answer.StatusCode, want, text)
	return nil
}

// fail counts an answer and shows the first few.
func (g *guest) fail(format string, of ...any) {
	if g.fails.Add(1) <= 5 {
		g.t.Errorf(format, of...)
	}
}
