package strict

import (
	"errors"
	"regexp"
	"strconv"
	"strings"
)

// Is notes a fault unless the node is of the kind that is wanted.
func (d *Decoder) Is(n *Node, path string, kind nodeKind, want string) bool {
	if n.Kind == kind {
		if n.Probed() {
			n.probe.asked(kind)
		}
		return true
	}
	if n.Kind != nodeBroken {
		d.Faults.AddShape(path, n.Line, "%s; it must be %s", n.Said(), want)
	}
	return false
}

func (d *Decoder) Text(to *string) Reader {
	return func(n *Node, path string) {
		switch {
		case n.Kind == NodeNumber || n.Kind == nodeBoolean:
			known := len(d.Faults.Faults)
			d.Faults.AddShape(path, n.Line, "%s is %s; put it in quotes to make it text", n.Text, n.Kind)
			d.Faults.Mended(known, n.Text, strconv.Quote(n.Text))
		case d.Is(n, path, NodeText, "text"):
			*to = n.Text
		}
	}
}

func (d *Decoder) Boolean(to *bool) Reader {
	return func(n *Node, path string) {
		if d.Is(n, path, nodeBoolean, "true or false, without quotes") {
			*to = n.Text == "true"
		}
	}
}

var (
	wholeNumber   = regexp.MustCompile(`^(0|-?[1-9][0-9]*)$`)
	decimalNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?$`)
)

// number looks for a number; one in quotes is mended without them.
func (d *Decoder) number(n *Node, path, want string) bool {
	known := len(d.Faults.Faults)
	is := d.Is(n, path, NodeNumber, want)
	if !is && n.Kind == NodeText && decimalNumber.MatchString(n.Text) {
		d.Faults.Mended(known, strconv.Quote(n.Text), n.Text)
	}
	return is
}

func (d *Decoder) Whole(to *int, example string) Reader {
	return func(n *Node, path string) {
		if !d.number(n, path, "a whole number such as "+example+", without quotes") {
			return
		}
		if n.Probed() {
			n.probe.shape.Whole = true
		}
		v, err := strconv.ParseInt(n.Text, 10, 32)
		if err != nil || !wholeNumber.MatchString(n.Text) {
			d.Faults.AddShape(path, n.Line, "%s must be a whole number such as %s", n.Text, example)
			return
		}
		*to = int(v)
	}
}

func (d *Decoder) Number(to *float64, example string) Reader {
	return func(n *Node, path string) {
		if !d.number(n, path, "a number such as "+example+", without quotes") {
			return
		}
		v, err := strconv.ParseFloat(n.Text, 64)
		if err != nil || !decimalNumber.MatchString(n.Text) { // the pattern refuses NaN and infinities
			d.Faults.AddLine(path, n.Line, "%s must be a plain number such as %s", n.Text, example)
			return
		}
		*to = v
	}
}

// Quantity reads text with a unit; a bare number gets the sentence that names the units.
func Quantity[T any](d *Decoder, to *T, parse func(string) (T, error)) Reader {
	return func(n *Node, path string) {
		if n.Kind != NodeNumber && !d.Is(n, path, NodeText, "text with a unit") {
			return
		}
		v, err := parse(n.Text)
		switch {
		case err != nil && n.Kind == NodeNumber:
			d.Faults.AddShape(path, n.Line, "%s", err)
			return
		case err != nil:
			known := len(d.Faults.Faults)
			d.Faults.AddLine(path, n.Line, "%s", err)
			var slip interface{ Right() string }
			if errors.As(err, &slip) {
				d.Faults.Mended(known, n.Text, slip.Right())
			}
			return
		case n.Probed():
			n.probe.asked(n.Kind)
		}
		*to, d.texts[path] = v, n.Text
	}
}

// Pointed reads into a value that is nil where the field is left out.
func Pointed[T any](to **T, read func(*T) Reader) Reader {
	return func(n *Node, path string) {
		v := new(T)
		read(v)(n, path)
		*to = v
	}
}

// NotZero refuses a typed 0 where the zero value stands for a field left out.
func NotZero[T comparable](d *Decoder, to *T, read Reader) Reader {
	return func(n *Node, path string) {
		var zero T
		known := d.Faults.Len()
		if read(n, path); *to == zero && d.Faults.Len() == known && n.Kind != nodeBroken {
			d.Faults.AddLine(path, n.Line, "%s is too little; give more or leave the field out", n.Text)
		}
	}
}

// List reads every item of a list; more than most is refused before any is read.
func List[T any](d *Decoder, to *[]T, most int, read func(*T) Reader) Reader {
	return func(n *Node, path string) {
		if !d.Is(n, path, NodeList, "a list"+d.right(path, ": ")) {
			return
		}
		if n.Probed() {
			n.probe.items(read(new(T)), most)
			return
		}
		if len(n.Items) > most {
			d.Faults.AddShape(path, n.Line, "has %d items; at most %d are allowed", len(n.Items), most)
			return
		}
		for i, item := range n.Items {
			var v T
			inner := ItemPath(path, i)
			d.lines[inner] = item.Line
			if item.Kind == nodeNull {
				d.Faults.AddShape(inner, item.Line, "is empty; give a value or leave the item out")
			} else {
				read(&v)(item, inner)
			}
			*to = append(*to, v)
		}
	}
}

// lineOf is the line of a path or of the nearest thing around it.
func (d *Decoder) lineOf(path string) int {
	for {
		if line, ok := d.lines[path]; ok || path == "" {
			return line
		}
		path = path[:max(strings.LastIndexAny(path, ".["), 0)]
	}
}
