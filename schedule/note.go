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
	Aside            string // a sentence to be said beside it, of what the line does not tell; empty for none
}

// ReadNote reads a few words, such as "brisket 152", "brisket wrapped" or "fire out 20
// min ago", as one more entry of the log of a plan at an instant, or as several: "wrapped
// at 165". A time of day without am or pm is the latest such moment that is not after the
// instant. A number without a unit is in the plan's units; where the other one fits better,
// that is asked back. Beside a line may stand what to do about the words that only told
// how a thing looks, or that one piece of several is done. What is not understood is an error: no word is left out, or kept as
// something else. The error is an *[InputError].
func ReadNote(words []string, p Plan, log []Entry, at time.Time) ([]Note, error) {
	faults := &strict.FaultList{}
	day, err := logDay(p)
	if err != nil {
		return nil, err
	}
	r := logbook.NewReader(day, faults)
	rows, sentence := r.Note(words, noted(log), at)
	if sentence != "" {
		return nil, &InputError{Faults: []Fault{{Sentence: sentence}}}
	}
	var all []Note
	for _, row := range rows {
		line, ok := r.Entry(row)
		if !ok {
			return nil, inputError(faults)
		}
		e := entryOf(line)
		e.Line = 0
		all = append(all, Note{Entry: e, Dish: e.Dish, Kind: string(e.Kind), Text: row.Value(), Aside: row.Aside()})
	}
	return all, nil
}

// Emergency is what to do about words that tell of danger to people, a fire outside the grill
// or under a roof, smoke indoors, somebody dizzy or burned, and about meat that has gone off;
// empty where they tell of none. It needs no plan: ask it before anything else. [ReadNote]
// answers such words with the same text, as an error.
func Emergency(words []string) string { return logbook.Emergency(words) }
