package strict

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
)

// Decoder reads the neutral tree into values. It goes on after a fault, so that
// a cook mends a file in one go.
type Decoder struct {
	Faults     *FaultList
	Meant      func(within, name string, value *Node) Meaning // what a field that does not exist was meant to be; may be nil
	Value      func(within, name string, value *Node) Meaning // what a value was meant to be that its field cannot take; may be nil
	Understood func(within, name string, value *Node) *Node   // a value in the form's words, where it was said in others without doubt; may be nil
	Teach      func(path string) string                       // the line that would be right, for a field that is missing or of another kind; may be nil
	lines      map[string]int                                 // of every path that was read, for faults found later
	slips      []string                                       // fields that are there under a name that is off by a letter or so
	texts      map[string]string                              // of every quantity that was read, as it was written
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
			d.unknown(f, path, members, n)
			continue
		}
		d.lines[inner] = f.line
		members[i].Required = false // it is there, if broken
		f.value = d.understood(path, f)
		if f.value.Kind == nodeNull && members[i].Nullable {
			continue
		}
		if f.value.Kind == nodeNull {
			d.Faults.AddShape(inner, f.line, "is empty; give a value or leave the field out")
			continue
		}
		known := d.Faults.Len()
		members[i].Read(f.value, inner)
		d.misread(f, path, known)
	}
	for _, m := range members {
		if m.Required {
			inner := joinPath(path, m.Name)
			d.Faults.AddShape(inner, n.Line, "is missing%s", d.right(inner, "; write "))
		}
	}
}

// understood is the value of a field in the form's words.
func (d *Decoder) understood(within string, f nodeField) *Node {
	if d.Understood != nil {
		if value := d.Understood(within, f.name, f.value); value != nil {
			return value
		}
	}
	return f.value
}

// Meaning is what a field that does not exist was meant to be.
type Meaning struct {
	Sentence string   // what to write instead; empty where nobody knows
	Instead  []string // the fields that it stands for
	Old, New string   // what to write in the place of what, if that is certain
	Whole    bool     // New stands for the whole field, all of its lines; empty takes it away

	As   string // the field whose value it holds, which is then read; empty where that is not certain
	Read *Node  // that value
}

// unknown notes a field that does not exist. What it was meant to be is not missed besides:
// by its meaning, or by a slip of the pen.
// A value that is certainly another field's is read as it is, so that its faults are told too.
func (d *Decoder) unknown(f nodeField, within string, members []Member, of *Node) {
	m := Meaning{}
	if d.Meant != nil {
		m = d.Meant(within, f.name, f.value)
	}
	if near := say.NearestWord(f.name, namesOf(members)); m.Sentence == "" && near != "" {
		m = Meaning{Sentence: "did you mean " + near + "?", Instead: []string{near}, Old: f.name, New: near, As: near, Read: f.value}
	}
	if m.Sentence == "" {
		if m.Sentence = offer(f.name, members); strings.Contains(f.name, " ") && !strings.ContainsAny(f.name, "0123456789") {
			m.Sentence += "; if it is a remark, write # before it"
		}
	}
	known := len(d.Faults.Faults)
	d.Faults.AddShape(joinPath(within, f.name), f.line, "there is no such field; %s", m.Sentence)
	if m.New != "" || m.Whole {
		d.Faults.Mended(known, m.Old, m.New)
		if known < len(d.Faults.Faults) && m.Whole {
			d.Faults.Faults[known].Mend = Mend{Old: f.name, New: m.New, To: max(f.line, f.value.LastLine())}
		}
	}
	for i := range members {
		if inner := joinPath(within, m.As); members[i].Name == m.As && m.Read != nil && of.Get(m.As) == nil && d.lines[inner] == 0 {
			members[i].Required, d.lines[inner] = false, f.line
			known := d.Faults.Len()
			members[i].Read(d.understood(within, nodeField{m.As, f.line, m.Read}), inner)
			d.misread(nodeField{m.As, f.line, m.Read}, within, known)
			continue
		}
		if slices.Contains(m.Instead, members[i].Name) {
			members[i].Required = false
			d.slips = append(d.slips, joinPath(within, members[i].Name))
		}
	}
}

// misread says in the place of the faults of a value what it was meant to be, where that
// is known.
func (d *Decoder) misread(f nodeField, within string, known int) {
	if d.Value == nil || d.Faults.Len() != known+1 {
		return
	}
	if m := d.Value(within, f.name, f.value); m.Sentence != "" {
		d.Faults.instead(known, fmt.Sprintf("%s: %s", say.Quoted(f.value.Text), m.Sentence), Mend{Old: m.Old, New: m.New})
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
