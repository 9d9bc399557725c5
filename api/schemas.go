package api

import (
	"net/http"

	"example.com/cookday/schedule"
)

// getSchema answers with the JSON Schema of a request, an entry of a log or a plan.
func (s *Service) getSchema(c *call) error {
	if _, err := c.parameters(); err != nil {
		return err
	}
	text, ok := schedule.Schema(schedule.SchemaOf(c.param("name")))
	if !ok {
		return problem("not-found", "There is a schema of request, entry and plan.")
	}
	return c.send(http.StatusOK, newContent(typeJSON, 0, text))
}
