package export

import (
	"strings"

	"example.com/cookday/schedule"
)

// phrase says an identifier of the plan in plain words.
func phrase[Word ~string](id Word) string {
	switch string(id) {
	case schedule.HoldBox:
		return "cooler"
	case schedule.HoldTent:
		return "under a loose tent of foil"
	case schedule.HoldCounter:
		return "on the counter"
	case schedule.HoldOven:
		return "warm oven"
	case schedule.HoldGrill:
		return "on the grate over a dying fire"
	case string(schedule.StepBox):
		return "to cooler"
	}
	return strings.ReplaceAll(string(id), "-", " ")
}

// layoutWords names a layout. The ring has two more names in the trade, so that
// readers recognise it; they are said where the fire is described, and only there.
func layoutWords(layout string) string {
	switch layout {
	case "ring":
		return "in a ring (also called a fuse or a snake)"
	case "banked":
		return "banked to one side"
	case "two-zone":
		return "along one side, two zones"
	case "spread":
		return "spread in one layer"
	case "heap":
		return "heaped in the middle"
	}
	return layout
}

// capital starts a sentence.
func capital(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}

// sentence ends a text with a full stop if nothing ends it yet.
func sentence(s string) string {
	s = capital(clean(s))
	if s == "" || strings.ContainsRune(".!?:", rune(s[len(s)-1])) {
		return s
	}
	return s + "."
}

// list joins words as prose does.
func list(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
}
