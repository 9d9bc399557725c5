package schedule

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// LeftAside is a line of a log that cannot be read, and that the rest is followed without.
type LeftAside struct {
	Line int
	Text string // as it was written
	Why  string // what is wrong with it, and what would be right
}

// FollowLog reads a log as [ReadLog] does, for somebody who stands beside the food: a line of CSV that cannot be read
// is left aside and named, and the rest is read. A log all of whose dishes are none of the day's is that of another day:
// its fire is not this fire. That, a log without a line that can be read, a header that is wrong, and
// JSON, which no hand writes, are errors as there. What is stored or judged is read by ReadLog.
func FollowLog(data []byte, p Plan) ([]Entry, []LeftAside, error) {
	whole, first := ReadLog(data, p)
	var faulty *InputError
	if first == nil || !errors.As(first, &faulty) || isJSON(data) {
		return whole, nil, first
	}
	lines, aside, foreign := bytes.Split(data, []byte("\n")), []LeftAside(nil), false
	for err := first; err != nil; whole, err = ReadLog(bytes.Join(lines, []byte("\n")), p) {
		if !errors.As(err, &faulty) {
			return nil, nil, first
		}
		before := len(aside)
		for _, f := range faulty.Faults {
			if f.Line < 2 || f.Line > len(lines) {
				return nil, nil, first // the header, or no line
			}
			if slices.ContainsFunc(aside, func(a LeftAside) bool { return a.Line == f.Line }) {
				continue
			}
			why := strings.TrimPrefix(f.String(), fmt.Sprintf("line %d: ", f.Line))
			foreign = foreign || strings.HasSuffix(f.Path, ": dish")
			aside = append(aside, LeftAside{Line: f.Line, Text: strings.TrimSpace(string(lines[f.Line-1])), Why: why})
		}
		if len(aside) == before {
			return nil, nil, first
		}
		for _, a := range aside {
			lines[a.Line-1] = []byte("#") // a comment, so that the others keep their numbers
		}
	}
	if len(whole) == 0 {
		return nil, nil, first
	}
	if foreign && !slices.ContainsFunc(whole, func(e Entry) bool { return e.Dish != "" }) {
		return nil, nil, &InputError{Faults: []Fault{{Sentence: "none of its dishes is on the menu of this day, so it is the log of another one; give the log of this day"}}}
	}
	slices.SortFunc(aside, func(a, b LeftAside) int { return a.Line - b.Line })
	return whole, aside, nil
}

// isJSON says whether a log is JSON, and not CSV.
func isJSON(data []byte) bool {
	start := bytes.TrimLeft(data, " \t\r\n")
	return bytes.HasPrefix(start, []byte("[")) || bytes.HasPrefix(start, []byte("{"))
}

// WithLeftAside is a revised plan that says first which lines of its log were left aside.
func (p Plan) WithLeftAside(aside []LeftAside) Plan {
	var said []Finding
	for _, a := range aside {
		said = append(said, NewFinding(LineLeft, "", fmt.Sprintf("Line %d of the log is left aside, and what it says is not counted: %s. It cannot be read: %s. Correct it, and ask again.",
			a.Line, a.Text, strings.TrimSuffix(strings.ReplaceAll(a.Why, "\n", " "), "."))))
	}
	p.Findings = slices.Concat(said, p.Findings)
	return p
}
