package schedule

import (
	"time"

	"example.com/cookday/schedule/internal/logbook"
	"example.com/cookday/schedule/internal/strict"
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
	day, err := logDay(p)
	if err != nil {
		return Note{}, err
	}
	r := logbook.NewReader(day, faults)
	row, sentence := r.Note(words, noted(log), at)
	if sentence != "" {
		return Note{}, &InputError{Faults: []Fault{{Sentence: sentence}}}
	}
	line, ok := r.Entry(row)
	if !ok {
		return Note{}, inputError(faults)
	}
	e := entryOf(line)
	e.Line = 0
	return Note{Entry: e, Dish: e.Dish, Kind: string(e.Kind), Text: row.Value()}, nil
}
