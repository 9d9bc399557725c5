package api

import (
	"fmt"
	"net/http"
	"strconv"
	"time"
)

// Pages of the list of plans.
const (
	usualPage   = 50
	longestPage = 500
)

// PlanEntry is a plan in the list, flat.
type PlanEntry struct {
	ID        string    `json:"id"`
	Name      string    `json:"name"`
	Feasible  bool      `json:"feasible"`
	Trial     bool      `json:"trial"`
	ServeAt   time.Time `json:"serve_at"`
	MadeAt    time.Time `json:"made_at"`
	ChangedAt time.Time `json:"changed_at"`
	Revision  int       `json:"revision"`
	Feed      string    `json:"feed"` // "" once it was revoked
}

// getPlans lists the plans, the newest first. Without a token nobody may: the address of
// a plan is all that keeps it from others.
func (s *Service) getPlans(c *call) error {
	got, err := c.parameters("limit", "after")
	if err != nil {
		return err
	}
	if s.cfg.Token == "" {
		return problem("forbidden", "Plans are listed only by a service that asks for a token; keep the address of each plan.")
	}
	limit := usualPage
	if text, ok := got["limit"]; ok {
		n, err := strconv.ParseUint(text, 10, 31)
		if err != nil || n < 1 || n > longestPage {
			return queryFault("limit", fmt.Sprintf("is a number of plans, 1 to %d", longestPage))
		}
		limit = int(n)
	}
	records, err := s.cfg.Store.List(c.r.Context(), got["after"], limit+1)
	if err != nil {
		return err
	}
	if len(records) > limit {
		records = records[:limit]
		c.header().Set(headerLink, fmt.Sprintf(`</v1/plans?limit=%d&after=%s>; rel="next"`, limit, records[limit-1].ID))
	}
	list := make([]PlanEntry, len(records))
	for i, r := range records {
		list[i] = PlanEntry{ID: r.ID, Name: r.Name, Feasible: r.Feasible, Trial: r.Trial, ServeAt: r.Serve, MadeAt: r.Made, ChangedAt: r.Changed, Revision: r.Newest, Feed: r.Feed}
	}
	return c.sendJSON(http.StatusOK, map[string][]PlanEntry{"plans": list})
}
