package schedule

import (
	"regexp"
	"slices"
	"strconv"
)

// decoder reads the neutral tree into values. It goes on after a fault, so that
// a cook mends a file in one go.
type decoder struct {
	faults *faultList
	lines  map[string]int    // of every path that was read, for faults found later
	texts  map[string]string // of every quantity that was read, as it was written
}

func newDecoder(faults *faultList) *decoder {
	return &decoder{faults: faults, lines: map[string]int{}, texts: map[string]string{}}
}

// reader reads one node into the place it was made for.
type reader func(n *node, path string)

// member is one field that an object may have.
type member struct {
	name     string
	required bool
	nullable bool // null says the same as leaving it out
	read     reader
}

func optional(name string, read reader) member { return member{name: name, read: read} }
func required(name string, read reader) member { return member{name: name, required: true, read: read} }

// object reads an object field by field; members are offered in messages in
// the order given.
func (d *decoder) object(n *node, path string, members ...member) {
	d.lines[path] = n.line
	if !d.is(n, path, nodeObject, "a group of fields") {
		return
	}
	for _, f := range n.fields {
		inner := joinPath(path, f.name)
		i := slices.IndexFunc(members, func(m member) bool { return m.name == f.name })
		if i < 0 {
			d.faults.addLine(inner, f.line, "there is no such field%s", offer(f.name, members))
			continue
		}
		d.lines[inner] = f.line
		members[i].required = false // it is there, if broken
		if f.value.kind == nodeNull && members[i].nullable {
			continue
		}
		if f.value.kind == nodeNull {
			d.faults.addLine(inner, f.line, "is empty; give a value or leave the field out")
			continue
		}
		members[i].read(f.value, inner)
	}
	for _, m := range members {
		if m.required {
			d.faults.addLine(joinPath(path, m.name), n.line, "is missing")
		}
	}
}

func offer(name string, members []member) string {
	names := make([]string, len(members))
	for i, m := range members {
		names[i] = m.name
	}
	if name != "" && name[0] >= '0' && name[0] <= '9' { // 1,8 kg, taken apart at its comma
		return "; a decimal is written with a point: 1.5 and not 1,5"
	}
	if near := nearestWord(name, names); near != "" {
		return "; did you mean " + near + "?"
	}
	if len(names) == 1 {
		return "; there is only " + names[0]
	}
	return "; there are " + listed(names, "and")
}

// is notes a fault unless the node is of the kind that is wanted.
func (d *decoder) is(n *node, path string, kind nodeKind, want string) bool {
	if n.kind == kind {
		return true
	}
	switch n.kind {
	case nodeBroken:
	case nodeText, nodeNumber, nodeBoolean:
		d.faults.addLine(path, n.line, "%s is %s; it must be %s", quoted(n.text), n.kind, want)
	default:
		d.faults.addLine(path, n.line, "is %s; it must be %s", n.kind, want)
	}
	return false
}

func (d *decoder) text(to *string) reader {
	return func(n *node, path string) {
		switch {
		case n.kind == nodeNumber || n.kind == nodeBoolean:
			d.faults.addLine(path, n.line, "%s is %s; put it in quotes to make it text", n.text, n.kind)
		case d.is(n, path, nodeText, "text"):
			*to = n.text
		}
	}
}

func (d *decoder) boolean(to *bool) reader {
	return func(n *node, path string) {
		if d.is(n, path, nodeBoolean, "true or false, without quotes") {
			*to = n.text == "true"
		}
	}
}

var (
	wholeNumber   = regexp.MustCompile(`^(0|-?[1-9][0-9]*)$`)
	decimalNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?$`)
)

func (d *decoder) whole(to *int, example string) reader {
	return func(n *node, path string) {
		if !d.is(n, path, nodeNumber, "a whole number such as "+example+", without quotes") {
			return
		}
		v, err := strconv.ParseInt(n.text, 10, 32)
		if err != nil || !wholeNumber.MatchString(n.text) {
			d.faults.addLine(path, n.line, "%s must be a whole number such as %s", n.text, example)
			return
		}
		*to = int(v)
	}
}

func (d *decoder) number(to *float64, example string) reader {
	return func(n *node, path string) {
		if !d.is(n, path, nodeNumber, "a number such as "+example+", without quotes") {
			return
		}
		v, err := strconv.ParseFloat(n.text, 64)
		if err != nil || !decimalNumber.MatchString(n.text) { // the pattern refuses NaN and infinities
			d.faults.addLine(path, n.line, "%s must be a plain number such as %s", n.text, example)
			return
		}
		*to = v
	}
}

// quantity reads text with a unit; a bare number gets the sentence that names the units.
func quantity[T any](d *decoder, to *T, parse func(string) (T, error)) reader {
	return func(n *node, path string) {
		if n.kind != nodeNumber && !d.is(n, path, nodeText, "text with a unit") {
			return
		}
		v, err := parse(n.text)
		if err != nil {
			d.faults.addLine(path, n.line, "%s", err)
			return
		}
		*to, d.texts[path] = v, n.text
	}
}

// pointed reads into a value that is nil where the field is left out.
func pointed[T any](to **T, read func(*T) reader) reader {
	return func(n *node, path string) {
		v := new(T)
		read(v)(n, path)
		*to = v
	}
}

// notZero refuses a typed 0 where the zero value stands for a field left out.
func notZero[T comparable](d *decoder, to *T, read reader) reader {
	return func(n *node, path string) {
		var zero T
		known := d.faults.len()
		if read(n, path); *to == zero && d.faults.len() == known && n.kind != nodeBroken {
			d.faults.addLine(path, n.line, "%s is too little; give more or leave the field out", n.text)
		}
	}
}

// list reads every item of a list; more than most is refused before any is read.
func list[T any](d *decoder, to *[]T, most int, read func(*T) reader) reader {
	return func(n *node, path string) {
		if !d.is(n, path, nodeList, "a list") {
			return
		}
		if len(n.items) > most {
			d.faults.addLine(path, n.line, "has %d items; at most %d are allowed", len(n.items), most)
			return
		}
		for i, item := range n.items {
			var v T
			inner := itemPath(path, i)
			d.lines[inner] = item.line
			if item.kind == nodeNull {
				d.faults.addLine(inner, item.line, "is empty; give a value or leave the item out")
			} else {
				read(&v)(item, inner)
			}
			*to = append(*to, v)
		}
	}
}
