package strict

import (
	"errors"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// Decoder reads the neutral tree into values. It goes on after a fault, so that
// a cook mends a file in one go.
type Decoder struct {
	Faults *FaultList
	Meant  func(within, name string, value *Node) Meaning // what a field that does not exist was meant to be; may be nil
	Teach  func(path string) string                       // the line that would be right, for a field that is missing or of another kind; may be nil
	lines  map[string]int                                 // of every path that was read, for faults found later
	slips  []string                                       // fields that are there under a name that is off by a letter or so
	texts  map[string]string                              // of every quantity that was read, as it was written
}

func NewDecoder(faults *FaultList) *Decoder {
	return &Decoder{Faults: faults, lines: map[string]int{}, texts: map[string]string{}}
}

// Reader reads one node into the place it was made for.
type Reader func(n *Node, path string)

// Member is one field that an object may have.
type Member struct {
	Name     string
	Required bool
	Nullable bool // null says the same as leaving it out
	Read     Reader
}

func Optional(name string, read Reader) Member { return Member{Name: name, Read: read} }

func Required(name string, read Reader) Member { return Member{Name: name, Required: true, Read: read} }

// Object reads an object field by field; members are offered in messages in
// the order given.
func (d *Decoder) Object(n *Node, path string, members ...Member) {
	d.lines[path] = n.Line
	if !d.Is(n, path, NodeObject, "a group of fields"+d.right(path, ": ")) {
		return
	}
	if n.Probed() {
		n.probe.members(members)
		return
	}
	for _, f := range n.fields {
		inner := joinPath(path, f.name)
		i := slices.IndexFunc(members, func(m Member) bool { return m.Name == f.name })
		if i < 0 {
			d.unknown(f, path, members)
			continue
		}
		d.lines[inner] = f.line
		members[i].Required = false // it is there, if broken
		if f.value.Kind == nodeNull && members[i].Nullable {
			continue
		}
		if f.value.Kind == nodeNull {
			d.Faults.AddShape(inner, f.line, "is empty; give a value or leave the field out")
			continue
		}
		members[i].Read(f.value, inner)
	}
	for _, m := range members {
		if m.Required {
			inner := joinPath(path, m.Name)
			d.Faults.AddShape(inner, n.Line, "is missing%s", d.right(inner, "; write "))
		}
	}
}

// Meaning is what a field that does not exist was meant to be.
type Meaning struct {
	Sentence string   // what to write instead; empty where nobody knows
	Instead  []string // the fields that it stands for
	Old, New string   // what to write in the place of what, if that is certain
}

// unknown notes a field that does not exist. What it was meant to be is not missed besides:
// by its meaning, or by a slip of the pen.
func (d *Decoder) unknown(f nodeField, within string, members []Member) {
	m := Meaning{}
	if d.Meant != nil {
		m = d.Meant(within, f.name, f.value)
	}
	if near := say.NearestWord(f.name, namesOf(members)); m.Sentence == "" && near != "" {
		m = Meaning{"did you mean " + near + "?", []string{near}, f.name, near}
	}
	if m.Sentence == "" {
		m.Sentence = offer(f.name, members)
	}
	known := len(d.Faults.Faults)
	d.Faults.AddShape(joinPath(within, f.name), f.line, "there is no such field; %s", m.Sentence)
	if m.New != "" {
		d.Faults.Mended(known, m.Old, m.New)
	}
	for i := range members {
		if slices.Contains(m.Instead, members[i].Name) {
			members[i].Required = false
			d.slips = append(d.slips, joinPath(within, members[i].Name))
		}
	}
}

func namesOf(members []Member) []string {
	names := make([]string, len(members))
	for i, m := range members {
		names[i] = m.Name
	}
	return names
}

// right is the line that would be right for a field, behind a word that leads to it.
func (d *Decoder) right(path, lead string) string {
	if d.Teach == nil {
		return ""
	}
	if line := d.Teach(path); line != "" {
		return lead + line
	}
	return ""
}

func offer(name string, members []Member) string {
	names := namesOf(members)
	if name != "" && name[0] >= '0' && name[0] <= '9' { // 1,8 kg, taken apart at its comma
		return "a decimal is written with a point: 1.5 and not 1,5"
	}
	if len(names) == 1 {
		return "there is only " + names[0]
	}
	return "there are " + say.Listed(names, "and")
}

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
