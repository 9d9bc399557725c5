package api

import (
	"net/http"
)

// Names of headers that more than one file uses.
const (
	headerAccept        = "Accept"
	headerAuth          = "Authorization"
	headerCacheControl  = "Cache-Control"
	headerContentLength = "Content-Length"
	headerContentType   = "Content-Type"
	headerETag          = "ETag"
	headerEncoding      = "Content-Encoding"
	headerLink          = "Link"
	headerLocation      = "Location"
	headerPolicy        = "Content-Security-Policy"
	headerRequestID     = "X-Request-Id"
	headerRetryAfter    = "Retry-After"
	headerVary          = "Vary"
)

// call is one request and its answer. Handlers know no router.
type call struct {
	w     *answerWriter
	r     *http.Request
	route string                   // as the router has it; "" for none
	param func(name string) string // a part of the address
}

// handler answers a call, or leaves its error to be answered.
type handler func(c *call) error

// header is that of the answer.
func (c *call) header() http.Header { return c.w.Header() }

// answerWriter counts what is answered, and keeps the body of an answer to HEAD back.
type answerWriter struct {
	http.ResponseWriter
	head   bool
	status int // 0 before the header is written
	size   int64
}

// WriteHeader notes the status; only the first one counts.
func (w *answerWriter) WriteHeader(status int) {
	if w.status == 0 {
		w.status = status
		w.ResponseWriter.WriteHeader(status)
	}
}

func (w *answerWriter) Write(text []byte) (int, error) {
	w.WriteHeader(http.StatusOK) // unless there was another one
	if w.head {
		return len(text), nil
	}
	n, err := w.ResponseWriter.Write(text)
	w.size += int64(n)
	return n, err
}

// flush sends what was written; where it cannot be done now it is done at the end.
func (c *call) flush() {
	if c.w.status != 0 {
		_ = http.NewResponseController(c.w).Flush()
	}
}

// Unwrap is for [http.ResponseController].
func (w *answerWriter) Unwrap() http.ResponseWriter { return w.ResponseWriter }
