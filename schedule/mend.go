package schedule

import (
	"errors"
	"slices"
	"strings"
)

// Mend is the text of a request with every slip set right whose meaning is certain, such as
// a field that is off by a letter; false where there is none, or where the text reads no
// better for it.
func Mend(data []byte) (mended []byte, certain bool) {
	for range maxMends { // what is read for the first time may have slips of its own
		next, ok := mendOnce(data)
		if !ok {
			break
		}
		data, certain = next, true
	}
	return data, certain
}

// maxMends is how deep a request may be nested, and more.
const maxMends = 5

func mendOnce(data []byte) (mended []byte, certain bool) {
	_, err := Read(data)
	var before *InputError
	if !errors.As(err, &before) {
		return data, false
	}
	lines := strings.SplitAfter(string(data), "\n")
	for _, f := range before.Faults {
		if f.Line < 1 || f.Line > len(lines) || f.right == "" {
			continue
		}
		at := &lines[f.Line-1]
		if f.old != "" && strings.Count(*at, f.old) == 1 { // else it is not certain which
			*at = strings.Replace(*at, f.old, f.right, 1)
			certain = true
		}
	}
	mended = []byte(strings.Join(lines, ""))
	if _, err = Read(mended); err == nil {
		return mended, certain
	}
	var after *InputError
	return mended, certain && errors.As(err, &after) && !slips(after, before)
}

// slips says whether any fault of before is still there.
func slips(after, before *InputError) bool {
	for _, f := range before.Faults {
		if f.right != "" && slices.Contains(after.Faults, f) {
			return true
		}
	}
	return false
}
