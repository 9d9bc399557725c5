package testbed

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// Row is one line of a table, by column name.
type Row map[string]string

// Number is the figure in a column; a test that asks for none fails.
func (r Row) Number(t testing.TB, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("column %s of %v: %v", column, r, err)
	}
	return v
}

// Rows reads a table whose comments name its source.
func Rows(t testing.TB, path string) []Row {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s: %d lines, %v", path, len(lines), err)
	}
	var rows []Row
	for _, line := range lines[1:] {
		r := Row{}
		for i, column := range lines[0] {
			r[column] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}
