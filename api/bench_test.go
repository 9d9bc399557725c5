package api

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
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

// BenchmarkPlan compares a plan over HTTP with the same one by the library. Both go
// through a gate of as many places as there are processors: with 50 callers the
// time is mostly spent waiting, so the difference of the mean times per call (ns/op) is the
// price of HTTP; a single caller's is in the cases "alone".
func BenchmarkPlan(b *testing.B) {
	cfg, _ := testConfig()
	cfg.Queue, cfg.Patience = clients, time.Minute
	s := New(cfg)
	server := httptest.NewServer(s.Handler())
	defer server.Close()
	client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}}
	overHTTP := func() error {
		r, err := client.Post(server.URL+"/v1/plans", typeJSON, strings.NewReader(burgers))
		if err != nil {
			return err
		}
		_, err = io.Copy(io.Discard, r.Body)
		r.Body.Close()
		return err
	}
	library := func() error {
		r, err := schedule.Read([]byte(burgers))
		if err != nil {
			return err
		}
		return s.solve(context.Background(), func(ctx context.Context) error {
			_, err := schedule.Make(ctx, r)
			return err
		})
	}
	b.Run("http-50", func(b *testing.B) { each(b, overHTTP) })
	b.Run("library-50", func(b *testing.B) { each(b, library) })
	for name, work := range map[string]func() error{"http-alone": overHTTP, "library-alone": library} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if err := work(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkRead compares reading a kept plan with a bare handler that answers the
// same bytes.
func BenchmarkRead(b *testing.B) {
	cfg, _ := testConfig()
	s := New(cfg)
	p := planned(b, s.Handler(), []byte(burgers), asJSON...)
	kept, err := cfg.Store.Newest(context.Background(), p.ID)
	if err != nil {
		b.Fatal(err)
	}
	bare := echo.New()
	bare.GET("/v1/plans/:id", func(c echo.Context) error { return c.Blob(http.StatusOK, typeJSON, kept.JSON) })
	for name, h := range map[string]http.Handler{"service": s.Handler(), "bare-echo": bare} {
		b.Run(name, func(b *testing.B) {
			server := httptest.NewServer(h)
			defer server.Close()
			client := &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: clients}}
			each(b, func() error {
				r, err := client.Get(server.URL + "/v1/plans/" + p.ID)
				if err != nil {
					return err
				}
				_, err = io.Copy(io.Discard, r.Body)
				r.Body.Close()
				return err
			})
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "reads/s")
		})
	}
}

// BenchmarkReadHandler is the service's own part of a read, without a network.
func BenchmarkReadHandler(b *testing.B) {
	cfg, _ := testConfig()
	s := New(cfg)
	p := planned(b, s.Handler(), []byte(burgers), asJSON...)
	r := httptest.NewRequest(http.MethodGet, "/v1/plans/"+p.ID, nil)
	b.ReportAllocs()
	for b.Loop() {
		s.Handler().ServeHTTP(httptest.NewRecorder(), r)
	}
}
