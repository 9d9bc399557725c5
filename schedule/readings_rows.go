package schedule

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// logRow is one entry as it was written.
type logRow struct {
	line                    int
	path                    string // in front of the field's name in a fault
	time, dish, kind, value string
}

// logFields are the names of a log's columns.
var logFields = []string{"time", "dish", "kind", "value"}

func (r *logRow) field(name string) *string {
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
func csvRows(data []byte, faults *faultList) []logRow {
	in := csv.NewReader(bytes.NewReader(data))
	in.FieldsPerRecord, in.TrimLeadingSpace, in.Comment = -1, true, '#'
	header, err := in.Read()
	if err != nil {
		faults.addLine("", 1, "the log is not CSV: %s", err)
		return nil
	}
	columns := make([]string, len(header))
	for i, name := range header {
		columns[i] = strings.ToLower(strings.TrimSpace(name))
	}
	if !knownColumns(columns, faults) {
		return nil
	}
	var rows []logRow
	for {
		record, err := in.Read()
		if errors.Is(err, io.EOF) {
			return rows
		}
		var broken *csv.ParseError
		if errors.As(err, &broken) {
			faults.addLine("", broken.Line, "line %d is not CSV: %s", broken.Line, broken.Err)
			return nil
		}
		line, _ := in.FieldPos(0)
		row := logRow{line: line, path: fmt.Sprintf("line %d: ", line)}
		if len(record) > len(columns) {
			faults.addLine(row.path+"value", line, "there are %d fields under %d columns; put text with a comma in double quotes", len(record), len(columns))
			continue
		}
		for i, text := range record {
			*row.field(columns[i]) = strings.TrimSpace(text)
		}
		rows = append(rows, row)
	}
}

func knownColumns(columns []string, faults *faultList) bool {
	before := faults.len()
	for i, c := range columns {
		if !slices.Contains(logFields, c) {
			faults.addLine(c, 1, "there is no such column; a log has %s", listed(logFields, "and"))
		} else if slices.Index(columns, c) < i {
			faults.addLine(c, 1, "there are two columns of this name")
		}
	}
	for _, needed := range []string{"time", "kind"} {
		if !slices.Contains(columns, needed) {
			faults.addLine(needed, 1, "is missing; the first line of a log is %s", strings.Join(logFields, ","))
		}
	}
	return faults.len() == before
}

// jsonRows reads an array of objects of texts, or one such object.
func jsonRows(data []byte, faults *faultList) []logRow {
	tree := parseJSON(data, faults)
	if tree == nil || faults.len() > 0 {
		return nil
	}
	d := newDecoder(faults)
	var rows []logRow
	read := func(n *node, path, prefix string) {
		row := logRow{line: n.line, path: prefix}
		d.object(n, path,
			required("time", d.text(&row.time)),
			optional("dish", d.text(&row.dish)),
			required("kind", d.text(&row.kind)),
			optional("value", d.text(&row.value)),
		)
		rows = append(rows, row)
	}
	if tree.kind == nodeObject {
		read(tree, "", "")
	}
	for i, n := range tree.items {
		path := itemPath("", i)
		read(n, path, path+".")
	}
	if faults.len() > 0 {
		return nil
	}
	return rows
}
