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
)

// ServeHTTP is around every call: it gives the call an id, bounds its body, asks for
// the token, turns errors and panics into problem documents and writes one line of log.
func (s *Service) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	began := time.Now() // a length of time for the log: the injected clock may stand still
	c := &call{w: &answerWriter{ResponseWriter: w, head: r.Method == http.MethodHead}, r: r, param: func(string) string { return "" }}
	if c.w.head { // RFC 9110, 9.3.2: as GET, without the body
		get := *r
		get.Method = http.MethodGet
		c.r = &get
	}
	h := c.header()
	h.Set(headerRequestID, requestID(r.Header.Get(headerRequestID)))
	h.Set("Server", s.cfg.program())
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer") // the address of a plan is a capability
	h.Set(headerCacheControl, "no-cache, private")
	c.r.Body = http.MaxBytesReader(w, r.Body, maxBodyBytes)
	if err := s.guarded(c); err != nil {
		s.answerProblem(err, c)
	}
	s.logCall(c, r.Method, time.Since(began))
}

// guarded lets a call through that may pass, and catches its panic.
func (s *Service) guarded(c *call) (err error) {
	defer func() {
		if cause := recover(); cause != nil {
			s.cfg.Log.Error("panic", slog.String("cause", cleanLine(fmt.Sprint(cause))), slog.String("stack", string(debug.Stack())))
			err = problem("fault", "This is a fault of the program; its log has more under the request's id.")
		}
	}()
	if err := s.admit(c.r); err != nil {
		return err
	}
	s.route(c)
	return nil
}

// open are the addresses that need no token.
var open = []string{pathHealth, pathReady, pathDocument, pathPage}

// admit checks the name the service is called by and the token.
func (s *Service) admit(r *http.Request) error {
	if len(s.cfg.Hosts) > 0 && !slices.Contains(s.cfg.Hosts, hostName(r.Host)) {
		return problem("misdirected", "Call the service by one of its names: "+strings.Join(s.cfg.Hosts, ", ")+".")
	}
	if s.cfg.Token == "" || slices.Contains(open, r.URL.Path) {
		return nil
	}
	if !sameSecret(tokenOf(r), s.cfg.Token) {
		return problem("unauthorized", "Send the token of this service as Authorization: Bearer, or as the password of any user.")
	}
	return nil
}

// tokenOf is the token that a call carries, as a bearer token or, for calendars which
// can do no better, as a password of any user.
func tokenOf(r *http.Request) string {
	if _, password, ok := r.BasicAuth(); ok {
		return password
	}
	scheme, token, _ := strings.Cut(r.Header.Get(headerAuth), " ")
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

// logCall writes what happened, without bodies, queries, headers or plan ids.
func (s *Service) logCall(c *call, method string, took time.Duration) {
	route := c.route
	if route == "" {
		route = "(none)"
	}
	if s.cfg.Observer != nil {
		s.cfg.Observer.Called(method, route, c.w.status, took)
	}
	level := slog.LevelInfo
	if c.w.status >= http.StatusInternalServerError {
		level = slog.LevelWarn
	}
	s.cfg.Log.LogAttrs(c.r.Context(), level, "call",
		slog.String("request", c.header().Get(headerRequestID)), slog.String("method", shortened(method)), slog.String("route", route),
		slog.Int("status", c.w.status), slog.Int64("bytes_in", max(c.r.ContentLength, 0)), slog.Int64("bytes_out", c.w.size),
		slog.Duration("took", took), slog.String("client", s.client(c.r)))
}
