package strict

import (
	"bytes"
	"fmt"
	"iter"
	"regexp"
	"strings"
	"unicode/utf8"

	"example.com/cookday/schedule/internal/say"
)

type nodeKind int

const (
	nodeBroken nodeKind = iota // its fault is already noted; readers pass over it
	NodeObject
	NodeList
	NodeText
	NodeNumber
	nodeBoolean
	nodeNull
)

// String says what a value is, as the rest of "is ...".
func (k nodeKind) String() string {
	return [...]string{"unreadable", "a group of fields", "a list", "text", "a number", "true or false", "empty"}[k]
}

type Node struct {
	Kind   nodeKind
	Text   string      // of text, number and boolean, as it was written
	Line   int         // from 1
	fields []nodeField // of an object, each name once
	Items  []*Node     // of a list
	probe  *prober     // of a node that only asks what is taken
}

// Fields are the fields of an object in their order.
func (n *Node) Fields() iter.Seq2[string, *Node] {
	return func(yield func(string, *Node) bool) {
		for _, f := range n.fields {
			if !yield(f.name, f.value) {
				return
			}
		}
	}
}

// Said says what a node is: "is a list", or `"brisket" is text`.
func (n *Node) Said() string {
	if n.Kind == NodeText || n.Kind == NodeNumber || n.Kind == nodeBoolean {
		return fmt.Sprintf("%s is %s", say.Quoted(n.Text), n.Kind)
	}
	return "is " + n.Kind.String()
}

type nodeField struct {
	name  string
	line  int
	value *Node
}

// Limits of a document. They keep a hostile one from costing more than reading it.
const (
	maxDepth        = 32
	MaxRequestBytes = 1 << 20
	MaxPlanBytes    = 16 << 20 // a plan of forty dishes with curves takes about a tenth
)

// ParseDocument reads one document. What begins with { is JSON, all else YAML.
// Faults that stop the reading come alone, with a nil tree.
func ParseDocument(data []byte, limit int) (*Node, *FaultList) {
	faults := &FaultList{}
	if sentence, line := Unreadable(data, limit); sentence != "" {
		faults.AddLine("", line, "%s", sentence)
		return nil, faults
	}
	if bytes.HasPrefix(bytes.TrimLeft(data, " \t\r\n"), []byte("{")) {
		return ParseJSON(data, faults), faults
	}
	return parseYAML(data, faults), faults
}

// Unreadable says why no parser should look at the bytes, and on which line.
func Unreadable(data []byte, limit int) (string, int) {
	switch {
	case len(data) > limit:
		return fmt.Sprintf("the document has %d bytes; %d are allowed", len(data), limit), 0
	case len(bytes.TrimSpace(data)) == 0:
		return "the document is empty; a request begins with \"format: 1\"", 0
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		return "the document begins with a byte order mark; save it as UTF-8 without one", 1
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return "the document is UTF-16; save it as UTF-8", 1
	}
	if at := bytes.IndexByte(data, 0); at >= 0 {
		return "the document contains a NUL byte; it is not a text file", lineAt(data, at)
	}
	if utf8.Valid(data) {
		return "", 0
	}
	at := 0
	for r, size := utf8.DecodeRune(data); r != utf8.RuneError || size > 1; r, size = utf8.DecodeRune(data[at:]) {
		at += size
	}
	return fmt.Sprintf("the byte %#02x is not UTF-8; save the document as UTF-8", data[at]), lineAt(data, at)
}

func lineAt(data []byte, offset int) int { return 1 + bytes.Count(data[:offset], []byte("\n")) }

// joinPath appends a field to a path: dishes[0] and weight give dishes[0].weight.
func joinPath(path, field string) string {
	if strings.ContainsAny(field, ".[] \n\r\t") || field == "" || len(field) > 40 {
		field = say.Quoted(field)
	}
	if path == "" {
		return field
	}
	return path + "." + field
}

func ItemPath(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }

var itemNumber = regexp.MustCompile(`\[[0-9]+\]`)

// Unnumbered is a path without the numbers of its items: dishes[].weight.
func Unnumbered(path string) string { return itemNumber.ReplaceAllString(path, "[]") }

var likeNumber = regexp.MustCompile(`^\s*[-+.0-9]`)

// LikeNumber says whether a text begins as a number does, whatever stands behind it.
func (n *Node) LikeNumber() bool { return likeNumber.MatchString(n.Text) }

// maxFields is far above what any object of ours has; it keeps the search for
// repeated names from growing with the square of the document.
const maxFields = 100

// setField adds a member to an object; a name given twice is a fault.
func (n *Node) setField(path string, f nodeField, faults *FaultList) {
	if len(n.fields) == maxFields {
		faults.AddLine(path, f.line, "is one field too many: a group has at most %d", maxFields)
		return
	}
	for _, old := range n.fields {
		if old.name == f.name {
			faults.AddLine(path, f.line, "is given twice, first on line %d; keep one", old.line)
			return
		}
	}
	n.fields = append(n.fields, f)
}

// Broken says that the fault of a node is already noted.
func (n *Node) Broken() bool { return n.Kind == nodeBroken }
