package api

import (
	"bufio"
	"context"
	"fmt"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"
)

// TestStreamOutlivesTheTimeoutsOfCalls: the limits of a server are for calls, not for
// a stream that is meant to last.
func TestStreamOutlivesTheTimeoutsOfCalls(t *testing.T) {
	cfg, clock := testConfig()
	cfg.Heartbeat = 50 * time.Millisecond
	cfg.Store.(*mapStore).revisions[testID] = []Revision{keptPlan(t, stepPlan(0, map[string]int{"a": 10}), noon(0))}
	clock.set(noon(5).Format(time.RFC3339))
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	const limit = 150 * time.Millisecond
	s := New(cfg)
	server := &http.Server{Handler: s.Handler(), ReadTimeout: limit, WriteTimeout: limit}
	go server.Serve(l)
	defer server.Close()
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, fmt.Sprintf("http://%s/v1/plans/%s/stream", l.Addr(), testID), nil)
	if err != nil {
		t.Fatal(err)
	}
	answer, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	began, lines := time.Now(), bufio.NewScanner(answer.Body)
	for lines.Scan() {
		if strings.Contains(lines.Text(), "still here") && time.Since(began) > 4*limit {
			return
		}
	}
	t.Errorf("the stream ended after %s: %v", time.Since(began), lines.Err())
}

// taken is how many streams are open.
func (s *Service) taken() (n int) {
	s.places.mu.Lock()
	defer s.places.mu.Unlock()
	for _, k := range s.places.taken {
		n += k
	}
	return n
}

// streamOf reads a stream until the service ends it.
func streamOf(t testing.TB, h http.Handler, target string) string {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, target, nil))
	return w.Body.String()
}
