package logbook

import (
	"fmt"
	"regexp"
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

var (
	offToDo  = regexp.MustCompile(`\b(off|out|pulled)\b.* (to|and|for) (a |the )?(quick )?(re)?(wrap|spritz|spray|mop|baste|flip|turn|rotate|check|look|sauce|glaze|probe|temp|foil|brush)\w*\b`)
	offAgain = regexp.MustCompile(`\bback( on| over| in)?\b`)
)

// offForAMoment reads what came off to be wrapped and went on again: it is wrapped, and not done.
func (n *noteReader) offForAMoment(words []string) ([]Row, string) {
	said := strings.Join(words, " ")
	m := offToDo.FindStringSubmatch(said)
	if m == nil || m[2] == "and" && !offAgain.MatchString(said) {
		return nil, ""
	}
	id := n.dishMeant(words)
	switch {
	case !offAgain.MatchString(said):
		return nil, fmt.Sprintf("is it on again? Nothing was noted. On again: %s wrapped, if you wrapped it; else it needs no note. Off for good: %s off", id, id)
	case m[6] != "wrap" && m[6] != "foil":
		return nil, "off and on again within minutes needs no note; for longer note when it went off, and when it was back on: " + id + " aside 20 min ago, " + id + " back on"
	}
	bare := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		return slices.Contains([]string{"took", "taken", "take", "off", "out", "pulled", "to", "and", "then", "put", "it", "back", "on", ",", "for", "a", "quick", "grill", "the"}, w)
	})
	rows, sentence, ok := n.whole(bare, "")
	if !ok || sentence != "" || Kind(rows[0].kind) != Wrapped {
		return nil, ""
	}
	return rows, ""
}

// askBack asks of what came off and was wrapped in one breath whether it is on again, for it
// counts as done; and for the surface of what waits in an oven that went off.
func (n *noteReader) askBack(rows []Row, words []string) {
	for i := range rows {
		if Kind(rows[i].kind) == OvenOff {
			of := words
			if held := n.onlyHeld(); held != "" {
				of = []string{held}
			}
			rows[i].aside = n.inWords(of, "Then it does not hold. Measure what is in it, just under its surface, now, and note it: DISH surface #150")
		}
		if Kind(rows[i].kind) == Wrapped && i > 0 && Kind(rows[i-1].kind) == Pulled && rows[i].dish == rows[i-1].dish && i+1 == len(rows) {
			rows[i].aside = fmt.Sprintf("It counts as done and off. On the grill again? Then note: %s back on", rows[i].dish)
		}
	}
}

// burns says that the log has the fire lit, and not out since.
func (n *noteReader) burns() bool {
	burns := false
	for _, e := range n.log {
		burns = burns && e.Kind != FireOut || e.Kind == Lit || e.Kind == LitCoals
	}
	return burns
}
