package strict

import "strings"

// Fault is one thing wrong with a document or with what it says.
type Fault struct {
	Path     string // dishes[0].weight; "" for the whole document
	Sentence string // names the value and what would be right
	Line     int    // 0 where there is no document

	said string // how the sentence begins: the value in our words
}

// AsWritten is the fault with the value as the cook wrote it, where that is known.
func (f Fault) AsWritten(text string) Fault {
	const longest = 40 // of a number with its unit; more is no number that a person wrote
	if rest, ok := strings.CutPrefix(f.Sentence, f.said); ok && f.said != "" && text != "" && len(text) <= longest {
		f.Sentence = text + rest
	}
	f.said = ""
	return f
}
