package day

import (
	"example.com/cookday/schedule"
)

// finding says an entry of the notices about a dish, or about the day where dish is
// nil, with a text of its own.
func Finding(code, path string, dish *Item, text string) schedule.Finding {
	n, _ := schedule.Notice(code)
	f := schedule.Finding{Code: code, Severity: n.Severity, Path: path, Text: text, Source: n.Source}
	if dish != nil {
		f.Dishes = []string{dish.Dish.ID}
	}
	return f
}
