package metrics

import (
	"context"
	"time"

	"github.com/prometheus/client_golang/prometheus"

	"example.com/cookday/api"
)

// lookTime is how long the outbox may take to say what waits.
const lookTime = 5 * time.Second

// Watch has a service and its outbox asked whenever somebody looks.
func (m *Metrics) Watch(s *api.Service, outbox api.Outbox) {
	m.registry.MustRegister(&load{s, outbox})
}

type load struct {
	service *api.Service
	outbox  api.Outbox
}

func describe(name, help string, labels ...string) *prometheus.Desc {
	return prometheus.NewDesc(space+"_"+name, help, labels, nil)
}

var (
	gatePlaces  = describe("gate_places", "Calls of a kind that may compute at once.", "gate")
	gateBusy    = describe("gate_busy", "Calls of a kind that compute now.", "gate")
	gateWaiting = describe("gate_waiting", "Calls of a kind that wait for a place.", "gate")
	gateRefused = describe("gate_refused_total", "Calls of a kind that waited in vain.", "gate")
	streamsOpen = describe("streams_open", "Event streams that are open.")
	streamsMost = describe("streams_most", "Event streams that may be open.")
	pagesBytes  = describe("pages_bytes", "Size of the answers that are kept ready.")
	waiting     = describe("outbox_waiting", "Plans that wait for a way which did not take the last event.", "way")
	dead        = describe("outbox_dead", "Events that were given up and are still listed.", "way")
	away        = describe("outbox_away", "1 if the outbox could not be asked.")
)

// Describe lists what can be told.
func (l *load) Describe(to chan<- *prometheus.Desc) {
	for _, d := range []*prometheus.Desc{gatePlaces, gateBusy, gateWaiting, gateRefused, streamsOpen, streamsMost, pagesBytes, waiting, dead, away} {
		to <- d
	}
}

// Collect asks.
func (l *load) Collect(to chan<- prometheus.Metric) {
	gauge := func(d *prometheus.Desc, value int, labels ...string) {
		to <- prometheus.MustNewConstMetric(d, prometheus.GaugeValue, float64(value), labels...)
	}
	now := l.service.Load()
	for _, g := range now.Gates {
		gauge(gatePlaces, g.Places, g.Name)
		gauge(gateBusy, g.Busy, g.Name)
		gauge(gateWaiting, g.Waiting, g.Name)
		to <- prometheus.MustNewConstMetric(gateRefused, prometheus.CounterValue, float64(g.Refused), g.Name)
	}
	gauge(streamsOpen, now.Streams)
	gauge(streamsMost, now.MostStreams)
	gauge(pagesBytes, now.PagesBytes)
	ctx, cancel := context.WithTimeout(context.Background(), lookTime)
	defer cancel()
	ways, err := l.outbox.Waiting(ctx)
	letters, again := l.outbox.DeadLetters(ctx, api.MostDead)
	if err != nil || again != nil {
		gauge(away, 1)
		return
	}
	gauge(away, 0)
	for way, n := range ways {
		gauge(waiting, n, way)
	}
	counts := map[string]int{}
	for _, d := range letters {
		counts[d.Way]++
	}
	for way, n := range counts {
		gauge(dead, n, way)
	}
}
