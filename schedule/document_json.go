package schedule

import (
	"bytes"
	"encoding/json"
	"errors"
)

// parseJSON reads exactly one JSON value.
func parseJSON(data []byte, faults *faultList) *node {
	var whole json.RawMessage
	if err := json.Unmarshal(data, &whole); err != nil { // syntax and what follows, in one place
		line := 1
		var syntax *json.SyntaxError
		if errors.As(err, &syntax) {
			line = lineAt(data, min(int(syntax.Offset), len(data)))
		}
		faults.addLine("", line, "the document is not JSON near line %d: %s", line, err)
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
	faults  *faultList
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

func (j *jsonTree) value(path string, depth int) *node {
	token, line := j.token()
	out := &node{line: line}
	switch t := token.(type) {
	case nil:
		out.kind = nodeNull
	case bool:
		out.kind, out.text = nodeBoolean, map[bool]string{true: "true", false: "false"}[t]
	case json.Number:
		out.kind, out.text = nodeNumber, t.String()
	case string:
		out.kind, out.text = nodeText, t
	case json.Delim:
		if depth > maxDepth {
			j.faults.addLine(path, line, "is nested more than %d deep", maxDepth)
			j.skip()
			break
		}
		j.group(out, t, path, depth)
	}
	return out
}

func (j *jsonTree) group(out *node, open json.Delim, path string, depth int) {
	out.kind = nodeObject
	if open == '[' {
		out.kind = nodeList
	}
	for j.decoder.More() {
		if open == '[' {
			out.items = append(out.items, j.value(itemPath(path, len(out.items)), depth+1))
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
