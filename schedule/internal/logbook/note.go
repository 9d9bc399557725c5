package logbook

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// Note reads a few words as one more row of the log of a day, at an instant; the sentence
// says what cannot be read, or asks back.
func (r *Reader) Note(words []string, log []Entry, at time.Time) (row Row, sentence string) {
	if len(log) > 0 {
		r.before = log[len(log)-1].At
	}
	n := noteReader{Reader: r, log: log, at: at}
	return n.row(strings.Fields(strings.ToLower(strings.Join(words, " "))))
}

type noteReader struct {
	*Reader
	log []Entry
	at  time.Time
}

// row is a note as a line of a log; the sentence says what cannot be read.
func (n *noteReader) row(words []string) (Row, string) {
	if plain := slices.DeleteFunc(slices.Clone(words), isFiller); len(plain) < len(words) {
		if row, sentence, ok := n.read(plain); ok {
			return row, sentence
		}
	}
	row, sentence, _ := n.read(words)
	return row, sentence
}

// fillers are words that tell nothing.
var fillers = []string{"the", "my", "i", "we", "just", "now", "is", "are", "was", "were", "has", "have", "been", "some", "it", "its", "it's", "degrees", "deg", "about"}

func isFiller(word string) bool { return slices.Contains(fillers, strings.TrimRight(word, ",.!")) }

// read is row for words as they stand; false where they cannot be read.
func (n *noteReader) read(words []string) (row Row, sentence string, ok bool) {
	row = Row{time: n.at.Format(time.RFC3339)}
	if at, rest := timeFirst(words); at != "" {
		row.time, words = at, rest
	}
	at, rest := timeLast(words)
	words, dish, kind, value, sentence := n.told(words, at, rest)
	switch {
	case sentence != "":
		return row, sentence, false
	case kind == "":
		return row, n.unread(words), false
	}
	if form, _ := kind.Form(); at != "" && form.Carries != CarriesInstant {
		row.time = at
	}
	row.dish, row.kind, row.value = dish, string(kind), strings.Join(value, " ")
	sentence = n.valueOf(&row, kind)
	return row, sentence, true
}

// told are the dish, the kind and the value of a note. A time at its end is of the note,
// unless it is what the note tells.
func (n *noteReader) told(words []string, at string, before []string) (left []string, dish string, kind Kind, value []string, sentence string) {
	if at != "" {
		if left, dish, kind, value, sentence = n.dishAndKind(before); kind != "" && kind != ServingMoved {
			return left, dish, kind, value, sentence
		}
	}
	return n.dishAndKind(words)
}

func (n *noteReader) dishAndKind(words []string) (left []string, dish string, kind Kind, value []string, sentence string) {
	if sentence := n.needsNoNote(words); sentence != "" {
		return words, "", "", nil, sentence
	}
	if value, ok := ventWords(words); ok {
		return nil, "", Vents, value, ""
	}
	left, dish, sentence = n.takeDish(words)
	if sentence != "" {
		return left, "", "", nil, sentence
	}
	kind, value, ok := noteKind(left, dish != "")
	if !ok {
		return words, dish, "", nil, ""
	}
	return nil, dish, kind, value, ""
}

// valueOf writes the value of a row as the log has it; the sentence asks back.
func (n *noteReader) valueOf(row *Row, kind Kind) (sentence string) {
	if kind == ToOven && n.waitsInOven(row.dish, row.value) {
		row.kind, row.value = string(Boxed), HeldInOven
		return ""
	}
	form, _ := kind.Form()
	switch form.Carries {
	case CarriesTemperature, CarriesMaybeTemperature:
		row.value, sentence = n.degrees(kind, row.dish, strings.TrimPrefix(row.value, "at "))
	case CarriesWrap:
		row.value = strings.TrimPrefix(strings.TrimPrefix(row.value, "in "), "with ")
		if row.value == "bare" {
			row.value = wrapNone
		}
	case CarriesInstant:
		row.value = strings.TrimPrefix(strings.TrimPrefix(row.value, "to "), "at ")
		if row.value == "" {
			row.value = row.time
		}
	}
	return sentence
}

// waitsInOven says whether a dish that goes into the oven waits there, done: by the plan,
// or because it was taken off. A heat far above that of the wait is for cooking.
func (n *noteReader) waitsInOven(dish, text string) bool {
	id, ok := n.dishID(dish)
	if !ok {
		return false
	}
	k := slices.IndexFunc(n.day.Dishes, func(d Dish) bool { return d.ID == id })
	if k < 0 || n.day.Dishes[k].OvenC == 0 {
		return false
	}
	waits := n.day.Dishes[k]
	if value, sentence := n.degrees(ToOven, dish, strings.TrimPrefix(text, "at ")); value != "" && sentence == "" {
		if t, err := unit.ParseTemperature(value); err == nil && float64(t) > waits.OvenC+farK {
			return false
		}
	}
	for _, e := range n.log {
		if e.Dish == id && (e.Kind == ToOven || e.Kind == Pulled) {
			return true
		}
	}
	return !waits.OvenCooks
}

func (n *noteReader) unread(words []string) string {
	said := strings.Join(words, " ")
	if said == "" {
		return `nothing was said of it: write what was read or done, such as "152", "on", "wrapped" or "off"`
	}
	return fmt.Sprintf(`%s cannot be read; write a dish and what was read or done, such as "brisket 152", "brisket wrapped", "brisket off", or of the grill "grate 260", "lit", "fire out", "top vent 1/4"; dishes are %s`,
		say.Quoted(said), say.Listed(n.dishNames(), "and"))
}
