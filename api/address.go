package api

import (
	"context"

	"github.com/google/uuid"
)

// A plan has two addresses: the owner's, under /v1/plans, which may do everything, and
// the feed's, under /v1/feeds, which may read what a guest or a calendar needs.

// plan splits the last part of an address into an id and a suffix. What is no id that
// the service gives is not found.
func (c *call) plan() (id, suffix string, err error) {
	const length = 36 // of a UUID as text
	text := c.param("id")
	if len(text) < length {
		return "", "", ErrNotFound
	}
	id, suffix = text[:length], text[length:]
	parsed, err := uuid.Parse(id)
	if err != nil || parsed.String() != id || suffix != "" && suffix[0] != '.' {
		return "", "", ErrNotFound
	}
	return id, suffix, nil
}

// planOnly is plan where the address has no suffix.
func (c *call) planOnly() (id string, err error) {
	id, suffix, err := c.plan()
	if err != nil || suffix != "" {
		return "", ErrNotFound
	}
	return id, nil
}

// record finds what an id stands for.
func (s *Service) record(ctx context.Context, id string, feed bool) (Record, error) {
	if feed {
		return s.cfg.Store.ByFeed(ctx, id)
	}
	return s.cfg.Store.Plan(ctx, id)
}

func planPath(id string) string { return "/v1/plans/" + id }

func feedPath(id string) string { return "/v1/feeds/" + id }
