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
)

// minGzipBytes: below it the header of gzip and one packet eat what is gained.
const minGzipBytes = 1200

var gzipWriters = sync.Pool{New: func() any {
	w, _ := gzip.NewWriterLevel(nil, gzip.BestSpeed) // the level is valid
	return w
}}

func gzipped(body []byte) []byte {
	var b bytes.Buffer
	w := gzipWriters.Get().(*gzip.Writer)
	defer gzipWriters.Put(w)
	w.Reset(&b)
	w.Write(body) // a buffer takes everything
	w.Close()
	return b.Bytes()
}

// content is a whole answer, which may be kept and answered again. Its compressed
// bytes are made when they are first asked for.
type content struct {
	kind string // media type with its parameters
	tag  string // entity tag; "" for none
	body []byte

	once  sync.Once
	small []byte
}

func (k *content) compressed() []byte {
	k.once.Do(func() { k.small = gzipped(k.body) })
	return k.small
}

// size is about what it takes to keep it.
func (k *content) size() int { return len(k.body) + len(k.body)/4 }

// newContent makes an answer with a tag of its number and a digest of its bytes.
func newContent(kind string, number int, body []byte) *content {
	return &content{kind: kind, tag: entityTag(number, body), body: body}
}

// send writes a whole answer, compressed if the client takes it. Its tag gets the suffix
// -gzip then: another encoding is another representation.
func (c *call) send(status int, k *content) error {
	h := c.header()
	h.Add(headerVary, "Accept-Encoding")
	tag, body, encoding := k.tag, k.body, ""
	if len(body) >= minGzipBytes && takesGzip(c.r.Header.Get("Accept-Encoding")) {
		encoding = "gzip"
		if tag != "" {
			tag = strings.TrimSuffix(tag, `"`) + `-gzip"`
		}
	}
	if tag != "" {
		h.Set(headerETag, tag)
		if status == http.StatusOK && matchesTag(c.r.Header.Values("If-None-Match"), tag, true) {
			c.w.WriteHeader(http.StatusNotModified)
			return nil
		}
	}
	if encoding != "" {
		body = k.compressed()
		h.Set(headerEncoding, encoding)
	}
	h.Set(headerContentType, k.kind)
	h.Set(headerContentLength, strconv.Itoa(len(body)))
	c.w.WriteHeader(status)
	_, err := c.w.Write(body)
	return err
}

// nothing answers without a body.
func (c *call) nothing() error {
	c.w.WriteHeader(http.StatusNoContent)
	return nil
}

// sendJSON writes a value as JSON.
func (c *call) sendJSON(status int, v any) error {
	text, err := encoded(v)
	if err != nil {
		return err
	}
	return c.send(status, &content{kind: typeJSON, body: text})
}

// encoded is a value as a line of JSON.
func encoded(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return b.Bytes(), err
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

// conditional says whether a call is meant for one revision only.
func conditional(r *http.Request) bool { return len(tagList(r.Header.Values("If-Match"))) > 0 }

// requireMatch refuses a change that was made up for another revision. A tag of any
// representation of the newest revision will do. Without If-Match everything passes.
func requireMatch(r *http.Request, newest int) error {
	if !conditional(r) {
		return nil
	}
	for _, t := range tagList(r.Header.Values("If-Match")) {
		number, _, found := strings.Cut(strings.TrimPrefix(t, `"`), "-")
		if t == "*" || found && strings.HasPrefix(t, `"`) && number == strconv.Itoa(newest) {
			return nil
		}
	}
	return problem("stale", "The plan is at revision "+strconv.Itoa(newest)+"; read it again before changing it.")
}

// match is requireMatch of a call.
func (c *call) match(newest int) error { return requireMatch(c.r, newest) }
