package api_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// listeners of a plan read their streams and count the revisions that they hear of.
type listeners struct{ heard atomic.Int64 }

func (l *listeners) Write(p []byte) (int, error) {
	l.heard.Add(int64(strings.Count(string(p), "event: revision\n")))
	return len(p), nil
}

func (l *listeners) open(t *testing.T, ctx context.Context, address string, n int) {
	t.Helper()
	transport := &http.Transport{MaxIdleConnsPerHost: -1, ReadBufferSize: 2 << 10, WriteBufferSize: 1 << 10}
	places, opened := make(chan struct{}, 32), make(chan bool, n)
	for range n {
		go func() {
			places <- struct{}{}
			r, _ := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
			a, err := transport.RoundTrip(r)
			<-places
			opened <- err == nil && a.StatusCode == http.StatusOK
			if err == nil {
				io.Copy(l, a.Body)
			}
		}()
	}
	for range n {
		if !<-opened {
			t.Fatal("a stream was not opened")
		}
	}
}

// processor is how long a process has kept a processor busy, in hundredths of a second.
func processor(t *testing.T, pid int) float64 {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		t.Skip("there is no /proc here")
	}
	fields := strings.Fields(string(text[strings.LastIndexByte(string(text), ')')+2:]))
	user, _ := strconv.ParseFloat(fields[11], 64)
	system, _ := strconv.ParseFloat(fields[12], 64)
	return user + system
}

// TestAThousandListen: a post to a plan that 1,000 streams follow costs whoever posts at
// most 1.1 times one to a plan that nobody follows. The two are posted to in turns, and
// the listeners have a moment to hear of it, which is measured apart.
func TestAThousandListen(t *testing.T) {
	pid, address, _ := pressed(t, "--streams-each", "2000")
	party, err := os.ReadFile("../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var days [2]*longDay
	for i := range days {
		status, text, _, err := sent(address+"/v1/plans?trial=true", "application/yaml", party)
		days[i] = &longDay{address: address}
		if err != nil || status != http.StatusCreated || json.Unmarshal(text, &days[i].p) != nil {
			t.Fatalf("%d %s %v", status, text, err)
		}
	}
	const n, rounds = 1000, 60
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	l := &listeners{}
	l.open(t, ctx, address+"/v1/plans/"+days[1].p.ID+"/stream", n)
	var times [2][]time.Duration
	var busy [2]float64
	var spread []time.Duration
	for round := range rounds {
		for k := range days {
			i := (k + round) % 2
			before, heard := processor(t, pid), l.heard.Load()
			times[i] = append(times[i], days[i].day(t, 1)...)
			began := time.Now()
			for i == 1 && l.heard.Load() < heard+n && time.Since(began) < 10*time.Second {
				time.Sleep(time.Millisecond)
			}
			if i == 1 {
				spread = append(spread, time.Since(began))
			}
			time.Sleep(100 * time.Millisecond)
			busy[i] += processor(t, pid) - before
		}
	}
	alone, listened := quantile(times[0], 0.5), quantile(times[1], 0.5)
	ratio := float64(listened) / float64(alone)
	t.Logf("a post takes %s, with %d listeners %s, %.2f times (medians of %d); they have heard of it %s later (p90 %s); the process works %.0f ms for a post, %.0f with listeners",
		alone, n, listened, ratio, rounds, quantile(spread, 0.5), quantile(spread, 0.9), 10*busy[0]/rounds, 10*busy[1]/rounds)
	if got := l.heard.Load(); got != n*rounds {
		t.Errorf("%d revisions were heard of, want %d", got, n*rounds)
	}
	if ratio > 1.1 {
		t.Errorf("%.2f times", ratio)
	}
}
