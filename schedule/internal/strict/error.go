package strict

import (
	"strings"
)

// Fault is one thing wrong with a request, plan or log of readings.
type Fault struct {
	Path     string `json:"path"`     // dishes[0].weight; "" for the whole document
	Sentence string `json:"sentence"` // names the value and what would be right
	Line     int    `json:"line,omitempty"`

	said string // how the sentence begins: the value in our words
}

// asWritten is the fault with the value as the cook wrote it, where that is known.
func (f Fault) AsWritten(text string) Fault {
	const longest = 40 // of a number with its unit; more is no number that a person wrote
	if rest, ok := strings.CutPrefix(f.Sentence, f.said); ok && f.said != "" && text != "" && len(text) <= longest {
		f.Sentence = text + rest
	}
	f.said = ""
	return f
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

// String is "path: sentence".
func (f Fault) String() string {
	if f.Path == "" {
		return f.Sentence
	}
	return f.Path + ": " + f.Sentence
}
