package api

import (
	"context"
	"net/http"
	"sync"
)

// Service answers the calls. It is made by [New] and may be used from many goroutines.
type Service struct {
	cfg     Config
	routes  http.Handler
	client  func(*http.Request) string // the caller's address
	gates   gates
	locks   *locks
	bell    *bell
	pages   *pages
	scores  *scores
	places  *places
	probe   probe
	lists   func() (lists, error)
	manual  func() (*content, error)
	closing context.Context // ends all streams
	close   context.CancelFunc
}

// New makes a service of a configuration; see [Config] for what may be left out.
func New(cfg Config) *Service {
	cfg = cfg.withDefaults()
	s := &Service{
		cfg: cfg, client: clientAddress(cfg.Proxies), gates: newGates(cfg), locks: newLocks(cfg.Patience), bell: newBell(),
		pages: newPages(cfg.CacheBytes), scores: newScores(cfg.Store), places: newPlaces(cfg.Streams, cfg.StreamsEach),
		lists: sync.OnceValues(newLists), manual: sync.OnceValues(func() (*content, error) { return manualOf(cfg.Document) }),
	}
	s.closing, s.close = context.WithCancel(context.Background())
	s.routes = s.router()
	return s
}

// Handler is the service as an http.Handler.
func (s *Service) Handler() http.Handler { return s }

// CloseStreams ends the event streams, which otherwise last as long as their clients
// like, and makes the service say that it is not ready.
func (s *Service) CloseStreams() { s.close() }

// route is one line of the table of routes.
type route struct {
	method, path string // the path as the router has it
	handle       handler
}

// table lists every route; nothing else is registered. HEAD is answered wherever GET is.
func (s *Service) table() []route {
	const get, post, put, del = http.MethodGet, http.MethodPost, http.MethodPut, http.MethodDelete
	return []route{
		{get, "/v1/forecasts", s.getForecast},
		{post, "/v1/forecasts", s.postForecast},
		{get, "/v1/fire", s.getFire},
		{post, "/v1/fire", s.postFire},
		{post, "/v1/fire/grill", s.postGrill},
		{get, "/v1/plans", s.getPlans},
		{post, "/v1/plans", s.postPlan},
		{get, "/v1/plans/:id", s.getPlan},
		{put, "/v1/plans/:id", s.putPlan},
		{del, "/v1/plans/:id", s.deletePlan},
		{post, "/v1/plans/:id/sheet", s.postSheet},
		{get, "/v1/plans/:id/readings", s.getReadings},
		{post, "/v1/plans/:id/readings", s.postReadings},
		{del, "/v1/plans/:id/readings/:entry", s.deleteReading},
		{post, "/v1/plans/:id/remedies/:number", s.postRemedy},
		{get, "/v1/plans/:id/feed", s.getFeedAddress},
		{post, "/v1/plans/:id/feed", s.postFeed},
		{del, "/v1/plans/:id/feed", s.deleteFeed},
		{get, "/v1/plans/:id/due", s.getDue},
		{get, "/v1/plans/:id/now", s.getNow},
		{get, "/v1/plans/:id/grill", s.getGrill},
		{get, "/v1/plans/:id/stream", s.getStream},
		{get, "/v1/feeds/:id", s.getFeed},
		{get, "/v1/feeds/:id/due", s.getFeedDue},
		{get, "/v1/feeds/:id/stream", s.getFeedStream},
		{get, "/v1/cuts", s.sendList(func(l lists) *content { return l.cuts })},
		{get, "/v1/layouts", s.sendList(func(l lists) *content { return l.layouts })},
		{get, "/v1/entries", s.sendList(func(l lists) *content { return l.entries })},
		{get, "/v1/schemas/:name", s.getSchema},
		{get, pathHealth, s.getHealth},
		{get, pathReady, s.getReady},
		{get, pathMetrics, s.getMetrics},
		{get, pathDocument, s.getDocument},
		{get, pathPage, s.getManual},
	}
}
