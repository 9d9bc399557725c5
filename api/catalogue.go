package api

import (
	"net/http"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
)

// getCuts lists the catalogue.
func (s *Service) getCuts(c echo.Context) error {
	if _, err := parameters(c); err != nil {
		return err
	}
	return sendJSON(c, http.StatusOK, schedule.Cuts())
}

// getLayouts lists how coals may lie.
func (s *Service) getLayouts(c echo.Context) error {
	if _, err := parameters(c); err != nil {
		return err
	}
	return sendJSON(c, http.StatusOK, map[string][]schedule.Layout{"layouts": schedule.Layouts()})
}
