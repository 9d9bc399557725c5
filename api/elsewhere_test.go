package api_test

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"net"
	"net/http"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
)

// opened is the store of a name, as the program opens it.
func opened(t *testing.T, name string) (plans api.Store) {
	t.Helper()
	var err error
	if store.IsPostgres(name) {
		plans, err = store.OpenPostgres(t.Context(), name)
	} else {
		plans, err = store.OpenFile(t.Context(), name)
	}
	if err != nil {
		t.Fatal(err)
	}
	return plans
}

// serving is a service on a store of plans, by itself.
func serving(t *testing.T, name string, cfg api.Config) string {
	t.Helper()
	plans := opened(t, name)
	cfg.Store = plans
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- api.New(cfg).Serve(ctx, listener) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
		plans.Close()
	})
	return "http://" + listener.Addr().String()
}

func posted(t *testing.T, address, body string) schedule.Plan {
	t.Helper()
	a, err := http.Post(address, "application/json", strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	defer a.Body.Close()
	var p schedule.Plan
	if err := json.NewDecoder(a.Body).Decode(&p); err != nil || a.StatusCode >= 300 {
		t.Fatalf("%s: %d %v", address, a.StatusCode, err)
	}
	return p
}

// followedBy reads a stream until a mark comes.
func followedBy(t *testing.T, ctx context.Context, address string) (until func(mark string)) {
	t.Helper()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		t.Fatal(err)
	}
	a, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { a.Body.Close() })
	lines := bufio.NewScanner(a.Body)
	return func(mark string) {
		t.Helper()
		for lines.Scan() {
			if strings.Contains(lines.Text(), mark) {
				return
			}
		}
		t.Fatalf("the stream ended before %q: %v", mark, lines.Err())
	}
}

// does makes a call without a body.
func does(t *testing.T, method, address string) {
	t.Helper()
	r, err := http.NewRequest(method, address, nil)
	if err != nil {
		t.Fatal(err)
	}
	a, err := http.DefaultClient.Do(r)
	if err != nil || a.StatusCode >= 300 {
		t.Fatal(a, err)
	}
	a.Body.Close()
}

// A second process on the same file streams what the first one revises, revokes and
// deletes, within a second or so and not at the next sign of life.
func TestRevisionsOfAnotherProcess(t *testing.T) {
	file := filepath.Join(t.TempDir(), "plans.db")
	otherProcess(t, serving(t, file, api.Config{}), serving(t, file, api.Config{}), 3*time.Second)
}

// otherProcess changes a plan at one service and follows it at another.
func otherProcess(t *testing.T, one, two string, most time.Duration) {
	t.Helper()
	p := posted(t, one+"/v1/plans?trial=true", burger)
	path := "/v1/plans/" + p.ID
	a, err := http.Get(one + path + "/feed")
	var feed struct{ Path string }
	if err != nil || json.NewDecoder(a.Body).Decode(&feed) != nil {
		t.Fatal(a, err)
	}
	a.Body.Close()
	ctx, cancel := context.WithTimeout(t.Context(), 10*time.Second) // less than the 15 s between signs of life
	defer cancel()
	owner, guest := followedBy(t, ctx, two+path+"/stream"), followedBy(t, ctx, two+feed.Path+"/stream")
	soon := func(what string, until func(string), mark string) {
		t.Helper()
		began := time.Now()
		until(mark)
		took := time.Since(began)
		t.Logf("%s: after %s", what, took)
		if took > most {
			t.Errorf("%s: it took %s", what, took)
		}
	}
	owner("event: plan")
	guest("event: plan")
	at := p.ServeAt.Add(-40 * time.Minute)
	posted(t, one+path+"/readings", fmt.Sprintf(`[{"time": %q, "kind": "grate", "value": "370 F"}]`, at.Format(time.RFC3339)))
	soon("a revision", owner, "event: revision")
	soon("a revision, by the feed", guest, "event: revision")
	does(t, http.MethodDelete, one+path+"/feed")
	soon("a revoked feed", guest, "event: deleted")
	does(t, http.MethodDelete, one+path)
	soon("a deleted plan", owner, "event: deleted")
}

// A service that ends says so before it stops to answer.
func TestReadyBeforeTheEnd(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() {
		ended <- api.New(api.Config{Store: store.NewMemory(), Drain: 500 * time.Millisecond}).Serve(ctx, listener)
	}()
	stop()
	for range 100 {
		a, err := http.Get("http://" + listener.Addr().String() + "/readyz")
		if err != nil {
			t.Fatal(err)
		}
		a.Body.Close()
		if a.StatusCode == http.StatusServiceUnavailable {
			if err := <-ended; err != nil {
				t.Error(err)
			}
			return
		}
		time.Sleep(time.Millisecond)
	}
	t.Error("it never said that it is about to end")
}
