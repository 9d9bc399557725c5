package strict

import (
	"fmt"
	"sort"
	"strings"
)

// maxFaults is how many faults are told; a file with more is not one that a
// person mends line by line.
const maxFaults = 100

// faultList gathers faults in the order in which they are found.
type FaultList struct {
	Faults []Fault
	more   int // found beyond maxFaults
}

func (f *FaultList) Len() int { return len(f.Faults) + f.more }

// add notes a fault of a value.
func (f *FaultList) Add(path, format string, args ...any) { f.AddLine(path, 0, format, args...) }

// addLine notes a fault of a document.
func (f *FaultList) AddLine(path string, line int, format string, args ...any) {
	if len(f.Faults) == maxFaults {
		f.more++
		return
	}
	f.Faults = append(f.Faults, Fault{Path: path, Sentence: fmt.Sprintf(format, args...), Line: line})
}

// addValue notes a fault whose sentence begins with the value: said is the value in
// our words, for which [faultList.adopt] puts what the cook wrote.
func (f *FaultList) AddValue(path, said, format string, args ...any) {
	known := len(f.Faults)
	f.Add(path, "%s %s", said, fmt.Sprintf(format, args...))
	for i := known; i < len(f.Faults); i++ {
		f.Faults[i].said = said
	}
}

// adopt takes over faults of the values unless one is known about the same
// field, a part of it or what it is part of: then the value is not what the cook wrote.
func (f *FaultList) Adopt(found []Fault, source *Decoder) {
	known := f.Faults
	for _, fault := range found {
		told := false
		for _, k := range known {
			told = told || within(k.Path, fault.Path) || within(fault.Path, k.Path)
		}
		if !told {
			f.AddLine(fault.Path, source.lineOf(fault.Path), "%s", fault.AsWritten(source.texts[fault.Path]).Sentence)
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
