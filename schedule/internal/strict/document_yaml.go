package strict

import (
	"bytes"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"
)

// parseYAML reads exactly one YAML document.
func parseYAML(data []byte, faults *FaultList) *Node {
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var document, second yaml.Node
	if err := decoder.Decode(&document); err != nil {
		addYAMLError(err, faults)
		return nil
	}
	if err := decoder.Decode(&second); err == nil {
		faults.AddLine("", second.Line, "a second document begins here; a file holds one request")
		return nil
	} else if !errors.Is(err, io.EOF) {
		addYAMLError(err, faults)
		return nil
	}
	return yamlTree{faults}.build(document.Content[0], "", 1)
}

var yamlErrorText = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

func addYAMLError(err error, faults *FaultList) {
	if errors.Is(err, io.EOF) { // nothing but comments
		faults.AddLine("", 0, "the document is empty; a request begins with \"format: 1\"")
		return
	}
	text, line := err.Error(), 0
	if m := yamlErrorText.FindStringSubmatch(text); m != nil {
		text = m[2]
		line, _ = strconv.Atoi(m[1])
	}
	where := ""
	if line > 0 {
		where = " near line " + strconv.Itoa(line)
	}
	if strings.Contains(text, "cannot start any token") { // what the parser says of a tab, and of a few signs
		text += "; indent with spaces, not with tabs, and quote what begins with @, ` or %"
	}
	faults.AddLine("", line, "the document is not YAML%s: %s", where, text)
}

// yamlTree turns YAML nodes into the neutral tree.
type yamlTree struct{ faults *FaultList }

func (y yamlTree) build(n *yaml.Node, path string, depth int) *Node {
	out := &Node{Line: n.Line}
	if depth > maxDepth {
		y.faults.AddLine(path, n.Line, "is nested more than %d deep", maxDepth)
		return out
	}
	if !y.plain(n, path) {
		return out
	}
	switch n.Kind {
	case yaml.MappingNode:
		out.Kind = NodeObject
		for i := 0; i+1 < len(n.Content); i += 2 {
			y.member(out, n.Content[i], n.Content[i+1], path, depth)
		}
	case yaml.SequenceNode:
		out.Kind = NodeList
		for i, item := range n.Content {
			out.Items = append(out.Items, y.build(item, ItemPath(path, i), depth+1))
		}
	case yaml.ScalarNode:
		out.Kind, out.Text = yamlScalar(n)
	}
	return out
}

// plain refuses what would make the text mean something that it does not show.
func (y yamlTree) plain(n *yaml.Node, path string) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		y.faults.AddLine(path, n.Line, "*%s is an alias; write the value out", n.Value)
	case n.Anchor != "":
		y.faults.AddLine(path, n.Line, "&%s is an anchor; write the value alone", n.Anchor)
	case n.Style&yaml.TaggedStyle != 0:
		y.faults.AddLine(path, n.Line, "%s is a tag; write the value alone", n.Tag)
	default:
		return true
	}
	return false
}

func (y yamlTree) member(out *Node, key, value *yaml.Node, path string, depth int) {
	switch {
	case key.Kind != yaml.ScalarNode && key.Kind != yaml.AliasNode:
		y.faults.AddLine(path, key.Line, "has a field whose name is not a word")
		return
	case !y.plain(key, path):
		return
	case key.Tag == "!!merge":
		y.faults.AddLine(path, key.Line, "<< merges other fields in; write them out")
		return
	}
	inner := joinPath(path, key.Value)
	out.setField(inner, nodeField{key.Value, key.Line, y.build(value, inner, depth+1)}, y.faults)
}

func yamlScalar(n *yaml.Node) (nodeKind, string) {
	switch n.ShortTag() {
	case "!!int", "!!float":
		return NodeNumber, n.Value
	case "!!bool":
		return nodeBoolean, strings.ToLower(n.Value)
	case "!!null":
		return nodeNull, ""
	}
	return NodeText, n.Value // dates too: their field knows how to read them
}
