package api

import "net/http"

// feedAddress is where a plan may be read by those who may do nothing else.
type feedAddress struct {
	Feed string `json:"feed"` // its id; "" once it was revoked
	Path string `json:"path"` // "" once it was revoked

	Topic string `json:"topic"` // that the plan is pushed by
}

func sendFeed(c *call, status int, id, feed string) error {
	a := feedAddress{Feed: feed, Topic: TopicOf(id)}
	if feed != "" {
		a.Path = feedPath(feed)
	}
	return c.sendJSON(status, a)
}

// getFeedAddress tells the owner where the feed is.
func (s *Service) getFeedAddress(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	record, err := s.cfg.Store.Plan(c.r.Context(), id)
	if err != nil {
		return err
	}
	return sendFeed(c, http.StatusOK, id, record.Feed)
}

// postFeed gives the plan another feed: the old address leads nowhere from then on.
func (s *Service) postFeed(c *call) error { return s.setFeed(c, s.cfg.NewID()) }

// deleteFeed revokes the feed.
func (s *Service) deleteFeed(c *call) error { return s.setFeed(c, "") }

func (s *Service) setFeed(c *call, feed string) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	if err := s.cfg.Store.SetFeed(c.r.Context(), id, feed); err != nil {
		return err
	}
	s.gone(id) // streams of the old feed look, and end
	if feed == "" {
		return c.nothing()
	}
	return sendFeed(c, http.StatusCreated, id, feed)
}
