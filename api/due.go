package api

import (
	"net/http"
	"time"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule/unit"
)

// The look ahead of a call for what is due.
const (
	usualLook   = 15 * time.Minute
	longestLook = 7 * 24 * time.Hour
)

// getDue says what to do now and next. Asked with at = the end of the last look and
// within = the time since, no step is seen twice and none is missed.
func (s *Service) getDue(c echo.Context) error {
	id, suffix, err := planAddress(c)
	if err != nil || suffix != "" {
		return ErrNotFound
	}
	got, err := parameters(c, "at", "within")
	if err != nil {
		return err
	}
	at, err := s.instant(got, "at")
	if err != nil {
		return err
	}
	within := usualLook
	if text, ok := got["within"]; ok {
		if within, err = unit.ParseDuration(text); err != nil || within > longestLook {
			return queryFault("within", "is a length of time up to a week, such as PT15M or 15m")
		}
	}
	kept, err := s.cfg.Store.Newest(c.Request().Context(), id)
	if err != nil {
		return err
	}
	a, err := readAgenda(kept)
	if err != nil {
		return err
	}
	return sendJSON(c, http.StatusOK, a.due(at, within))
}
