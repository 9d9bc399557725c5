package schedule

import (
	"fmt"
	"sort"
	"strings"
)

// maxFaults is how many faults are told; a file with more is not one that a
// person mends line by line.
const maxFaults = 100

// faultList gathers faults in the order in which they are found.
type faultList struct {
	faults []Fault
	more   int // found beyond maxFaults
}

func (f *faultList) len() int { return len(f.faults) + f.more }

// add notes a fault of a value.
func (f *faultList) add(path, format string, args ...any) { f.addLine(path, 0, format, args...) }

// addLine notes a fault of a document.
func (f *faultList) addLine(path string, line int, format string, args ...any) {
	if len(f.faults) == maxFaults {
		f.more++
		return
	}
	f.faults = append(f.faults, Fault{Path: path, Sentence: fmt.Sprintf(format, args...), Line: line})
}

// addValue notes a fault whose sentence begins with the value: said is the value in
// our words, for which [faultList.adopt] puts what the cook wrote.
func (f *faultList) addValue(path, said, format string, args ...any) {
	known := len(f.faults)
	f.add(path, "%s %s", said, fmt.Sprintf(format, args...))
	for i := known; i < len(f.faults); i++ {
		f.faults[i].said = said
	}
}

// adopt takes over faults of the values unless one is known about the same
// field, a part of it or what it is part of: then the value is not what the cook wrote.
func (f *faultList) adopt(found []Fault, source *decoder) {
	known := f.faults
	for _, fault := range found {
		told := false
		for _, k := range known {
			told = told || within(k.Path, fault.Path) || within(fault.Path, k.Path)
		}
		if !told {
			f.addLine(fault.Path, source.lineOf(fault.Path), "%s", fault.asWritten(source.texts[fault.Path]).Sentence)
		}
	}
}

// within says whether path is outer or a part of it.
func within(path, outer string) bool {
	rest, ok := strings.CutPrefix(path, outer)
	return ok && (outer == "" || rest == "" || rest[0] == '.' || rest[0] == '[')
}

// err is nil or an *InputError with the faults in the order of the document.
func (f *faultList) err() error {
	if len(f.faults) == 0 {
		return nil
	}
	sort.SliceStable(f.faults, func(i, j int) bool { return f.faults[i].Line < f.faults[j].Line })
	if f.more > 0 {
		f.faults = append(f.faults, Fault{Sentence: fmt.Sprintf("there are %d more faults", f.more)})
	}
	return &InputError{Faults: f.faults}
}
