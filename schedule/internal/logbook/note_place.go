package logbook

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
)

// Places of a piece, and pieces of a dish, of which a reading may be. The dish follows the
// coldest of them.
var (
	birdPlaces  = []string{"thigh", "breast", "leg", "drumstick", "wing"}
	meatPlaces  = []string{"point", "flat", "thick", "thin", "deckle", "end"}
	otherPieces = []string{"other", "second", "first", "third", "small", "big", "left", "right", "front", "rear", "last"}
)

// placeFresh is for how long a reading of one place is beside that of another.
const placeFresh = 45 * time.Minute

// placeRead reads the temperature of one place, thigh 158. Where it is the lowest of what was
// read lately, it is that of the coldest place; so is the same place read again.
func (n *noteReader) placeRead(words []string, dish string) (row Row, sentence string, ok bool) {
	if len(words) > 2 && (words[0] == "1" || words[0] == "one") && !slices.ContainsFunc(words[1:], noteNumber.MatchString) {
		return n.onePiece(words[1:], words)
	}
	k := slices.IndexFunc(words, func(w string) bool { return placeOf(w) != "" })
	if k < 0 {
		return row, "", false
	}
	place := placeOf(words[k])
	if n.partOfName(words[k]) {
		return row, "", false
	}
	number := slices.IndexFunc(words, noteNumber.MatchString)
	if number >= 0 && slices.ContainsFunc(words[number+1:], noteNumber.MatchString) { // two places
		return row, "", false
	}
	rest := slices.DeleteFunc(strings.Fields(bareReading(strings.Join(slices.Concat(words[:k], words[k+1:]), " "))), func(w string) bool {
		return noteNumber.MatchString(w) || placeOf(w) == place || slices.Contains([]string{"end", "one", "done", "finished", "ready"}, w) || slices.Contains(coldestWords, w) || slices.Contains(ofAll, w)
	})
	if number < 0 {
		if slices.Contains([]string{"other", "first", "second", "third", "small", "big"}, place) && len(rest) > 1 {
			return n.onePiece(words[k+1:], words)
		}
		return row, "", false
	}
	id, fault := n.dishOfPlace(rest, dish, place)
	if id == "" || fault != "" {
		return row, fault, fault != ""
	}
	value, sentence := n.degrees(Core, id, words[number])
	row = Row{dish: id, kind: string(Core), value: value + " " + place}
	if coldest := slices.ContainsFunc(words, func(w string) bool { return slices.Contains(coldestWords, w) }); sentence == "" && (coldest || n.isColdest(id, place, value)) {
		row.kind = string(Coldest)
	}
	return row, sentence, true
}

// coldestWords say of a place that it is the coldest.
var coldestWords = []string{"coldest", "lowest", "coolest", "slowest"}

// partOfName says of a word for a place that a dish has it in its name: chicken thighs.
func (n *noteReader) partOfName(word string) bool {
	place := strings.TrimSuffix(word, "s")
	return slices.ContainsFunc(n.named(), func(d Dish) bool {
		return slices.Contains(slices.Concat(singular(d.ID), singular(d.Name)), place)
	})
}

// sameSize are words of size that mean the same piece.
var sameSize = map[string]string{"smaller": "small", "smallest": "small", "bigger": "big", "biggest": "big", "large": "big", "larger": "big", "largest": "big", "2nd": "second", "1st": "first"}

func placeOf(word string) string {
	word = strings.TrimSuffix(word, "s")
	if plain, ok := sameSize[word]; ok {
		word = plain
	}
	for _, w := range slices.Concat(birdPlaces, meatPlaces, otherPieces) {
		if w == word {
			return w
		}
	}
	return ""
}

// dishOfPlace is the dish of which a place was read: the one that is named, or the only one
// that has it.
func (n *noteReader) dishOfPlace(rest []string, dish, place string) (id, sentence string) {
	if len(rest) > 0 {
		ids := n.alike(strings.Join(rest, " "))
		if len(ids) != 1 {
			return "", ""
		}
		return ids[0], ""
	}
	if dish != "" {
		return dish, ""
	}
	if direct := n.alike(place); len(direct) > 0 { // a dish of that name
		return "", ""
	}
	bird := slices.Contains(birdPlaces, place)
	several := func(d Dish) bool { return d.Count > 1 }
	piece := slices.Contains(otherPieces, place) && slices.ContainsFunc(n.day.Dishes, several)
	var may []string
	for _, d := range n.day.Dishes {
		if piece && !several(d) {
			continue
		}
		brisket := place == "point" || place == "flat" || place == "deckle"
		if (!bird || d.Poultry) && (!brisket || strings.HasPrefix(d.Cut, "brisket")) {
			may = append(may, d.ID)
		}
	}
	switch len(may) {
	case 0:
		return "", ""
	case 1:
		return may[0], ""
	}
	return "", fmt.Sprintf("of which dish? Write %s", say.Listed(prefixed(may, place), "or"))
}

func prefixed(ids []string, place string) []string {
	var all []string
	for _, id := range ids {
		all = append(all, id+" "+place)
	}
	return all
}

// isColdest says of a reading of one place that no other place read lately is colder, and
// at least one was read; or that it is the place that was the coldest before.
func (n *noteReader) isColdest(id, place, value string) bool {
	e := Entry{}
	temperatureOf(&e, value)
	others, was := false, ""
	for i, l := range n.log {
		again := func(o Entry) bool { return o.Dish == id && o.Kind.ofPlace() && o.Value == l.Value && o.At.After(l.At) }
		if l.Kind == Core && l.Value != "" && slices.ContainsFunc(n.log[i+1:], again) {
			continue // that place was read again
		}
		if l.Dish != id || n.at.Sub(l.At) > placeFresh {
			continue
		}
		switch {
		case l.Kind == Coldest:
			was = l.Value
			if l.Value != place && l.C <= e.C {
				return false
			}
		case l.Kind == Core && l.Value != place:
			if l.C <= e.C {
				return false
			}
			others = true
		}
	}
	return others || was == place
}

// lowestOfPlaces makes of several places of one dish in one note the lowest the coldest.
func (n *noteReader) lowestOfPlaces(rows []Row) {
	lowest := map[string]int{}
	for i := range rows {
		e := Entry{Kind: Kind(rows[i].kind)}
		if !e.Kind.ofPlace() || temperatureOf(&e, rows[i].value) != "" || e.Value == "" {
			continue
		}
		k, several := lowest[rows[i].dish]
		if !several {
			lowest[rows[i].dish] = i
			continue
		}
		low := Entry{Kind: Coldest}
		temperatureOf(&low, rows[k].value)
		if e.C < low.C {
			lowest[rows[i].dish], k = i, i
		}
		for j := range rows[:i+1] {
			if rows[j].dish == rows[i].dish && Kind(rows[j].kind).ofPlace() {
				rows[j].kind = string(Core)
			}
		}
		rows[k].kind = string(Coldest)
	}
}
