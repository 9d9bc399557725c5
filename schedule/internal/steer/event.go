package steer

import (
	"cmp"
	"slices"
)

// Kind says what an event is.
type Kind int

// The kinds, in the order in which those of one minute count: a reading is of the fire as it was.
const (
	Grate      Kind = iota // C: the air beside the meat
	Gauge                  // C: the gauge in the lid
	LidOff                 //
	LidOn                  //
	Pour                   // Count lit, Unlit beside them: a new fire
	Lit                    // Count lit coals added
	Unlit                  // Count unlit coals added
	CoalsOut               // Count burning coals taken out; below 1 a share of all coals
	AshCleared             //
	Meat                   // Kg of cold meat put on
	Wind                   // WindMS in the open
	VentsSet               // Top, Bottom: shares open; below zero: as before
	Out                    // the fire has gone out
)

// Event is one thing that was read, done or seen.
type Event struct {
	Minute      float64
	Kind        Kind
	C           float64
	Count       float64
	Unlit       float64
	Kg          float64
	WindMS      float64
	Top, Bottom float64

	closed float64 // minute at which an opened lid was closed, as the log has it; 0 if nobody said so
}

func (e Event) isReading() bool { return e.Kind == Grate || e.Kind == Gauge }

// inOrder sorts a log by time, kind and value: the order in which equal entries were written means nothing. What is
// there twice counts once.
func inOrder(events []Event) []Event {
	all := slices.Clone(events)
	slices.SortFunc(all, func(a, b Event) int {
		return cmp.Or(cmp.Compare(a.Minute, b.Minute), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.C, b.C), cmp.Compare(a.Count, b.Count),
			cmp.Compare(a.Unlit, b.Unlit), cmp.Compare(a.Kg, b.Kg), cmp.Compare(a.WindMS, b.WindMS), cmp.Compare(a.Top, b.Top), cmp.Compare(a.Bottom, b.Bottom))
	})
	return withClosings(slices.Compact(all))
}

// withClosings tells each opened lid when it was closed.
func withClosings(all []Event) []Event {
	for i := range all {
		if all[i].Kind != LidOff {
			continue
		}
		for _, e := range all[i+1:] {
			if e.Kind == LidOff || e.Minute-all[i].Minute > longestLid {
				break
			}
			if e.Kind == LidOn {
				all[i].closed = e.Minute
				break
			}
		}
	}
	return all
}

// longestLid is a closing that belongs to an opening, minutes (assumption).
const longestLid = 60
