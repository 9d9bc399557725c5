package api

import (
	"net/http"
	"sync"
	"time"
)

// Addresses that need no token.
const (
	pathHealth   = "/healthz"
	pathReady    = "/readyz"
	pathDocument = "/openapi.yaml"
	pathPage     = "/openapi.html"
)

// health is the answer of the two checks.
type health struct {
	Status  string `json:"status"`
	Version string `json:"version"` // of the build; "" if it has none
}

// getHealth says that the process runs.
func (s *Service) getHealth(c *call) error {
	return c.sendJSON(http.StatusOK, health{"running", s.cfg.Version})
}

// probe remembers whether plans could be kept a moment ago: whoever asks all the time
// must not write all the time.
type probe struct {
	mu  sync.Mutex
	at  time.Time // by the machine, not by the injected clock
	err error
}

// getReady says whether plans can be kept and found.
func (s *Service) getReady(c *call) error {
	if s.closing.Err() != nil {
		return problem("busy", "The service is about to end.")
	}
	s.probe.mu.Lock()
	if time.Since(s.probe.at) > s.cfg.Probe {
		s.probe.err = s.cfg.Store.Ready(c.r.Context())
		s.probe.at = time.Now()
	}
	err := s.probe.err
	s.probe.mu.Unlock()
	if err != nil {
		if p := problemOf(err); p.Status == http.StatusInsufficientStorage {
			return p
		}
		return problem("busy", "Plans cannot be kept at the moment.")
	}
	return c.sendJSON(http.StatusOK, health{"ready", s.cfg.Version})
}
