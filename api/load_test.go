package api_test

import (
	"context"
	"flag"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/cookday/schedule"
)

var load = flag.Bool("load", false, "measure the service under the heaviest callers; takes minutes")

// worstBodies are a mebibyte each, by the address they are for: near the limit of signs
// and filled up with text, and far beyond it.
func worstBodies() map[string][]byte {
	const mib = 1<<20 - 200
	fill := func(head, part, tail string) []byte {
		return []byte(head + strings.Repeat(part, (mib-len(head)-len(tail))/len(part)) + tail)
	}
	long := strings.Repeat("x", 80)
	return map[string][]byte{
		"application/yaml flat":    fill("a: [", "1,", "]"),
		"application/yaml nested":  fill("a: ", "[", ""),
		"application/yaml scalars": fill("", "- "+long+"x\n", ""),
		"application/yaml keys":    fill("", long+": "+strings.Repeat("y", 200)+"\n", ""),
		"application/yaml number":  fill("format: ", "9", "\n"),
		"application/yaml comment": fill("", "# "+strings.Repeat("c", 300)+"\n", "format: 1\n"),
		"application/json flat":    fill(`{"a":[`, "1,", "1]}"),
		"application/json number":  fill(`{"format": `, "9", "}"),
		"application/json texts":   fill(`{"dishes":[`, `"`+long+strings.Repeat("z", 60)+`",`, `""]}`),
		"log list":                 fill("[", `"aaaaaaaaaa",`, `""]`),
		"log entries":              fill("[", `{"time":"04:15","kind":"grate","value":"37`+strings.Repeat("0", 150)+` F"},`, `{}]`),
		"log table":                fill("time,kind,value\n", "04:15,grate,"+strings.Repeat("5", 200)+"\n", ""),
	}
}

// TestWorstMegabyte: 64 callers at once, each with the worst mebibyte, five times over.
func TestWorstMegabyte(t *testing.T) {
	pid, address, _ := pressed(t)
	p := posted(t, address+"/v1/plans?trial=true", burger)
	worst := worstBodies()
	stop, healthy := make(chan struct{}), make(chan []time.Duration)
	go func() { healthy <- looked(t, address+"/healthz", stop) }()
	var wg sync.WaitGroup
	var mu sync.Mutex
	codes := map[int]int{}
	names := slices.Sorted(func(yield func(string) bool) {
		for name := range worst {
			if !yield(name) {
				return
			}
		}
	})
	began := time.Now()
	for i := range 64 {
		wg.Go(func() {
			for k := range 5 {
				name := names[(i+k*7)%len(names)]
				target, kind := "/v1/plans", strings.Fields(name)[0]
				if kind == "log" {
					target, kind = "/v1/plans/"+p.ID+"/readings", "application/json"
					if strings.HasSuffix(name, "table") {
						kind = "text/csv"
					}
				}
				status, text, _, err := sent(address+target, kind, worst[name])
				if err != nil {
					t.Errorf("%s: no answer: %v", name, err)
					return
				}
				if status < 400 || status >= 500 && status != 503 {
					t.Errorf("%s: %d %.200s", name, status, text)
				}
				mu.Lock()
				codes[status]++
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	took := time.Since(began)
	close(stop)
	times := <-healthy
	peak, p99 := memory(t, pid, "VmHWM"), quantile(times, 0.99)
	t.Logf("320 calls in %s: %v; peak %.0f MiB; %d looks at /healthz, p50 %s, p99 %s", took.Round(time.Millisecond), codes, peak, len(times), quantile(times, 0.5), p99)
	if peak > 400 || p99 > 100*time.Millisecond { // service.md of this project: the aim
		t.Errorf("peak %.0f MiB, p99 %s", peak, p99)
	}
}

// TestJunkDelaysNobody: junk on one plan beside readings of another one.
func TestJunkDelaysNobody(t *testing.T) {
	_, address, _ := pressed(t)
	junked, mine := posted(t, address+"/v1/plans?trial=true", burger), posted(t, address+"/v1/plans?trial=true", burger)
	turn := 0
	mineTimes := func(n int) (times []time.Duration) {
		for range n {
			turn++
			at := mine.ServeAt.Add(time.Duration(turn-3000) * time.Second)
			status, text, took, err := sent(address+"/v1/plans/"+mine.ID+"/readings", "application/json", fmt.Appendf(nil, `[{"time": %q, "kind": "grate", "value": "370 F"}]`, at.Format(time.RFC3339)))
			if err != nil || status != http.StatusOK {
				t.Fatalf("%d %s %v", status, text, err)
			}
			times = append(times, took)
		}
		return times
	}
	quiet := quantile(mineTimes(60), 0.5)
	junk := []byte("[" + strings.Repeat(`{"time":"04:15","kind":"grate","value":"5"},`, 4500) + `{}]`)
	ctx, stop := context.WithCancel(t.Context())
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for ctx.Err() == nil {
				sent(address+"/v1/plans/"+junked.ID+"/readings", "application/json", junk)
			}
		})
	}
	time.Sleep(200 * time.Millisecond)
	noisy := quantile(mineTimes(60), 0.5)
	stop()
	wg.Wait()
	t.Logf("a reading takes %s, beside four callers with junk on another plan %s (medians)", quiet, noisy)
	if noisy-quiet > 50*time.Millisecond {
		t.Errorf("junk delays a reading by %s", noisy-quiet)
	}
}

// feast is a request of many dishes of different kinds.
func feast() []byte {
	var b strings.Builder
	b.WriteString("format: 1\nserve: {date: 2027-07-03, time: \"18:00\", tz: America/Chicago}\ngrill: {kind: kettle, diameter: 26 in}\noven: {hold: 170 F}\ndishes:\n")
	for i, c := range schedule.Cuts().Cuts {
		if i < 20 {
			fmt.Fprintf(&b, "  - {cut: %s, weight: %.3f kg}\n", c.Name, c.TypicalKg)
		}
	}
	return []byte(b.String())
}

// TestHeavyCallersLeaveRoom: 64 callers with a feast each, and light plans and forecasts
// beside them.
func TestHeavyCallersLeaveRoom(t *testing.T) {
	_, address, _ := pressed(t)
	heavy := feast()
	ctx, stop := context.WithCancel(t.Context())
	var wg sync.WaitGroup
	var mu sync.Mutex
	feasts := map[int]int{}
	early := 0
	for range 64 {
		wg.Go(func() {
			for ctx.Err() == nil {
				status, _, took, err := sent(address+"/v1/plans?trial=true", "application/yaml", heavy)
				mu.Lock()
				if err == nil {
					feasts[status]++
				}
				if status == http.StatusServiceUnavailable && took < 5*time.Second { // the patience that the document tells
					early++
				}
				mu.Unlock()
			}
		})
	}
	time.Sleep(time.Second)
	var plans, forecasts []time.Duration
	for range 150 {
		status, text, took, err := sent(address+"/v1/plans?trial=true", "application/json", []byte(burger))
		if err != nil || status != http.StatusCreated {
			t.Errorf("a light plan: %d %.200s %v", status, text, err)
		}
		plans = append(plans, took)
		status, text, took, err = sent(address+"/v1/forecasts", "application/json", []byte(`{"cut": "brisket", "weight": "12 lb", "grate": "250 F"}`))
		if err != nil || status != http.StatusOK {
			t.Errorf("a forecast: %d %.200s %v", status, text, err)
		}
		forecasts = append(forecasts, took)
	}
	stop()
	wg.Wait()
	t.Logf("light plans p50 %s, p99 %s; forecasts p50 %s, p99 %s; feasts %v, %d refused before their time", quantile(plans, 0.5), quantile(plans, 0.99), quantile(forecasts, 0.5), quantile(forecasts, 0.99), feasts, early)
	if quantile(plans, 0.99) > time.Second || quantile(forecasts, 0.99) > time.Second || early > 0 {
		t.Error("heavy callers leave no room")
	}
}
