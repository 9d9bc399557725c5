package api

import (
	"strconv"
	"strings"
)

// pointer turns the path of a fault into a JSON pointer (RFC 6901):
// dishes[0].weight becomes /dishes/0/weight.
func pointer(path string) string {
	var b strings.Builder
	for path != "" {
		var part string
		part, path = firstPart(path)
		b.WriteByte('/')
		b.WriteString(pointerEscapes.Replace(part))
	}
	return b.String()
}

var pointerEscapes = strings.NewReplacer("~", "~0", "/", "~1")

// firstPart splits a path after its first name, index or quoted name.
func firstPart(path string) (part, rest string) {
	switch path[0] {
	case '"':
		quoted, err := strconv.QuotedPrefix(path)
		if err != nil {
			return path, ""
		}
		part, _ = strconv.Unquote(quoted)
		return part, strings.TrimPrefix(path[len(quoted):], ".")
	case '[':
		part, rest, _ = strings.Cut(path[1:], "]")
		return part, strings.TrimPrefix(rest, ".")
	}
	end := strings.IndexAny(path, ".[")
	if end < 0 {
		return path, ""
	}
	return path[:end], strings.TrimPrefix(path[end:], ".")
}
