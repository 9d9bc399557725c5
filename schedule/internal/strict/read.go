package strict

import (
	"strings"
)

// lineOf is the line of a path or of the nearest thing around it.
func (d *Decoder) lineOf(path string) int {
	for {
		if line, ok := d.lines[path]; ok || path == "" {
			return line
		}
		path = path[:max(strings.LastIndexAny(path, ".["), 0)]
	}
}
