package safety

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// row is one line of a file of published values, by column name.
type row map[string]string

func readRows(t testing.TB, name string) []row {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, line := range all[1:] {
		r := row{}
		for i, column := range all[0] {
			r[column] = line[i]
		}
		rows = append(rows, r)
	}
	return rows
}

// number is a cell; an empty one is NaN.
func (r row) number(t testing.TB, column string) float64 {
	t.Helper()
	if r[column] == "" {
		return math.NaN()
	}
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s: %v", column, err)
	}
	return v
}

func fahrenheit(c float64) float64 { return c*9/5 + 32 }

// near allows for the rounding of a conversion there and back.
func near(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(b)) }
