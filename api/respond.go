package api

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"github.com/labstack/echo/v4"
)

// minGzipBytes: below it the header of gzip and one packet eat what is gained.
const minGzipBytes = 1200

var gzipWriters = sync.Pool{New: func() any {
	w, _ := gzip.NewWriterLevel(nil, gzip.BestSpeed) // the level is valid
	return w
}}

// send writes a whole body, compressed if the client takes it. An ETag set before
// gets the suffix -gzip then: another encoding is another representation.
func send(c echo.Context, status int, contentType string, body []byte) error {
	h := c.Response().Header()
	h.Set(echo.HeaderContentType, contentType)
	h.Add(echo.HeaderVary, echo.HeaderAcceptEncoding)
	if len(body) >= minGzipBytes && takesGzip(c.Request().Header.Get(echo.HeaderAcceptEncoding)) {
		var b bytes.Buffer
		w := gzipWriters.Get().(*gzip.Writer)
		w.Reset(&b)
		w.Write(body) // a buffer takes everything
		w.Close()
		gzipWriters.Put(w)
		body = b.Bytes()
		h.Set(echo.HeaderContentEncoding, "gzip")
		if tag := h.Get("ETag"); tag != "" {
			h.Set("ETag", strings.TrimSuffix(tag, `"`)+`-gzip"`)
		}
	}
	if status == http.StatusOK && h.Get("ETag") != "" && matchesTag(c.Request().Header.Values("If-None-Match"), h.Get("ETag"), true) {
		h.Del(echo.HeaderContentEncoding)
		h.Del(echo.HeaderContentType)
		return c.NoContent(http.StatusNotModified)
	}
	h.Set(echo.HeaderContentLength, strconv.Itoa(len(body)))
	c.Response().WriteHeader(status)
	_, err := c.Response().Write(body)
	return err
}

// sendJSON writes a value as JSON.
func sendJSON(c echo.Context, status int, v any) error {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return err
	}
	return send(c, status, typeJSON, b.Bytes())
}

// entityTag names a revision in one representation: its number, then a digest of
// the bytes, so that a calendar drawn anew by a later version is not taken for the old one.
func entityTag(revision int, body []byte) string {
	sum := sha256.Sum256(body)
	return `"` + strconv.Itoa(revision) + "-" + hex.EncodeToString(sum[:8]) + `"`
}

// matchesTag says whether a list of If-Match or If-None-Match names the tag.
func matchesTag(headers []string, tag string, weak bool) bool {
	for _, t := range tagList(headers) {
		if weak {
			t = strings.TrimPrefix(t, "W/")
		}
		if t == "*" || t == tag {
			return true
		}
	}
	return false
}

func tagList(headers []string) []string {
	var tags []string
	for _, h := range headers {
		for t := range strings.SplitSeq(h, ",") {
			if t = strings.TrimSpace(t); t != "" {
				tags = append(tags, t)
			}
		}
	}
	return tags
}

// requireMatch refuses a change that was made up for another revision. A tag of any
// representation of the newest revision will do. Without If-Match everything passes.
func requireMatch(r *http.Request, newest int) error {
	tags := tagList(r.Header.Values("If-Match"))
	if len(tags) == 0 {
		return nil
	}
	for _, t := range tags {
		number, _, found := strings.Cut(strings.TrimPrefix(t, `"`), "-")
		if t == "*" || found && strings.HasPrefix(t, `"`) && number == strconv.Itoa(newest) {
			return nil
		}
	}
	return problem("stale", "The plan is at revision "+strconv.Itoa(newest)+"; read it again before changing it.")
}
