package schedule

import (
	_ "embed"
	"encoding/csv"
	"strings"
	"sync"

	"example.com/cookday/schedule/internal/strict"
)

// Field is one field of a request, as references and messages show it.
type Field struct {
	Path    string // dishes[].weight
	Example string // the line that would be right: weight: 10 lb
	Text    string // what it means
}

//go:embed fields.csv
var fieldsCSV string

// fields are all of a request, in its order.
var fields = sync.OnceValue(func() []Field {
	rows, err := csv.NewReader(strings.NewReader(fieldsCSV)).ReadAll()
	if err != nil {
		panic(err) // the table is a part of this program
	}
	var all []Field
	for _, row := range rows[1:] {
		all = append(all, Field{Path: row[0], Example: row[1], Text: row[2]})
	}
	return all
})

// RequestFields are all fields of a request, in its order.
func RequestFields() []Field { return append([]Field(nil), fields()...) }

// fieldOf is the field of a path such as dishes[0].weight.
func fieldOf(path string) (Field, bool) {
	path = strings.TrimPrefix(path, "request.") // within a plan
	path = strict.Unnumbered(path)
	for _, f := range fields() {
		if f.Path == path {
			return f, true
		}
	}
	if at := strings.LastIndex(path, "[]"); at >= 0 { // one alone may stand for a list
		return fieldOf(path[:at] + path[at+2:])
	}
	return Field{}, false
}

// rightLine is the line that would be right for a field of a request. The day is one to come.
func (d decoder) rightLine(path string) string {
	if line, ok := d.saw.lines()[path]; ok {
		return line
	}
	if line, ok := d.taught[path]; ok {
		return line
	}
	return exampleLine(path)
}

// exampleLine is the line of the reference for a field.
func exampleLine(path string) string {
	if path == "" {
		return "serve, grill and dishes, such as these lines: serve: Saturday 6 PM / grill: kettle 22 in / guests: 8 / dishes: [pork butt 8 lb, sausages, corn]; cookday new asks for a day and writes one"
	}
	f, _ := fieldOf(path)
	if items, listed := strings.CutPrefix(f.Example, f.Path+": ["); listed && strings.HasSuffix(path, "]") { // an item of the list that the example has
		return strings.TrimSuffix(items, "]")
	}
	return f.Example
}
