package strict

import (
	"encoding/json"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// NewText is a text that stands for what was written on a line.
func NewText(text string, line int) *Node { return &Node{Kind: NodeText, Text: text, Line: line} }

// NewNumber is a whole number that stands for what was written on a line.
func NewNumber(n, line int) *Node {
	return &Node{Kind: NodeNumber, Text: strconv.Itoa(n), Line: line}
}

// NewGroup is a group of fields without any yet.
func NewGroup(line int) *Node { return &Node{Kind: NodeObject, Line: line} }

// NewList is a list that stands for what was written on a line.
func NewList(line int, items ...*Node) *Node {
	return &Node{Kind: NodeList, Line: line, Items: items}
}

// Get is the value of a field; nil for none.
func (n *Node) Get(name string) *Node {
	for _, f := range n.fields {
		if f.name == name {
			return f.value
		}
	}
	return nil
}

// With is a group with one field set.
func (n *Node) With(name string, value *Node) *Node {
	out := *n
	out.fields = slices.Clone(n.fields)
	for i := range out.fields {
		if out.fields[i].name == name {
			out.fields[i].value = value
			return &out
		}
	}
	out.fields = append(out.fields, nodeField{name, value.Line, value})
	return &out
}

// LineOf is the line on which a field begins; 0 for none.
func (n *Node) LineOf(name string) int {
	for _, f := range n.fields {
		if f.name == name {
			return f.line
		}
	}
	return 0
}

// WithAt is a group with one field set that begins on a line.
func (n *Node) WithAt(name string, line int, value *Node) *Node {
	out := n.With(name, value)
	for i := range out.fields {
		if out.fields[i].name == name {
			out.fields[i].line = line
		}
	}
	return out
}

// Same says whether two nodes say the same, wherever they stand.
func (n *Node) Same(other *Node) bool {
	if n == nil || other == nil || n.Kind != other.Kind || n.Text != other.Text || len(n.fields) != len(other.fields) || len(n.Items) != len(other.Items) {
		return n == other
	}
	for i, f := range n.fields {
		if f.name != other.fields[i].name || !f.value.Same(other.fields[i].value) {
			return false
		}
	}
	for i, item := range n.Items {
		if !item.Same(other.Items[i]) {
			return false
		}
	}
	return true
}

// Without is a group without one of its fields.
func (n *Node) Without(name string) *Node {
	out := *n
	out.fields = slices.DeleteFunc(slices.Clone(n.fields), func(f nodeField) bool { return f.name == name })
	return &out
}

// Says says whether a value is written as yes or no: in YAML these are texts.
func (n *Node) Says() (yes, known bool) {
	if n.Kind != NodeText && n.Kind != nodeBoolean {
		return false, false
	}
	switch strings.ToLower(n.Text) {
	case "yes", "y", "true":
		return true, true
	case "no", "n", "false", "none":
		return false, true
	}
	return false, false
}

// LastLine is the last line of what a node holds, as far as that is known.
func (n *Node) LastLine() int {
	last := n.Line
	for _, f := range n.fields {
		last = max(last, f.line, f.value.LastLine())
	}
	for _, item := range n.Items {
		last = max(last, item.LastLine())
	}
	return last
}

// plainText is text that stands in a line of YAML without quotes and stays a text.
var plainText = regexp.MustCompile(`^(?:[A-Za-z][A-Za-z0-9 ./'_-]*|[0-9][0-9./]*(?: [0-9]+/[0-9]+)? ?[A-Za-z]+(?: [a-z]+)?|[0-9]{4}-[0-9]{2}-[0-9]{2})$`)

// Flow is a node in one line of YAML.
func (n *Node) Flow() string {
	switch n.Kind {
	case NodeObject:
		var parts []string
		for _, f := range n.fields {
			parts = append(parts, f.name+": "+f.value.Flow())
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case NodeList:
		var parts []string
		for _, item := range n.Items {
			parts = append(parts, item.Flow())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case NodeText:
		word := strings.ToLower(n.Text)
		if !plainText.MatchString(n.Text) || slices.Contains([]string{"true", "false", "null", "yes", "no", "y", "n", "on", "off"}, word) {
			return strconv.Quote(n.Text)
		}
	}
	return n.Text
}

// JSON is a node in one line of JSON.
func (n *Node) JSON() string {
	switch n.Kind {
	case NodeObject:
		var parts []string
		for _, f := range n.fields {
			parts = append(parts, strconv.Quote(f.name)+": "+f.value.JSON())
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case NodeList:
		var parts []string
		for _, item := range n.Items {
			parts = append(parts, item.JSON())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case NodeText:
		text, _ := json.Marshal(n.Text) // a text always marshals
		return string(text)
	case nodeNull:
		return "null"
	}
	return n.Text
}

// OrText is a reader that takes a text besides: what it says is found out before it is read
// ([Decoder.Understood]), and a text that was not understood is a fault of its value.
func OrText(d *Decoder, read Reader) Reader {
	return func(n *Node, path string) {
		switch {
		case n.Kind == NodeText && n.Probed():
			n.probe.asked(NodeText)
		case n.Kind == NodeText:
			d.Faults.AddLine(path, n.Line, "%s cannot be read%s", n.Said()[:strings.LastIndex(n.Said(), " is ")], d.right(path, "; write it as in "))
		default:
			read(n, path)
		}
	}
}

// Joined is a group with the fields of another one set.
func (n *Node) Joined(other *Node) *Node {
	out := n
	for _, f := range other.fields {
		out = out.With(f.name, f.value)
	}
	return out
}

// NewTruth is true or false, as it stands for what was written on a line.
func NewTruth(yes bool, line int) *Node {
	return &Node{Kind: nodeBoolean, Text: strconv.FormatBool(yes), Line: line}
}

// TakesText notes that a text is taken too.
func (n *Node) TakesText() {
	if n.Probed() && n.Kind == NodeText {
		n.probe.asked(NodeText)
	}
}

// TakesAnyGroup notes that a group of any fields is taken too.
func (n *Node) TakesAnyGroup() {
	if n.Probed() && n.Kind == NodeObject {
		n.probe.asked(NodeObject)
		n.probe.shape.AnyFields = true
	}
}

// AlsoWords notes that a text may be one of these words too.
func (n *Node) AlsoWords(words ...string) { n.probe.more = append(n.probe.more, words...) }

// TakesTruth notes that true and false are taken too.
func (n *Node) TakesTruth() {
	if n.Probed() && n.Kind == nodeBoolean {
		n.probe.asked(nodeBoolean)
	}
}

// Empty says whether a group has no fields.
func (n *Node) Empty() bool { return len(n.fields) == 0 }
