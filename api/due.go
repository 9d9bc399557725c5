package api

import (
	"net/http"
	"time"

	"example.com/cookday/schedule/unit"
)

// The look ahead of a call for what is due.
const (
	usualLook   = 15 * time.Minute
	longestLook = 7 * 24 * time.Hour
)

// getDue says what to do now and next. Asked with at = the end of the last look and
// within = the time since, no step is seen twice and none is missed.
func (s *Service) getDue(c *call) error { return s.due(c, false) }

// getFeedDue is getDue for those who may only read.
func (s *Service) getFeedDue(c *call) error { return s.due(c, true) }

func (s *Service) due(c *call, feed bool) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	got, err := c.parameters("at", "within")
	if err != nil {
		return err
	}
	at, err := instantOf(got, "at")
	if err != nil {
		return err
	}
	if at.IsZero() {
		at = s.cfg.Clock()
	}
	within := usualLook
	if text, ok := got["within"]; ok {
		if within, err = unit.ParseDuration(text); err != nil || within > longestLook {
			return queryFault("within", "is a length of time up to a week, such as PT15M or 15m")
		}
	}
	record, err := s.record(c.r.Context(), id, feed)
	if err != nil {
		return err
	}
	a, err := s.agendaOf(c.r.Context(), record)
	if err != nil {
		return err
	}
	d := a.due(at, within)
	d.Plan = id
	for i := range d.Due {
		d.Due[i].Plan = id
	}
	return c.sendJSON(http.StatusOK, d)
}
