package api

import (
	"sync/atomic"
	"time"
)

const pathMetrics = "/metrics" // asks for the token, as plans do

// Observer is told of every call once it is answered.
type Observer interface {
	// Called has the route as the router has it, "(none)" for an address that is none: no
	// observer learns an id.
	Called(method, route string, status int, took time.Duration)
}

// Load is what a service is busy with.
type Load struct {
	Gates       []GateLoad
	Streams     int // open event streams
	MostStreams int
	PagesBytes  int // of answers that are kept ready
}

// GateLoad is one kind of work, which has its own places.
type GateLoad struct {
	Name                  string
	Places, Busy, Waiting int
	Refused               int64 // calls that waited in vain, since the service began
}

// Load says what the service is busy with at this moment.
func (s *Service) Load() Load {
	l := Load{Streams: s.places.open(), MostStreams: s.cfg.Streams, PagesBytes: s.pages.size()}
	for _, g := range []struct {
		name string
		*gate
	}{{"reading", s.gates.reading}, {"bulk", s.gates.bulk}, {"forecast", s.gates.forecast}, {"light", s.gates.light}, {"heavy", s.gates.heavy}} {
		l.Gates = append(l.Gates, GateLoad{g.name, cap(g.places), len(g.places), int(g.waiting.Load()), g.refused.Load()})
	}
	return l
}

// count counts a refusal.
func count(n *atomic.Int64, err error) error {
	if err == errBusy {
		n.Add(1)
	}
	return err
}

// getMetrics is the handler that the configuration has for it.
func (s *Service) getMetrics(c *call) error {
	if _, err := c.parameters(); err != nil {
		return err
	}
	if s.cfg.Metrics == nil {
		return problem("not-found", "This service tells no metrics here.")
	}
	s.cfg.Metrics.ServeHTTP(c.w, c.r)
	return nil
}
