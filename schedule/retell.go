package schedule

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"time"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
)

// retell writes a request in the form's words, as far as they are certain. What a cook wrote
// and the plan does nothing with stays as a comment; lines that are right stay as they are.
// Only a document of YAML whose fields begin at the left margin is written anew.
func retell(data []byte, now time.Time) (retold []byte, changed bool) {
	if begins := bytes.TrimLeft(data, " \t\r\n"); len(begins) == 0 || begins[0] == '{' || begins[0] == '[' {
		return retellJSON(data, now)
	}
	if plain, left := meant.Plain(data, now); plain != nil && len(left) == 0 {
		return retellPlain(data, plain, now), true
	}
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree == nil || tree.Kind != strict.NodeObject || faults.Len() > 0 {
		return data, false
	}
	taken := newDecoderOn(faults, now).take(tree)
	w := writer{lines: strings.SplitAfter(string(data), "\n"), was: tree, is: taken.Request}
	for _, said := range taken.Heard {
		w.tail = append(w.tail, behindHash(said))
	}
	return w.write()
}

// retellJSON is [retell] of JSON, a field on each line. It has no remarks, so how words were read
// stands in heard, which the plan says.
func retellJSON(data []byte, now time.Time) (retold []byte, changed bool) {
	tree, faults := strict.ParseDocument(data, strict.MaxRequestBytes)
	if tree == nil || tree.Kind != strict.NodeObject || faults.Len() > 0 {
		return data, false
	}
	taken := newDecoderOn(faults, now).take(tree)
	is := taken.Request
	if len(taken.Heard) > 0 && is.Get("heard") == nil {
		list := strict.NewList(0)
		for _, said := range taken.Heard {
			list.Items = append(list.Items, strict.NewText(askedFor.ReplaceAllString(said, ""), 0))
		}
		is = is.With("heard", list)
	}
	if is.Same(tree) {
		return data, false
	}
	var lines []string
	for name, value := range is.Fields() {
		said := value.JSON()
		if value.Kind == strict.NodeList && name == "dishes" {
			var items []string
			for _, item := range value.Items {
				items = append(items, "  "+item.JSON())
			}
			said = "[\n" + strings.Join(items, ",\n") + "\n]"
		}
		lines = append(lines, strconv.Quote(name)+": "+said)
	}
	return []byte("{\n" + strings.Join(lines, ",\n") + "\n}\n"), true
}

// writer writes the fields at the left margin of a document one after the other.
type writer struct {
	lines   []string
	was, is *strict.Node
	out     strings.Builder
	tail    []string
	changed bool
}

func (w *writer) write() ([]byte, bool) {
	type block struct {
		name     string
		from, to int // lines, from 1; the last is not in it
	}
	var blocks []block
	for name := range w.was.Fields() {
		blocks = append(blocks, block{name, w.was.LineOf(name), len(w.lines) + 1})
	}
	for k := range blocks[:max(len(blocks)-1, 0)] {
		if blocks[k].to = blocks[k+1].from; blocks[k].to <= blocks[k].from {
			return nil, false // two fields on a line
		}
	}
	for k, b := range blocks {
		if k == 0 {
			w.out.WriteString(strings.Join(w.lines[:b.from-1], ""))
		}
		var fields []string
		for name := range w.is.Fields() {
			if line := w.is.LineOf(name); line >= b.from && line < b.to || line < 1 && k == 0 {
				fields = append(fields, name)
			}
		}
		w.block(b.name, w.lines[b.from-1:b.to-1], fields)
	}
	if !w.changed {
		return nil, false
	}
	text := strings.TrimRight(w.out.String(), "\n") + "\n" + strings.Join(w.tail, "")
	return []byte(text), true
}

// block writes what stands now for one field of before.
func (w *writer) block(was string, lines, fields []string) {
	if len(fields) == 1 && fields[0] == was && w.was.Get(was).Same(w.is.Get(was)) {
		w.out.WriteString(strings.Join(lines, ""))
		return
	}
	w.changed = true
	if len(fields) == 0 {
		for _, line := range lines {
			if text := strings.TrimRight(line, "\r\n"); strings.TrimSpace(text) == "" || strings.HasPrefix(strings.TrimSpace(text), "#") {
				w.out.WriteString(text + "\n")
			} else {
				w.out.WriteString("# " + text + "\n")
			}
		}
		return
	}
	for _, name := range fields {
		w.field(name, w.is.Get(name))
	}
	for _, line := range lines {
		if strings.HasPrefix(strings.TrimSpace(line), "#") || strings.TrimSpace(line) == "" && strings.HasSuffix(line, "\n") {
			w.out.WriteString(line)
		}
	}
}

// plainItem is a text that stands behind a dash without quotes and stays a text.
var plainItem = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9 ,.()/@½¼¾"'&+-]*$`)

func (w *writer) field(name string, value *strict.Node) {
	if !regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9_ -]*$`).MatchString(name) {
		name = strict.NewText(name, 0).Flow()
	}
	if value.Kind != strict.NodeList || name != "dishes" {
		w.out.WriteString(name + ": " + value.Flow() + "\n")
		return
	}
	w.out.WriteString(name + ":\n")
	for _, item := range value.Items {
		text := item.Flow()
		if item.Kind == strict.NodeText && plainItem.MatchString(item.Text) {
			text = item.Text
		}
		w.out.WriteString("  - " + text + "\n")
	}
}

// retellPlain is a note or a table in the form's fields, with what was written behind a #.
func retellPlain(data []byte, plain *strict.Node, now time.Time) []byte {
	taken := newDecoderOn(&strict.FaultList{}, now).take(plain)
	w := writer{is: taken.Request}
	for name, value := range taken.Request.Fields() {
		w.field(name, value)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		w.out.WriteString("# " + strings.TrimSpace(line) + "\n")
	}
	for _, said := range taken.Heard {
		w.out.WriteString(behindHash(said))
	}
	return []byte(w.out.String())
}

// askedFor is what a cook was asked to write and is written now.
var askedFor = regexp.MustCompile(`: said later it would be another day, .*$`)

// behindHash is how something was read as a remark in the request that says it now.
func behindHash(said string) string {
	return "# " + askedFor.ReplaceAllString(strings.ReplaceAll(said, "\n", " "), "") + "\n"
}
