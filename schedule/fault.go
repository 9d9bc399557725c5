package schedule

import (
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

// Fault is one thing wrong with a request, a plan or a log.
type Fault struct {
	Path     string `json:"path"`     // dishes[0].weight; "" for the whole document
	Sentence string `json:"sentence"` // names the value and what would be right
	Line     int    `json:"line,omitempty"`

	to         int    // the last line of the field that old names, where right stands for all of it; 0 for a part of a line
	old, right string // what to write on the line in the place of what stands there, if that is certain
}

// String is "path: sentence".
func (f Fault) String() string {
	if f.Path == "" {
		return f.Sentence
	}
	return f.Path + ": " + f.Sentence
}

// InputError carries all faults of an input, in the order of the document.
type InputError struct{ Faults []Fault }

// Error gives the faults one a line, "path: sentence".
func (e *InputError) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// inputError is nil, or an *InputError with the faults that were found.
func inputError(found *strict.FaultList) error {
	if found.Len() == 0 {
		return nil
	}
	return &InputError{Faults: faultsOf(found.InOrder())}
}

func faultsOf(found []strict.Fault) []Fault {
	var out []Fault
	for _, f := range found {
		out = append(out, Fault{Path: f.Path, Sentence: f.Sentence, Line: f.Line, old: f.Mend.Old, right: f.Mend.New, to: f.Mend.To})
	}
	return out
}
