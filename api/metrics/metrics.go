package metrics

import (
	"context"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"
	"github.com/prometheus/client_golang/prometheus/promhttp"

	"example.com/cookday/api/push"
)

const space = "cookday"

// Metrics counts what happens.
type Metrics struct {
	registry *prometheus.Registry
	calls    *prometheus.CounterVec
	latency  *prometheus.HistogramVec
	pushed   *prometheus.CounterVec
	store    *prometheus.HistogramVec
	faults   *prometheus.CounterVec
}

// New makes metrics of a build.
func New(version string) *Metrics {
	m := &Metrics{
		registry: prometheus.NewRegistry(),
		calls:    counters("calls_total", "Calls that were answered.", "method", "route", "status"),
		latency: histograms("call_seconds", "Time from the first line of a call to the end of its answer; streams are left out.",
			[]float64{.001, .0025, .005, .01, .025, .05, .1, .25, .5, 1, 2.5, 5, 10, 30}, "route"),
		pushed: counters("pushed_total", "Events that were sent by a way: arrived, refused, or failed and tried again.", "way", "outcome"),
		store: histograms("store_seconds", "Time that calls of the store take.",
			[]float64{.0001, .00025, .0005, .001, .0025, .005, .01, .025, .05, .1, .25, 1, 5}, "operation"),
		faults: counters("store_faults_total", "Calls of the store that failed: away, full, read-only or other.", "operation", "kind"),
	}
	build := prometheus.NewGauge(prometheus.GaugeOpts{Namespace: space, Name: "build_info", Help: "Always 1; the label is the version of the build.", ConstLabels: prometheus.Labels{"version": version}})
	build.Set(1)
	m.registry.MustRegister(m.calls, m.latency, m.pushed, m.store, m.faults, build, collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{}))
	return m
}

func counters(name, help string, labels ...string) *prometheus.CounterVec {
	return prometheus.NewCounterVec(prometheus.CounterOpts{Namespace: space, Name: name, Help: help}, labels)
}

func histograms(name, help string, buckets []float64, labels ...string) *prometheus.HistogramVec {
	return prometheus.NewHistogramVec(prometheus.HistogramOpts{Namespace: space, Name: name, Help: help, Buckets: buckets}, labels)
}

// Handler answers with the metrics.
func (m *Metrics) Handler() http.Handler {
	return promhttp.HandlerFor(m.registry, promhttp.HandlerOpts{ErrorHandling: promhttp.ContinueOnError, DisableCompression: true})
}

// Called counts a call. A method that is none of HTTP's is a label of nobody's choice.
func (m *Metrics) Called(method, route string, status int, took time.Duration) {
	switch method {
	case http.MethodGet, http.MethodHead, http.MethodPost, http.MethodPut, http.MethodDelete, http.MethodOptions, http.MethodPatch:
	default:
		method = "other"
	}
	m.calls.WithLabelValues(method, route, strconv.Itoa(status)).Inc()
	if !strings.HasSuffix(route, "/stream") {
		m.latency.WithLabelValues(route).Observe(took.Seconds())
	}
}

// Way has what a way sends counted.
func (m *Metrics) Way(w push.Way) push.Way { return &way{w, m.pushed} }

type way struct {
	push.Way
	pushed *prometheus.CounterVec
}

// Send counts what comes of it.
func (w *way) Send(ctx context.Context, msg push.Message) error {
	err := w.Way.Send(ctx, msg)
	outcome := "arrived"
	switch {
	case err != nil && w.Refused(err):
		outcome = "refused"
	case err != nil:
		outcome = "failed"
	}
	w.pushed.WithLabelValues(w.Name(), outcome).Inc()
	return err
}
