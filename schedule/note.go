package schedule

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// Note is a line of a log as a cook says it.
type Note struct {
	Entry                   // what it means
	Dish, Kind, Text string // the columns dish, kind and value of its line
}

// ReadNote reads a few words, such as "brisket 152", "brisket wrapped" or "grate 260",
// as one more entry of the log of a plan at an instant. A time of day may come first. A
// number without a unit is in the plan's units; where the other one fits better, that is
// asked back. The error is an *[InputError].
func ReadNote(words []string, p Plan, log []Entry, at time.Time) (Note, error) {
	faults := &strict.FaultList{}
	r, err := newLogReader(p, faults)
	if err != nil {
		return Note{}, err
	}
	if len(log) > 0 {
		r.before = log[len(log)-1].At
	}
	n := noteReader{logReader: r, log: log, at: at}
	row, sentence := n.row(strings.Fields(strings.ToLower(strings.Join(words, " "))))
	if sentence != "" {
		return Note{}, &InputError{Faults: []Fault{{Sentence: sentence}}}
	}
	e, ok := r.entry(row)
	if !ok {
		return Note{}, inputError(faults)
	}
	e.Line = 0
	return Note{Entry: e, Dish: e.Dish, Kind: string(e.Kind), Text: row.value}, nil
}

type noteReader struct {
	*logReader
	log []Entry
	at  time.Time
}

// row is a note as a line of a log; the sentence says what cannot be read.
func (n *noteReader) row(words []string) (logRow, string) {
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
func (n *noteReader) read(words []string) (row logRow, sentence string, ok bool) {
	row = logRow{time: n.at.Format(time.RFC3339)}
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
	if form, _ := kind.form(); at != "" && form.Carries != CarriesInstant {
		row.time = at
	}
	row.dish, row.kind, row.value = dish, string(kind), strings.Join(value, " ")
	sentence = n.valueOf(&row, kind)
	return row, sentence, true
}

// told are the dish, the kind and the value of a note. A time at its end is of the note,
// unless it is what the note tells.
func (n *noteReader) told(words []string, at string, before []string) (left []string, dish string, kind EntryKind, value []string, sentence string) {
	if at != "" {
		if left, dish, kind, value, sentence = n.dishAndKind(before); kind != "" && kind != LogServingMoved {
			return left, dish, kind, value, sentence
		}
	}
	return n.dishAndKind(words)
}

func (n *noteReader) dishAndKind(words []string) (left []string, dish string, kind EntryKind, value []string, sentence string) {
	if sentence := n.needsNoNote(words); sentence != "" {
		return words, "", "", nil, sentence
	}
	if value, ok := ventWords(words); ok {
		return nil, "", LogVents, value, ""
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
func (n *noteReader) valueOf(row *logRow, kind EntryKind) (sentence string) {
	if kind == LogToOven && n.waitsInOven(row.dish, row.value) {
		row.kind, row.value = string(LogBoxed), HeldInOven
		return ""
	}
	form, _ := kind.form()
	switch form.Carries {
	case CarriesTemperature, CarriesMaybeTemperature:
		row.value, sentence = n.degrees(kind, row.dish, strings.TrimPrefix(row.value, "at "))
	case CarriesWrap:
		row.value = strings.TrimPrefix(strings.TrimPrefix(row.value, "in "), "with ")
		if row.value == "bare" {
			row.value = WrapNone
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
	ovenC := 0.0
	for _, d := range n.plan.Dishes {
		for _, h := range d.Holds {
			if d.ID == id && h.Chosen && h.Method == HoldOven {
				ovenC = h.OvenC
			}
		}
	}
	if ovenC == 0 {
		return false
	}
	if value, sentence := n.degrees(LogToOven, dish, strings.TrimPrefix(text, "at ")); value != "" && sentence == "" {
		if t, err := unit.ParseTemperature(value); err == nil && float64(t) > ovenC+farK {
			return false
		}
	}
	cooks := slices.ContainsFunc(n.plan.Steps, func(s Step) bool { return s.Kind == StepToOven && s.Dish == id })
	for _, e := range n.log {
		if e.Dish == id && (e.Kind == LogToOven || e.Kind == LogPulled) {
			return true
		}
	}
	return !cooks
}

func (n *noteReader) unread(words []string) string {
	said := strings.Join(words, " ")
	if said == "" {
		return `nothing was said of it: write what was read or done, such as "152", "on", "wrapped" or "off"`
	}
	return fmt.Sprintf(`%s cannot be read; write a dish and what was read or done, such as "brisket 152", "brisket wrapped", "brisket off", or of the grill "grate 260", "lit", "fire out", "top vent 1/4"; dishes are %s`,
		say.Quoted(said), say.Listed(n.dishNames(), "and"))
}
