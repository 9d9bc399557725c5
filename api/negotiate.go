package api

import (
	"mime"
	"strconv"
	"strings"
)

// accepted is one entry of an Accept or Accept-Encoding header.
type accepted struct {
	value string
	q     float64
}

// maxAccept is how many entries are looked at; browsers send fewer than ten.
const maxAccept = 32

func parseAccept(header string) []accepted {
	var list []accepted
	for part := range strings.SplitSeq(header, ",") {
		value, rest, _ := strings.Cut(part, ";")
		a := accepted{strings.ToLower(strings.TrimSpace(value)), 1}
		for p := range strings.SplitSeq(rest, ";") {
			if v, ok := strings.CutPrefix(strings.ToLower(strings.TrimSpace(p)), "q="); ok {
				if q, err := strconv.ParseFloat(v, 64); err == nil && q >= 0 && q <= 1 {
					a.q = q
				} else {
					a.q = 0
				}
			}
		}
		if a.value != "" && len(list) < maxAccept {
			list = append(list, a)
		}
	}
	return list
}

// negotiate picks of the offers, best first, the one that an Accept header likes
// most; "" if it likes none. Without a header the first is taken.
func negotiate(header string, offers []string) string {
	list := parseAccept(header)
	if len(list) == 0 {
		return offers[0]
	}
	best, liked := "", 0.0
	for _, offer := range offers {
		if q := quality(list, offer); q > liked {
			best, liked = offer, q
		}
	}
	return best
}

// quality is that of the most specific entry which covers the offer (RFC 9110, 12.5.1).
func quality(list []accepted, offer string) float64 {
	kind, _, _ := strings.Cut(offer, "/")
	q, specific := 0.0, 0
	for _, a := range list {
		rank := 0
		switch a.value {
		case offer:
			rank = 3
		case kind + "/*":
			rank = 2
		case "*/*":
			rank = 1
		}
		if rank > specific {
			q, specific = a.q, rank
		}
	}
	return q
}

// takesGzip says whether an Accept-Encoding header asks for gzip.
func takesGzip(header string) bool {
	star := false
	for _, a := range parseAccept(header) {
		switch a.value {
		case "gzip", "x-gzip":
			return a.q > 0
		case "*":
			star = a.q > 0
		}
	}
	return star
}

// mediaType is the type of a Content-Type header in small letters, without its
// parameters; "" if it cannot be read or names a charset other than UTF-8.
func mediaType(header string) string {
	t, parameters, err := mime.ParseMediaType(header)
	if charset := parameters["charset"]; err != nil || charset != "" && !strings.EqualFold(charset, "utf-8") {
		return ""
	}
	return t
}
