package api

import (
	"context"
	"errors"
	"net"
	"net/http"
	"net/netip"

	"github.com/labstack/echo/v4"
)

// callKey is where a request carries its call to the router.
type callKey struct{}

// router finds the handler of a call. Nothing else of its library is used: no binding,
// no rendering, no middleware.
func (s *Service) router() http.Handler {
	e := echo.New()
	e.HideBanner, e.HidePort = true, true
	e.HTTPErrorHandler = func(err error, c echo.Context) { s.answerProblem(routed(err), callOf(c)) }
	for _, r := range s.table() {
		e.Add(r.method, r.path, func(c echo.Context) error {
			k := callOf(c)
			k.route, k.param = r.path, c.Param
			return r.handle(k)
		})
	}
	return e
}

func callOf(c echo.Context) *call { return c.Request().Context().Value(callKey{}).(*call) }

// route hands a call to the router.
func (s *Service) route(c *call) {
	s.routes.ServeHTTP(c.w, c.r.WithContext(context.WithValue(c.r.Context(), callKey{}, c)))
}

// routed is what the router finds by itself, as a problem.
func routed(err error) error {
	var found *echo.HTTPError
	if !errors.As(err, &found) {
		return err
	}
	switch found.Code {
	case http.StatusNotFound:
		return problem("not-found", "No resource has this address.")
	case http.StatusMethodNotAllowed:
		return problem("method", "The Allow header lists the methods of this address.")
	}
	return err
}

// clientAddress is the peer's, unless a configured proxy says whom it speaks for.
func clientAddress(proxies []netip.Prefix) func(*http.Request) string {
	if len(proxies) == 0 {
		return echo.ExtractIPDirect()
	}
	options := []echo.TrustOption{echo.TrustLoopback(false), echo.TrustLinkLocal(false), echo.TrustPrivateNet(false)}
	for _, p := range proxies {
		_, network, err := net.ParseCIDR(p.Masked().String())
		if err == nil { // a netip.Prefix always parses
			options = append(options, echo.TrustIPRange(network))
		}
	}
	return echo.ExtractIPFromXFFHeader(options...)
}
