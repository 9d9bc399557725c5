package logbook

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/fire"
)

var (
	ventNouns  = []string{"vent", "vents", "damper", "dampers"}
	ventNames  = map[string]string{"top": "top", "upper": "top", "exhaust": "top", "bottom": "bottom", "lower": "bottom", "intake": "bottom", "both": "both", "all": "both"}
	ventVerbs  = map[string]string{"opened": "open", "closed": "shut", "shut": "shut", "close": "shut", "open": "open"}
	ventSmalls = []string{"to", "at", "by", "a", "and", "way", "fully", "set", "put", "moved", "all", "the", "up", "down", ","}
)

// ventWords reads how the vents stand in a cook's words, "opened top vent halfway", "top
// full bottom half", as the value of an entry; false where the words are not of the vents.
func ventWords(words []string) (value []string, ok bool) {
	isVent := slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ventNouns, strings.TrimRight(w, ",")) })
	if !isVent && (len(words) < 2 || ventNames[words[0]] == "" || words[0] == "all") {
		return nil, false
	}
	type vent struct {
		name    string
		opening []string
	}
	var vents []vent
	verb := ""
	var loose []string // said before any name
	for k, w := range words {
		w = strings.Trim(w, ",.;")
		if w == "lid" {
			w = "top"
		}
		name := ventNames[w]
		if w == "all" && (k+1 == len(words) || !slices.Contains(ventNouns, words[k+1])) { // all the way
			name = ""
		}
		switch {
		case name != "":
			vents = append(vents, vent{name: name})
		case slices.Contains(ventNouns, w) || w == "":
		case ventVerbs[w] != "" && verb == "" && len(vents) == 0:
			verb = ventVerbs[w]
		case slices.Contains(ventSmalls, w):
		case len(vents) > 0:
			last := &vents[len(vents)-1]
			last.opening = append(last.opening, ventOpening(w))
		default:
			loose = append(loose, ventOpening(w))
		}
	}
	own := slices.ContainsFunc(vents, func(v vent) bool { return len(v.opening) > 0 })
	if own && len(loose) > 0 { // something else was told first
		return nil, false
	}
	if len(vents) == 0 {
		vents = []vent{{name: "both"}}
	}
	for k, v := range vents {
		opening := strings.Join(v.opening, " ")
		if opening == "" {
			opening = strings.Join(loose, " ")
		}
		if opening == "" {
			opening = verb
		}
		if k > 0 {
			value = append(value, ",")
		}
		if first, ok := strings.CutSuffix(opening, " open"); ok && strings.ContainsAny(first, "0123456789") { // 1/4 open
			opening = first
		}
		value = append(value, v.name, opening)
	}
	text := strings.ReplaceAll(strings.Join(value, " "), " ,", ",")
	if _, _, err := fire.ParseVents(text); err != nil && !isVent { // a top sirloin
		return nil, false
	}
	return strings.Fields(text), true
}

// ventOpening is one word of an opening, as it is read.
func ventOpening(word string) string {
	switch word {
	case "halfway", "half-way":
		return "half"
	case "opened":
		return "open"
	case "closed", "close":
		return "shut"
	}
	return word
}
