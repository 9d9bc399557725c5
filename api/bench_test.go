package api_test

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/labstack/echo/v4"

	"example.com/cookday/api"
	"example.com/cookday/api/store"
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner"
)

// clients is how many call at once in the benchmarks.
const clients = 50

// each runs work n times on 50 goroutines and reports percentiles of its time in microseconds.
func each(b *testing.B, work func() error) {
	times := make([]time.Duration, b.N)
	next := make(chan int)
	var wg sync.WaitGroup
	for range clients {
		wg.Go(func() {
			for i := range next {
				began := time.Now()
				if err := work(); err != nil {
					b.Error(err)
				}
				times[i] = time.Since(began)
			}
		})
	}
	b.ResetTimer()
	for i := range b.N {
		next <- i
	}
	close(next)
	wg.Wait()
	b.StopTimer()
	slices.Sort(times)
	b.ReportMetric(float64(times[b.N/2].Microseconds()), "p50-us")
	b.ReportMetric(float64(times[b.N*99/100].Microseconds()), "p99-us")
}

// BenchmarkPlan compares a plan over HTTP with the same one by the library, read,
// made and printed. With 50 callers on as many places as there are processors the time of
// a call is mostly spent waiting for a place, on either side; what HTTP costs is the
// difference of ns/op with one caller.
func BenchmarkPlan(b *testing.B) {
	s := api.New(api.Config{Store: store.NewMemory(), Queue: clients, Patience: time.Minute})
	server := httptest.NewServer(s.Handler())
	defer server.Close()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}}
	overHTTP := func() error {
		r, err := client.Post(server.URL+"/v1/plans?trial=true", "application/json", strings.NewReader(burger))
		if err != nil {
			return err
		}
		_, err = io.Copy(io.Discard, r.Body)
		r.Body.Close()
		return err
	}
	places := make(chan struct{}, runtime.GOMAXPROCS(0))
	library := func() error {
		places <- struct{}{}
		defer func() { <-places }()
		r, err := schedule.Read([]byte(burger))
		if err != nil {
			return err
		}
		p, err := planner.Make(context.Background(), r)
		if err != nil {
			return err
		}
		_, err = json.Marshal(p)
		return err
	}
	for _, c := range []struct {
		name string
		work func() error
	}{{"http", overHTTP}, {"library", library}} {
		b.Run(c.name+"-50", func(b *testing.B) { each(b, c.work) })
		b.Run(c.name+"-alone", func(b *testing.B) { alone(b, c.work) })
	}
}

// alone is each with one caller.
func alone(b *testing.B, work func() error) {
	var times []time.Duration
	for b.Loop() {
		began := time.Now()
		if err := work(); err != nil {
			b.Fatal(err)
		}
		times = append(times, time.Since(began))
	}
	slices.Sort(times)
	b.ReportMetric(float64(times[len(times)/2].Microseconds()), "p50-us")
}

// BenchmarkRead compares reading a kept plan, from a file and from memory, with a bare
// handler that answers the same bytes. Clients and service share the processors.
func BenchmarkRead(b *testing.B) {
	file, err := store.OpenFile(context.Background(), filepath.Join(b.TempDir(), "plans.db"))
	if err != nil {
		b.Fatal(err)
	}
	defer file.Close()
	var size int
	for name, keep := range map[string]api.Store{"file": file, "memory": store.NewMemory()} {
		h := api.New(api.Config{Store: keep}).Handler()
		r := httptest.NewRequest(http.MethodPost, "/v1/plans?trial=true", strings.NewReader(burger))
		r.Header.Set("Content-Type", "application/json")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		size = w.Body.Len()
		b.Run(name, func(b *testing.B) { read(b, h, w.Header().Get("Location"), false) })
		b.Run(name+"-compressed", func(b *testing.B) { read(b, h, w.Header().Get("Location"), true) })
		for _, what := range []string{".ics", ".html", "/due"} {
			b.Run(name+strings.Map(letters, what), func(b *testing.B) { read(b, h, w.Header().Get("Location")+what, false) })
		}
	}
	bare := echo.New()
	body := bytes.Repeat([]byte("x"), size)
	bare.GET("/v1/plans/:id", func(c echo.Context) error { return c.Blob(http.StatusOK, "application/json", body) })
	b.Run("bare-echo", func(b *testing.B) { read(b, bare, "/v1/plans/x", false) })
}

// letters drops what a name of a benchmark does not need.
func letters(r rune) rune {
	if r == '.' || r == '/' {
		return '-'
	}
	return r
}

func read(b *testing.B, h http.Handler, path string, compressed bool) {
	server := httptest.NewServer(h)
	defer server.Close()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients, DisableCompression: !compressed}}
	each(b, func() error {
		r, err := client.Get(server.URL + path)
		if err != nil {
			return err
		}
		_, err = io.Copy(io.Discard, r.Body)
		r.Body.Close()
		return err
	})
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "reads/s")
}
