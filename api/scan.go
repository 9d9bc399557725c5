package api

import "fmt"

// Limits that hold before a tree is built of a body: each value of YAML takes hundreds
// of bytes, so that a mebibyte of them would take hundreds. A request of forty dishes has
// under two thousand values (counted), a full log sixteen signs an entry.
const (
	maxRequestSigns = 10_000
	maxLogSigns     = 100_000
	maxNesting      = 64
)

// sign says whether a byte can part one value from another.
var sign = func() (t [256]bool) {
	for _, b := range []byte(",:[{-?\n") {
		t[b] = true
	}
	return t
}()

// scanned refuses what has more values than a cook writes, or nests them deeper. It
// counts signs and not values, and so needs no tree and no memory.
func scanned(data []byte, most int) error {
	signs, depth := 0, 0
	for _, b := range data {
		switch {
		case sign[b]:
			if signs++; signs > most {
				return problem("too-many", fmt.Sprintf("The body has more than %d commas, colons, dashes, brackets and lines: that is more than is read.", most))
			}
			if b == '[' || b == '{' {
				depth++
			}
		case b == ']' || b == '}':
			depth = max(depth-1, 0)
		}
		if depth > maxNesting {
			return problem("too-many", fmt.Sprintf("The body is nested more than %d deep.", maxNesting))
		}
	}
	return nil
}

// maxWord is how much of a word without a blank is told again: a number of a thousand
// digits helps nobody.
const maxWord = 60

// briefly is a sentence without words that nobody can read.
func briefly(sentence string) string {
	out := make([]byte, 0, len(sentence))
	run, skipped := 0, false
	for _, r := range sentence {
		if r == ' ' || r == '\n' {
			run, skipped = 0, false
		} else if run++; run > maxWord {
			if !skipped {
				out, skipped = append(out, "..."...), true
			}
			continue
		}
		out = append(out, string(r)...)
	}
	return string(out)
}
