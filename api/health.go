package api

import (
	"net/http"

	"github.com/labstack/echo/v4"
)

// Addresses that need no token.
const (
	pathHealth = "/healthz"
	pathReady  = "/readyz"
)

type state struct {
	Status string `json:"status"`
}

// getHealth says that the process runs.
func (s *Service) getHealth(c echo.Context) error {
	return sendJSON(c, http.StatusOK, state{"running"})
}

// getReady says whether plans can be kept and found.
func (s *Service) getReady(c echo.Context) error {
	if s.closing.Err() != nil {
		return problem("busy", "The service is about to end.")
	}
	if err := s.cfg.Store.Ready(c.Request().Context()); err != nil {
		return problem("busy", "The store of plans does not answer.")
	}
	return sendJSON(c, http.StatusOK, state{"ready"})
}
