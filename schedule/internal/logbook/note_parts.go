package logbook

import (
	"slices"
	"strings"
)

// several takes a note apart that tells more than one thing.
func (n *noteReader) several(words []string, dish string, depth int) []Row {
	if depth == 0 || len(words) < 3 || len(words) > mostSplit {
		return nil
	}
	for _, joint := range []bool{true, false} { // where a word says so first
		for k := range words {
			if !joint { // the longest first part: wrapped in paper, at 165
				k = len(words) - 1 - k
			}
			if k == 0 || joint != slices.Contains(joints, words[k]) {
				continue
			}
			right := words[k:]
			for len(right) > 0 && slices.Contains(joints, right[0]) {
				right = right[1:]
			}
			if len(right) == 0 {
				continue
			}
			if rows := n.pair(words[:k], right, dish, joint, depth); rows != nil {
				return rows
			}
		}
	}
	return nil
}

// joints stand between two things of a note.
var joints = []string{"and", ",", "then", "but", "plus", "also"}

// pair are two parts of a note, both of which can be read.
func (n *noteReader) pair(left, right []string, dish string, joint bool, depth int) []Row {
	first, sentence, ok := n.whole(left, dish)
	if !ok && depth > 1 {
		first = n.several(left, dish, depth-1)
		ok = first != nil
	}
	if joint && !ok {
		return n.alsoOf(left, right, dish, depth)
	}
	if !ok || sentence != "" {
		return nil
	}
	if of := first[0].dish; of != "" {
		dish = of
	}
	if !joint && !n.beginsAnew(right) {
		return nil
	}
	rest, sentence := n.rows(right, dish, depth-1)
	if sentence != "" {
		return nil
	}
	if end := rest[len(rest)-1]; first[0].time == "" { // a time at the end is of all
		first[0].time = end.time
	}
	return append(first, rest...)
}

// alsoOf is a dish named beside another of which the note tells: ribs and butt off.
func (n *noteReader) alsoOf(left, right []string, dish string, depth int) []Row {
	_, id, _ := n.takeDish(append(withoutFillers(left), "on"))
	if id == "" || len(withoutFillers(left)) == 0 || len(n.alike(strings.Join(withoutFillers(left), " "))) != 1 {
		return nil
	}
	rest, sentence := n.rows(right, dish, depth-1)
	if sentence != "" || rest[0].dish == "" || rest[0].dish == id {
		return nil
	}
	if form, _ := Kind(rest[0].kind).Form(); !form.OfDish || form.Carries == CarriesTemperature {
		return nil
	}
	also := rest[0]
	also.dish = id
	return append([]Row{also}, rest...)
}

// beginsAnew says of words without a joint before them that they are of something else: a
// dish, a part of the grill, or what was read when the first thing was done.
func (n *noteReader) beginsAnew(words []string) bool {
	number := slices.ContainsFunc(words, noteNumber.MatchString)
	switch _, vents := ventWords(words); {
	case words[0] == "at" && len(words) > 1:
		return noteNumber.MatchString(words[1])
	case vents || number && placeOf(words[0]) != "":
		return true
	case len(words) == 2 && noteNumber.MatchString(words[0]) && placeOf(words[1]) != "": // 171 point
		return true
	case slices.Contains([]string{"off", "pulled", "pulled it", "took it off", "took off", "pulled off", "off grill", "off the grill"}, strings.Join(words, " ")): // 202 off
		return true
	}
	switch kind, _, _ := noteKind(withoutFillers(words), true); kind {
	case Boxed, Counter, Chilled, ToOven, Wrapped:
		return true
	}
	if _, id, _ := n.takeDish(withoutFillers(words)); id != "" {
		return len(n.alike(words[0])) > 0
	}
	kind, _, ok := noteKind(withoutFillers(words), false)
	form, _ := kind.Form()
	return ok && !form.OfDish
}
