package schedule

import (
	"bytes"
	"errors"
	"reflect"
	"slices"
	"strings"
	"time"
)

// Mend is the text of a request with every slip set right whose meaning is certain, such as
// a field that is off by a letter; false where there is none, or where the text reads no
// better for it.
func Mend(data []byte) (mended []byte, certain bool) { return MendOn(data, time.Time{}) }

// MendOn is [Mend] on a day, as [ReadOn] has it: then "Saturday 6pm" is a date.
// What was taken of a cook's own words ([Understand]) is written in the form's, once.
func MendOn(data []byte, now time.Time) (mended []byte, certain bool) {
	if plain := asWritten(data); !bytes.Equal(plain, data) {
		_, before := ReadOn(data, now)
		_, after := ReadOn(plain, now)
		data, certain = plain, before != nil && after == nil
	}
	if _, err := ReadOn(data, now); err != nil {
		if retold, changed := retell(data, now); changed && noWorse(retold, data, now) {
			data, certain = retold, true
		}
	}
	for range maxMends { // what is read for the first time may have slips of its own
		next, ok := mendOnce(data, now)
		if !ok || !noWorse(next, data, now) {
			break
		}
		data, certain = next, true
	}
	return data, certain
}

// noWorse reads a mended request back: it has no more faults than it had, and it asks for the same day where it was understood before.
func noWorse(mended, was []byte, now time.Time) bool {
	before, old := Understand(was, now)
	after, err := Understand(mended, now)
	var left, then *InputError
	switch {
	case err == nil && old == nil:
		before.Heard, after.Heard = nil, nil
		return reflect.DeepEqual(before, after)
	case err == nil:
		return true
	case old == nil:
		return false
	case !errors.As(err, &left) || !errors.As(old, &then):
		return true
	}
	return len(left.Faults) <= len(then.Faults)
}

// maxMends is how deep a request may be nested, and more.
const maxMends = 5

func mendOnce(data []byte, now time.Time) (mended []byte, certain bool) {
	_, err := ReadOn(data, now)
	var before *InputError
	if !errors.As(err, &before) {
		return data, false
	}
	lines := strings.SplitAfter(string(data), "\n")
	written := map[string]bool{}
	for _, f := range before.Faults {
		switch {
		case f.Line < 1 || f.to > len(lines) || f.Line > len(lines):
		case f.to > 0:
			certain = mendField(lines, f, written) || certain
		case f.right != "" && f.old != "" && strings.Count(lines[f.Line-1], f.old) == 1: // else it is not certain which
			lines[f.Line-1] = strings.Replace(lines[f.Line-1], f.old, f.right, 1)
			certain = true
		}
	}
	mended = []byte(strings.Join(lines, ""))
	if _, err = ReadOn(mended, now); err == nil {
		return mended, certain
	}
	var after *InputError
	return mended, certain && errors.As(err, &after) && !slips(after, before)
}

// mendField writes a line in the place of a whole field; what two fields say together is
// written once.
func mendField(lines []string, f Fault, written map[string]bool) bool {
	at := &lines[f.Line-1]
	indent := len(*at) - len(strings.TrimLeft(*at, " "))
	if name := strings.TrimLeft((*at)[indent:], `"`); !strings.HasPrefix(name, f.old) {
		return false
	}
	for k := f.Line; k < f.to; k++ {
		lines[k] = ""
	}
	if f.right == "" || written[f.right] {
		*at = ""
		return true
	}
	written[f.right] = true
	*at = (*at)[:indent] + f.right + "\n"
	return true
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
