package strict

import (
	"bytes"
	"encoding/json"
	"errors"
)

// ParseJSON reads exactly one JSON value.
func ParseJSON(data []byte, faults *FaultList) *Node {
	var whole json.RawMessage
	if err := json.Unmarshal(data, &whole); err != nil { // syntax and what follows, in one place
		line := 1
		var syntax *json.SyntaxError
		if errors.As(err, &syntax) {
			line = lineAt(data, min(int(syntax.Offset), len(data)))
		}
		faults.AddLine("", line, "the document is not JSON near line %d: %s", line, err)
		return nil
	}
	decoder := json.NewDecoder(bytes.NewReader(data))
	decoder.UseNumber()
	return (&jsonTree{data: data, decoder: decoder, line: 1, faults: faults}).value("", 1)
}

// jsonTree turns the tokens of a valid JSON text into the neutral tree.
type jsonTree struct {
	data    []byte
	decoder *json.Decoder
	at      int // offset up to which lines are counted
	line    int
	faults  *FaultList
}

// token returns the next one and the line it ends on.
func (j *jsonTree) token() (json.Token, int) {
	token, err := j.decoder.Token()
	if err != nil {
		return nil, j.line // cannot be: the whole text was found valid
	}
	end := int(j.decoder.InputOffset())
	j.line += bytes.Count(j.data[j.at:end], []byte("\n"))
	j.at = end
	return token, j.line
}

func (j *jsonTree) value(path string, depth int) *Node {
	token, line := j.token()
	out := &Node{Line: line}
	switch t := token.(type) {
	case nil:
		out.Kind = nodeNull
	case bool:
		out.Kind, out.Text = nodeBoolean, map[bool]string{true: "true", false: "false"}[t]
	case json.Number:
		out.Kind, out.Text = NodeNumber, t.String()
	case string:
		out.Kind, out.Text = NodeText, t
	case json.Delim:
		if depth > maxDepth {
			j.faults.AddLine(path, line, "is nested more than %d deep", maxDepth)
			j.skip()
			break
		}
		j.group(out, t, path, depth)
	}
	return out
}

func (j *jsonTree) group(out *Node, open json.Delim, path string, depth int) {
	out.Kind = NodeObject
	if open == '[' {
		out.Kind = NodeList
	}
	for j.decoder.More() {
		if open == '[' {
			out.Items = append(out.Items, j.value(ItemPath(path, len(out.Items)), depth+1))
			continue
		}
		token, line := j.token()
		name, _ := token.(string)
		inner := joinPath(path, name)
		out.setField(inner, nodeField{name, line, j.value(inner, depth+1)}, j.faults)
	}
	j.token() // the closing one
}

// skip passes over the rest of a group that was just opened.
func (j *jsonTree) skip() {
	for open := 1; open > 0 && j.at < len(j.data); {
		token, _ := j.token()
		switch token {
		case json.Delim('{'), json.Delim('['):
			open++
		case json.Delim('}'), json.Delim(']'):
			open--
		}
	}
}
