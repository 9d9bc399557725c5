package logbook

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// Row is one entry as it was written.
type Row struct {
	line                    int
	path                    string // in front of the field's name in a fault
	time, dish, kind, value string
	aside                   string // of a note: what is to be said beside it
}

// Limits of a log. A probe that reports every minute for two days stays below.
const (
	MaxBytes   = 1 << 20
	MaxEntries = 5000
)

// Rows are the rows of a log, JSON or CSV; false where it cannot be read at all.
func Rows(data []byte, d *strict.Decoder) ([]Row, bool) {
	if sentence, line := strict.Unreadable(data, MaxBytes); sentence != "" {
		d.Faults.AddLine("", line, "%s", sentence)
		return nil, false
	}
	if start := bytes.TrimLeft(data, " \t\r\n"); bytes.HasPrefix(start, []byte("[")) || bytes.HasPrefix(start, []byte("{")) {
		return jsonRows(data, d), true
	}
	return csvRows(data, d.Faults), true
}

// logFields are the names of a log's columns.
var logFields = []string{"time", "dish", "kind", "value"}

// Value is the text of the column value.
func (r *Row) Value() string { return r.value }

// Aside is what is to be said beside the line of a note, as a sentence without its period; empty for nothing.
func (r *Row) Aside() string { return r.aside }

func (r *Row) field(name string) *string {
	switch name {
	case "time":
		return &r.time
	case "dish":
		return &r.dish
	case "kind":
		return &r.kind
	}
	return &r.value
}

// csvRows reads RFC 4180 with a header; columns may be in any order, and dish
// and value may be missing.
func csvRows(data []byte, faults *strict.FaultList) []Row {
	in := csv.NewReader(bytes.NewReader(data))
	in.FieldsPerRecord, in.TrimLeadingSpace, in.Comment = -1, true, '#'
	header, err := in.Read()
	if err != nil {
		faults.AddLine("", 1, "the log is not CSV: %s", err)
		return nil
	}
	columns := make([]string, len(header))
	for i, name := range header {
		columns[i] = strings.ToLower(strings.TrimSpace(name))
	}
	if !knownColumns(columns, faults) {
		return nil
	}
	var rows []Row
	for {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			return rows
		}
		var broken *csv.ParseError
		if errors.As(err, &broken) {
			faults.AddLine("", broken.Line, "line %d is not CSV: %s", broken.Line, broken.Err)
			return nil
		}
		line, _ := in.FieldPos(0)
		row := Row{line: line, path: fmt.Sprintf("line %d: ", line)}
		if len(record) > len(columns) {
			faults.AddLine(row.path+"value", line, "there are %d fields under %d columns; put text with a comma in double quotes", len(record), len(columns))
			continue
		}
		for i, text := range record {
			*row.field(columns[i]) = strings.TrimSpace(text)
		}
		rows = append(rows, row)
	}
}

func knownColumns(columns []string, faults *strict.FaultList) bool {
	before := faults.Len()
	for i, c := range columns {
		if !slices.Contains(logFields, c) {
			faults.AddLine(c, 1, "there is no such column; a log has %s", say.Listed(logFields, "and"))
		} else if slices.Index(columns, c) < i {
			faults.AddLine(c, 1, "there are two columns of this name")
		}
	}
	for _, needed := range []string{"time", "kind"} {
		if !slices.Contains(columns, needed) {
			faults.AddLine(needed, 1, "is missing; the first line of a log is %s", strings.Join(logFields, ","))
		}
	}
	return faults.Len() == before
}

// jsonRows reads an array of objects of texts, or one such object.
func jsonRows(data []byte, d *strict.Decoder) []Row {
	faults := d.Faults
	tree := strict.ParseJSON(data, faults)
	if tree == nil || faults.Len() > 0 {
		return nil
	}
	var rows []Row
	read := func(n *strict.Node, path, prefix string) {
		row := Row{line: n.Line, path: prefix}
		ReadRow(d, &row)(n, path)
		rows = append(rows, row)
	}
	if tree.Kind == strict.NodeObject {
		read(tree, "", "")
	}
	for i, n := range tree.Items {
		path := strict.ItemPath("", i)
		read(n, path, path+".")
	}
	if faults.Len() > 0 {
		return nil
	}
	return rows
}

// ReadRow reads one entry of a log in JSON.
func ReadRow(d *strict.Decoder, row *Row) strict.Reader {
	return func(n *strict.Node, path string) {
		d.Object(n, path,
			strict.Required("time", d.Text(&row.time)),
			strict.Optional("dish", d.Text(&row.dish)),
			strict.Required("kind", strict.Among(d.Text(&row.kind), false, KindNames)),
			strict.Optional("value", d.Text(&row.value)),
		)
	}
}
