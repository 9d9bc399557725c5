package api_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"sync"
	"testing"
	"time"

	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
)

// day posts readings one after another and gives the time of each.
func (d *longDay) day(t *testing.T, n int) (times []time.Duration) {
	t.Helper()
	for range n {
		d.n++
		at := d.p.ServeAt.Add(time.Duration(d.n-700) * time.Minute)
		status, text, took, err := sent(d.address+"/v1/plans/"+d.p.ID+"/readings?at="+at.UTC().Format("2006-01-02T15:04:05Z"), "application/json",
			fmt.Appendf(nil, `[{"time": %q, "dish": %q, "kind": "core", "value": "%d F"}]`, at.Format(time.RFC3339), d.p.Dishes[0].ID, 40+d.n/5))
		if err != nil || status != http.StatusOK {
			t.Fatalf("reading %d: %d %.300s %v", d.n, status, text, err)
		}
		times = append(times, took)
	}
	return times
}

type longDay struct {
	address string
	p       schedule.Plan
	n       int
}

// TestADayOfReadings: 600 readings of a party, half of them with four streams open.
func TestADayOfReadings(t *testing.T) {
	pid, address, file := pressed(t)
	party, err := os.ReadFile("../examples/backyard-party/request.yaml")
	if err != nil {
		t.Fatal(err)
	}
	status, text, _, err := sent(address+"/v1/plans?trial=true", "application/yaml", party)
	d := &longDay{address: address}
	if err != nil || status != http.StatusCreated || json.Unmarshal(text, &d.p) != nil {
		t.Fatalf("%d %s %v", status, text, err)
	}
	var alone, streamed []time.Duration
	var grown float64
	for range 12 { // in turns: what a post costs grows with the log
		alone = append(alone, d.day(t, 25)...)
		before := memory(t, pid, "VmRSS")
		ctx, stop := context.WithCancel(t.Context())
		var wg sync.WaitGroup
		for range 4 {
			wg.Go(func() { followed(ctx, address+"/v1/plans/"+d.p.ID+"/stream") })
		}
		time.Sleep(300 * time.Millisecond)
		streamed = append(streamed, d.day(t, 25)...)
		grown = max(grown, memory(t, pid, "VmRSS")-before)
		stop()
		wg.Wait()
	}
	a, s := quantile(alone, 0.5), quantile(streamed, 0.5)
	f, err := store.OpenFile(t.Context(), file)
	if err != nil {
		t.Fatal(err)
	}
	history, err := f.History(t.Context(), d.p.ID, 599, 10)
	if err != nil || len(history) != 1 {
		t.Fatalf("revision 600: %d, %v", len(history), err)
	}
	f.Close()
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	mb := float64(info.Size()) / 1e6
	t.Logf("600 readings: the file has %.2f MB; a post takes %s, with four streams %s, %.2f times (medians); resident memory %.0f MiB, grew by up to %.1f with streams", mb, a, s, float64(s)/float64(a), memory(t, pid, "VmHWM"), grown)
	if mb > 2 || float64(s) > 1.1*float64(a) {
		t.Errorf("%.2f MB, %.2f times", mb, float64(s)/float64(a))
	}
}

func followed(ctx context.Context, address string) {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, address, nil)
	if err != nil {
		return
	}
	a, err := patient.Transport.RoundTrip(r)
	if err != nil {
		return
	}
	defer a.Body.Close()
	io.Copy(io.Discard, a.Body)
}

// TestManyStreams opens 5,000 streams on 500 plans.
func TestManyStreams(t *testing.T) {
	pid, address, _ := pressed(t, "--streams", "5000", "--streams-each", "5000")
	const streams, plans = 5000, 500
	ids := make([]string, plans)
	for i := range ids {
		ids[i] = posted(t, address+"/v1/plans?trial=true", burger).ID
	}
	before := memory(t, pid, "VmRSS")
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	opened := make(chan int, streams)
	transport := &http.Transport{MaxIdleConnsPerHost: -1, ReadBufferSize: 1 << 10, WriteBufferSize: 1 << 10}
	places := make(chan struct{}, 64)
	for i := range streams {
		go func() {
			places <- struct{}{}
			r, _ := http.NewRequestWithContext(ctx, http.MethodGet, address+"/v1/plans/"+ids[i%plans]+"/stream", nil)
			a, err := transport.RoundTrip(r)
			<-places
			if err != nil {
				opened <- 0
				return
			}
			opened <- a.StatusCode
			io.Copy(io.Discard, a.Body)
		}()
	}
	codes := map[int]int{}
	for range streams {
		codes[<-opened]++
	}
	open := memory(t, pid, "VmRSS")
	t.Logf("%v; resident %.0f MiB before, %.0f MiB with %d streams; peak %.0f", codes, before, open, streams, memory(t, pid, "VmHWM"))
	if codes[http.StatusOK] != streams || memory(t, pid, "VmHWM") > 1024 {
		t.Errorf("%v", codes)
	}
}
