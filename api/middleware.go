package api

import (
	"crypto/sha256"
	"crypto/subtle"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"time"

	"github.com/google/uuid"
	"github.com/labstack/echo/v4"
)

// frame is around every call: it gives the call an id, bounds its body, asks for
// the token, turns errors and panics into problem documents and writes one line of log.
func (s *Service) frame(next echo.HandlerFunc) echo.HandlerFunc {
	return func(c echo.Context) error {
		began := time.Now() // a length of time for the log: the injected clock may stand still
		r := c.Request()
		h := c.Response().Header()
		h.Set(echo.HeaderXRequestID, requestID(r.Header.Get(echo.HeaderXRequestID)))
		h.Set(echo.HeaderXContentTypeOptions, "nosniff")
		h.Set(echo.HeaderReferrerPolicy, "no-referrer") // the address of a plan is a capability
		h.Set(echo.HeaderCacheControl, "no-cache, private")
		r.Body = http.MaxBytesReader(c.Response(), r.Body, maxBodyBytes)
		if err := s.guarded(next, c); err != nil {
			s.answerProblem(err, c)
		}
		s.logCall(c, time.Since(began))
		return nil
	}
}

// guarded lets a call through that may pass, and catches its panic.
func (s *Service) guarded(next echo.HandlerFunc, c echo.Context) (err error) {
	defer func() {
		if cause := recover(); cause != nil {
			s.cfg.Log.Error("panic", slog.String("cause", cleanLine(fmt.Sprint(cause))), slog.String("stack", string(debug.Stack())))
			err = problem("fault", "This is a fault of the program; its log has more under the request's id.")
		}
	}()
	if err := s.admit(c.Request()); err != nil {
		return err
	}
	return next(c)
}

// admit checks the name the service is called by and the token.
func (s *Service) admit(r *http.Request) error {
	if len(s.cfg.Hosts) > 0 && !slices.Contains(s.cfg.Hosts, hostName(r.Host)) {
		return problem("misdirected", "Call the service by one of its names: "+strings.Join(s.cfg.Hosts, ", ")+".")
	}
	if s.cfg.Token == "" || r.URL.Path == pathHealth || r.URL.Path == pathReady {
		return nil
	}
	if !sameSecret(tokenOf(r), s.cfg.Token) {
		return problem("unauthorized", "Send the header Authorization: Bearer and the token of this service.")
	}
	return nil
}

// tokenOf is the token that a call carries, as a bearer token or, for calendars which
// can do no better, as a password of any user.
func tokenOf(r *http.Request) string {
	if _, password, ok := r.BasicAuth(); ok {
		return password
	}
	scheme, token, _ := strings.Cut(r.Header.Get(echo.HeaderAuthorization), " ")
	if !strings.EqualFold(scheme, "Bearer") {
		return ""
	}
	return strings.TrimSpace(token)
}

// sameSecret compares in a time that tells neither length nor content.
func sameSecret(a, b string) bool {
	x, y := sha256.Sum256([]byte(a)), sha256.Sum256([]byte(b))
	return subtle.ConstantTimeCompare(x[:], y[:]) == 1
}

// hostName is a Host header without port and brackets, in small letters.
func hostName(host string) string {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	return strings.ToLower(strings.Trim(host, "[]"))
}

var wellFormedID = regexp.MustCompile(`^[A-Za-z0-9._-]{1,64}$`)

// requestID keeps a caller's id if it is harmless, else makes one.
func requestID(given string) string {
	if wellFormedID.MatchString(given) {
		return given
	}
	return uuid.NewString()
}

// clientAddress is the peer's, unless a configured proxy says whom it speaks for.
func (s *Service) clientAddress() echo.IPExtractor {
	if len(s.cfg.Proxies) == 0 {
		return echo.ExtractIPDirect()
	}
	options := []echo.TrustOption{echo.TrustLoopback(false), echo.TrustLinkLocal(false), echo.TrustPrivateNet(false)}
	for _, p := range s.cfg.Proxies {
		_, network, err := net.ParseCIDR(p.Masked().String())
		if err == nil { // a netip.Prefix always parses
			options = append(options, echo.TrustIPRange(network))
		}
	}
	return echo.ExtractIPFromXFFHeader(options...)
}

// logCall writes what happened, without bodies, queries, headers or plan ids.
func (s *Service) logCall(c echo.Context, took time.Duration) {
	r, w := c.Request(), c.Response()
	route := c.Path()
	if route == "" {
		route = "(none)"
	}
	level := slog.LevelInfo
	if w.Status >= http.StatusInternalServerError {
		level = slog.LevelWarn
	}
	s.cfg.Log.LogAttrs(r.Context(), level, "call",
		slog.String("request", w.Header().Get(echo.HeaderXRequestID)), slog.String("method", shortened(r.Method)), slog.String("route", route),
		slog.Int("status", w.Status), slog.Int64("bytes_in", max(r.ContentLength, 0)), slog.Int64("bytes_out", w.Size),
		slog.Duration("took", took), slog.String("client", c.RealIP()))
}
