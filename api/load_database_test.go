package api_test

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api/store/testdb"
)

// TestTwoProcessesUnderLoad: 10,000 plans and 2,000 streams over two processes on one
// database, and readings at either, which the streams of both must hear of.
func TestTwoProcessesUnderLoad(t *testing.T) {
	if !*load {
		t.Skip("not asked for by a flag")
	}
	const plans, streams, followed, readings = 10_000, 2000, 100, 200
	name, program := testdb.Schema(t), binary(t)
	var pids [2]int
	var at [2]string
	for i := range at {
		cmd, address := start(t, program, name, "--streams-each", "5000")
		t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
		pids[i], at[i] = cmd.Process.Pid, address
	}
	ids := make([]string, plans)
	began := time.Now()
	var all sync.WaitGroup
	for k := range 8 {
		all.Go(func() {
			for i := k; i < plans; i += 8 {
				ids[i] = posted(t, at[k%2]+"/v1/plans?trial=true", burger).ID
			}
		})
	}
	all.Wait()
	made := time.Since(began)
	var looks []time.Duration
	for i := range 2000 {
		began := time.Now()
		a, err := patient.Get(at[i%2] + "/v1/plans/" + ids[rand.IntN(plans)] + []string{"", ".html", ".ics", "/due"}[i/2%4])
		if err != nil || a.StatusCode != http.StatusOK {
			t.Fatal(a, err)
		}
		io.Copy(io.Discard, a.Body)
		a.Body.Close()
		looks = append(looks, time.Since(began))
	}
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	l := &listeners{}
	for i := range followed * 2 {
		l.open(t, ctx, at[i%2]+"/v1/plans/"+ids[i/2]+"/stream", streams/followed/2)
	}
	p := posted(t, at[0]+"/v1/plans?trial=true", burger) // all of them are served at the same time
	var posts, spread []time.Duration
	for i := range readings {
		heard := l.heard.Load()
		seen := p.ServeAt.Add(time.Duration(i/followed-60) * time.Minute)
		status, text, took, err := sent(at[i%2]+"/v1/plans/"+ids[i%followed]+"/readings?at="+seen.UTC().Format("2006-01-02T15:04:05Z"), "application/json",
			fmt.Appendf(nil, `[{"time": %q, "kind": "grate", "value": "370 F"}]`, seen.Format(time.RFC3339)))
		if err != nil || status != http.StatusOK {
			t.Fatalf("%d %s %v", status, text, err)
		}
		posts = append(posts, took)
		began := time.Now()
		for l.heard.Load() < heard+streams/followed && time.Since(began) < 10*time.Second {
			time.Sleep(time.Millisecond)
		}
		spread = append(spread, time.Since(began))
	}
	t.Logf("%d plans made in %s by two processes (%.0f/s); 2,000 looks at random: median %s, p99 %s", plans, made.Round(time.Second), plans/made.Seconds(), quantile(looks, 0.5), quantile(looks, 0.99))
	t.Logf("%d streams: a reading takes %s (p99 %s), both processes' streams have heard of it %s later (p99 %s); resident memory at most %.0f and %.0f MiB",
		streams, quantile(posts, 0.5), quantile(posts, 0.99), quantile(spread, 0.5), quantile(spread, 0.99), memory(t, pids[0], "VmHWM"), memory(t, pids[1], "VmHWM"))
	if got := l.heard.Load(); got != readings*streams/followed || quantile(spread, 0.99) > time.Second {
		t.Errorf("%d revisions were heard of, want %d", got, readings*streams/followed)
	}
}
