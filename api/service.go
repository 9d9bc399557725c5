package api

import (
	"context"
	"net/http"
	"sync/atomic"

	"github.com/labstack/echo/v4"
)

// Service answers the calls. It is made by [New] and may be used from many goroutines.
type Service struct {
	cfg     Config
	echo    *echo.Echo
	gate    *gate
	plans   *stripes
	bell    *bell
	streams atomic.Int64
	closing context.Context // ends all streams
	close   context.CancelFunc
}

// New makes a service of a configuration; see [Config] for what may be left out.
func New(cfg Config) *Service {
	s := &Service{cfg: cfg.withDefaults(), plans: newStripes(), bell: newBell()}
	s.gate = newGate(s.cfg.Solves, s.cfg.Queue, s.cfg.Patience)
	s.closing, s.close = context.WithCancel(context.Background())
	s.echo = s.router()
	return s
}

// Handler is the service as an http.Handler.
func (s *Service) Handler() http.Handler { return s.echo }

// CloseStreams ends the event streams, which otherwise last as long as their clients
// like, and makes the service say that it is not ready.
func (s *Service) CloseStreams() { s.close() }

// route is one line of the table of routes.
type route struct {
	method, path string // the path as the router has it
	handle       echo.HandlerFunc
}

// table lists every route; nothing else is registered.
func (s *Service) table() []route {
	return []route{
		{http.MethodGet, "/v1/forecasts", s.getForecast},
		{http.MethodPost, "/v1/forecasts", s.postForecast},
		{http.MethodPost, "/v1/plans", s.postPlan},
		{http.MethodGet, "/v1/plans/:id", s.getPlan},
		{http.MethodDelete, "/v1/plans/:id", s.deletePlan},
		{http.MethodPost, "/v1/plans/:id/readings", s.postReadings},
		{http.MethodGet, "/v1/plans/:id/due", s.getDue},
		{http.MethodGet, "/v1/plans/:id/stream", s.getStream},
		{http.MethodGet, "/v1/cuts", s.getCuts},
		{http.MethodGet, "/v1/layouts", s.getLayouts},
		{http.MethodGet, pathHealth, s.getHealth},
		{http.MethodGet, pathReady, s.getReady},
	}
}

func (s *Service) router() *echo.Echo {
	e := echo.New()
	e.HideBanner, e.HidePort = true, true
	e.HTTPErrorHandler = s.answerProblem
	e.IPExtractor = s.clientAddress()
	e.Pre(s.frame)
	for _, r := range s.table() {
		e.Add(r.method, r.path, r.handle)
	}
	return e
}
