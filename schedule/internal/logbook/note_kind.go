package logbook

import (
	"regexp"
	"slices"
	"strings"
)

var (
	noteNumber = regexp.MustCompile(`^[-+]?[0-9]+([.,][0-9]+)?\s*(°?\s*[fc]|fahrenheit|celsius|centigrade)?$`)
	noteInside = regexp.MustCompile(`^([-+]?[0-9]+(?:[.,][0-9]+)?\s*(?:°?\s*[fc])?) (?:internal|inside|core|in middle|in the middle|middle|in center|in centre|at core|internal temp|temp|inside temp)$`)
	noteOn     = regexp.MustCompile(`^([0-9]{2,4}(?:[.,][0-9]+)? ?[fc]?) (?:on|in|for)$`)
	noteMoved  = regexp.MustCompile(`^(?:put|moved|went|placed|set|popped|stuck|chucked|stick|pop|move|gone|sitting|now|dropped|moving|transferred|resting|rest|going) ((?:in|into|to|back|aside|onto|on counter|on table) ?.*)$`)
)

// noteKind is the kind of entry that words begin with, and what is left of them. A
// number alone is a core.
func noteKind(words []string, ofDish bool) (Kind, []string, bool) {
	said := strings.Join(words, " ")
	if said == "" {
		return "", nil, false
	}
	if m := noteInside.FindStringSubmatch(said); m != nil {
		said = m[1]
	}
	if noteNumber.MatchString(said) {
		return Core, strings.Fields(said), true
	}
	if m := noteOn.FindStringSubmatch(said); m != nil {
		return Core, strings.Fields(m[1]), true
	}
	kind, rest, ok := longestSaying(said, ofDish)
	if m := noteMoved.FindStringSubmatch(said); m != nil && ofDish {
		if moved, left, found := longestSaying(m[1], ofDish); found && (!ok || len(left) < len(rest)) {
			kind, rest, ok = moved, left, true
		}
	}
	if ok {
		return kind, rest, true
	}
	first, value, _ := strings.Cut(said, " ")
	if form, ok := Kind(first).Form(); ok && form.Carries != CarriesDish && (!ofDish || form.OfDish || Kind(first).Meals()) {
		return Kind(first), strings.Fields(value), true
	}
	return "", nil, false
}

// longestSaying is the kind of the longest saying with which words begin.
func longestSaying(said string, ofDish bool) (kind Kind, rest []string, ok bool) {
	longest := 0
	for _, s := range sayings {
		form, _ := s.kind.Form()
		if ofDish && !form.OfDish && !s.kind.Meals() {
			continue
		}
		for phrase := range strings.SplitSeq(s.phrases, "|") {
			if len(phrase) <= longest || said != phrase && !strings.HasPrefix(said, phrase+" ") {
				continue
			}
			left := strings.Fields(strings.TrimPrefix(said, phrase))
			if !fits(s.kind, form, phrase, s.value, left, ofDish) {
				continue
			}
			kind, rest, ok, longest = s.kind, left, true, len(phrase)
			if s.value != "" {
				rest = append([]string{s.value}, left...)
			}
		}
	}
	return kind, rest, ok
}

// fits says whether what is behind a saying may be so: a temperature wants a number, and
// "in" alone is no wrap.
func fits(kind Kind, form Form, phrase, value string, left []string, ofDish bool) bool {
	switch {
	case form.Carries == CarriesTemperature && !slices.ContainsFunc(left, func(w string) bool { return noteNumber.MatchString(w) }):
		return false
	case kind == Wrapped && (phrase == "in" || phrase == "put in") && !slices.ContainsFunc(left, func(w string) bool { return w == "foil" || w == "paper" }):
		return false
	case kind == Wind && value == "" && !slices.ContainsFunc(left, func(w string) bool { return strings.ContainsAny(w, "0123456789") || w == "calm" }):
		return phrase == "windy"
	case kind == DishCancelled && !ofDish:
		return false
	case kind == ServingMoved && len(left) == 0 && phrase != "dinner" && phrase != "eating" && phrase != "eat":
		return false
	}
	return true
}
