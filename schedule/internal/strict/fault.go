package strict

import (
	"fmt"
	"sort"
	"strings"
)

// Fault is one thing wrong with a document or with what it says.
type Fault struct {
	Path     string // dishes[0].weight; "" for the whole document
	Sentence string // names the value and what would be right
	Line     int    // 0 where there is no document
	Mend     Mend   // zero where no mend is certain
	Shape    bool   // it is about fields and kinds of values, not about what the values say

	said string // how the sentence begins: the value in our words
}

// Mend is what to write on the line of a fault in the place of what stands there.
type Mend struct {
	Old, New string
	To       int // the last line of the field that Old names, where New stands for all of it; 0 for a part of one line
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

// maxFaults is how many faults are told; a file with more is not one that a
// person mends line by line.
const maxFaults = 100

// FaultList gathers faults in the order in which they are found.
type FaultList struct {
	Faults []Fault
	more   int // found beyond maxFaults
}

func (f *FaultList) Len() int { return len(f.Faults) + f.more }

// Add notes a fault of a value.
func (f *FaultList) Add(path, format string, args ...any) { f.AddLine(path, 0, format, args...) }

// AddLine notes a fault of a document.
func (f *FaultList) AddLine(path string, line int, format string, args ...any) {
	if len(f.Faults) == maxFaults {
		f.more++
		return
	}
	f.Faults = append(f.Faults, Fault{Path: path, Sentence: fmt.Sprintf(format, args...), Line: line})
}

// AddShape notes a fault of the fields of a document, or of a kind of value.
func (f *FaultList) AddShape(path string, line int, format string, args ...any) {
	known := len(f.Faults)
	f.AddLine(path, line, format, args...)
	for i := known; i < len(f.Faults); i++ {
		f.Faults[i].Shape = true
	}
}

// Mended adds to the newest fault, if there is one since known, what would mend it.
func (f *FaultList) Mended(known int, old, right string) {
	if len(f.Faults) == known+1 {
		f.Faults[known].Mend = Mend{Old: old, New: right}
	}
}

// instead tells a fault in other words.
func (f *FaultList) instead(at int, sentence string, mend Mend) {
	if at < len(f.Faults) {
		fault := &f.Faults[at]
		fault.Sentence, fault.said, fault.Mend = sentence, "", mend
	}
}

// AddValue notes a fault whose sentence begins with the value: said is the value in
// our words, for which [FaultList.Adopt] puts what the cook wrote.
func (f *FaultList) AddValue(path, said, format string, args ...any) {
	known := len(f.Faults)
	f.Add(path, "%s %s", said, fmt.Sprintf(format, args...))
	for i := known; i < len(f.Faults); i++ {
		f.Faults[i].said = said
	}
}

// Adopt takes over faults of the values unless one is known about the same
// field, a part of it or what it is part of: then the value is not what the cook wrote.
func (f *FaultList) Adopt(found []Fault, source *Decoder) {
	known := f.Faults
	for _, fault := range found {
		told := false
		for _, k := range known {
			told = told || within(k.Path, fault.Path) || within(fault.Path, k.Path)
		}
		for _, path := range source.slips {
			told = told || within(fault.Path, path)
		}
		if !told {
			before := len(f.Faults)
			f.AddLine(fault.Path, source.lineOf(fault.Path), "%s", fault.AsWritten(source.texts[fault.Path]).Sentence)
			f.Mended(before, fault.Mend.Old, fault.Mend.New)
		}
	}
}

// within says whether path is outer or a part of it.
func within(path, outer string) bool {
	rest, ok := strings.CutPrefix(path, outer)
	return ok && (outer == "" || rest == "" || rest[0] == '.' || rest[0] == '[')
}

// InOrder are the faults in the order of the document; nil where there are none.
func (f *FaultList) InOrder() []Fault {
	if len(f.Faults) == 0 {
		return nil
	}
	sort.SliceStable(f.Faults, func(i, j int) bool { return f.Faults[i].Line < f.Faults[j].Line })
	if f.more > 0 {
		f.Faults = append(f.Faults, Fault{Sentence: fmt.Sprintf("there are %d more faults", f.more)})
	}
	return f.Faults
}

// MendedWhole adds to the newest fault, if there is one since known, a line that stands for
// the whole field that ends on the line to.
func (f *FaultList) MendedWhole(known int, field, right string, to int) {
	if len(f.Faults) == known+1 {
		f.Faults[known].Mend = Mend{Old: field, New: right, To: to}
	}
}
