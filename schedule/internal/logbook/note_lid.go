package logbook

import (
	"slices"
	"strings"
)

// besideLid may follow what is done to a lid.
var besideLid = []string{"again", "real", "quickly", "briefly", "once", "more", "grill", "smoker", "properly", "tight", "tightly"}

// withoutPurpose leaves out for what a lid was lifted: to spritz, while I turned the ribs.
func withoutPurpose(words []string) []string {
	if !slices.ContainsFunc(words, func(w string) bool { return w == "lid" || strings.HasPrefix(w, "peek") || strings.HasPrefix(w, "look") }) {
		return words
	}
	for k := 1; k < len(words); k++ {
		if !slices.Contains([]string{"to", "for", "while", "when", "because"}, words[k]) || !slices.ContainsFunc(words[k+1:], isPurpose) {
			continue
		}
		if !slices.ContainsFunc(words[k+1:], func(w string) bool {
			return noteNumber.MatchString(w) || w == "wrap" || w == "wrapped" || w == "off" || w == "on"
		}) {
			return words[:k]
		}
	}
	return words
}

var purposes = []string{"spritz", "spray", "mop", "bast", "flip", "turn", "rotat", "check", "look", "brush", "sauc", "glaz", "stir", "prob", "temp", "peek", "move", "season", "shuffl"}

func isPurpose(word string) bool {
	return slices.ContainsFunc(purposes, func(p string) bool { return strings.HasPrefix(word, p) })
}

// burns says that the log has the fire lit, and not out since.
func (n *noteReader) burns() bool {
	burns := false
	for _, e := range n.log {
		burns = burns && e.Kind != FireOut || e.Kind == Lit || e.Kind == LitCoals
	}
	return burns
}
