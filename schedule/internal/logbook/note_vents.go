package logbook

import (
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/fire"
)

var (
	ventNouns  = []string{"vent", "vents", "damper", "dampers"}
	ventNames  = map[string]string{"top": "top", "upper": "top", "exhaust": "top", "bottom": "bottom", "bottoms": "bottom", "tops": "top", "lower": "bottom", "intake": "bottom", "both": "both", "all": "both"}
	ventVerbs  = map[string]string{"opened": "open", "closed": "shut", "shut": "shut", "close": "shut", "open": "open"}
	ventSmalls = []string{"to", "at", "by", "a", "an", "and", "way", "fully", "set", "put", "moved", "all", "the", "up", "down", ",", "now", "it", "its", "it's", "is", "are", "was", "i", "we", "have", "has", "just", "about", "around", "them", "back", "completely", "turned", "choked", "throttled", "cut", "dialed", "only", "still", "then", "so", "of", "my", "on", "mistake", "accident", "accidentally", "oops"}

	// ventVague is how much a vent was moved, which does not say how it stands.
	ventVague = []string{"bit", "little", "slightly", "some", "notch", "hair", "tad", "touch", "smidge"}
	ventStuck = []string{"stuck", "jammed", "rusted", "seized", "frozen", "tight", "look", "looks", "seems"}
)

// ventWords reads how the vents stand in a cook's words, "opened top vent halfway", "top
// full bottom half", as the value of an entry; false where the words are not of the vents.
func ventWords(words []string) (value []string, ok bool) {
	isVent := slices.ContainsFunc(words, func(w string) bool { return slices.Contains(ventNouns, strings.TrimRight(w, ",")) })
	if !isVent && (len(words) < 2 || !slices.ContainsFunc(words, isVentName)) {
		return nil, false
	}
	value, own, told := ventsSaid(withoutMoved(words))
	if own || !told && !isVent && !isVentName(words[0]) { // something else was told first; opened the top: that may be the lid
		return nil, false
	}
	text := strings.ReplaceAll(strings.Join(value, " "), " ,", ",")
	if _, _, err := fire.ParseVents(text); err != nil && !isVent { // a top sirloin
		return nil, false
	}
	return strings.Fields(text), true
}

func isVentName(word string) bool { return ventNames[word] != "" && word != "all" }

// withoutMoved leaves out how much a vent was moved where it is said how it stands: closed
// a bit, now a third; from open to a half; stuck at 1/4.
func withoutMoved(words []string) []string {
	var out []string
	for k := 0; k < len(words); k++ {
		if words[k] == "from" {
			if to := slices.Index(words[k:], "to"); to > 0 {
				k += to
				continue
			}
		}
		if !slices.Contains(ventStuck, words[k]) {
			out = append(out, words[k])
		}
	}
	stands := slices.DeleteFunc(slices.Clone(out), func(w string) bool { return slices.Contains(ventVague, w) })
	if slices.ContainsFunc(stands, func(w string) bool {
		_, err := fire.ParseOpening(ventOpening(w))
		return err == nil && ventVerbs[w] == ""
	}) {
		return stands
	}
	return out
}

// ventsSaid are the vents that words name, each with its opening; own says that something else
// stands before them, told that an opening is said and not only that they were opened.
func ventsSaid(words []string) (value []string, own, told bool) {
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
	told = slices.ContainsFunc(vents, func(v vent) bool { return len(v.opening) > 0 })
	own, told = told && len(loose) > 0, told || len(loose) > 0
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
	return value, own, told
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

var (
	ventTalk  = regexp.MustCompile(`\b(vents?|dampers?)\b|\b(shut|closed?|opened?|open|choked|cracked) (it |the )*(top|bottom|intake|exhaust|everything|all)\b|\b(top|bottom) \d+ (and |, )?(top|bottom) \d+|\bchoked (it|her|them) ?(down|back|off)?\b|\b(top|bottom) (is )?(at )?\d? ?fingers?\b`)
	ventFails = regexp.MustCompile(`\b(not|never|unable|can't|cant|cannot|won't|wont|don't|dont|doesn't|doesnt|isn't|isnt|didn't|didnt|couldn't|couldnt|no longer|stuck|jammed|rusted|seized|frozen|broke|broken|fell|handle|slipped)\b`)
)

// ventAnswer is what a note of a vent is answered that does not say how it stands.
func ventAnswer(said string) string {
	switch {
	case !ventTalk.MatchString(said):
		return ""
	case ventFails.MatchString(said):
		return "How far is it open, stuck as it is? Nothing was noted. Note that: bottom vent 1/2, or bottom vent shut. Then steer by the other vent"
	}
	return "How far is it open now? Nothing was noted. Note it: top vent 1/4, bottom vent half, both vents shut; or 25 %, a third, open"
}
