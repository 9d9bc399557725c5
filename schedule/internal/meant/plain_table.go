package meant

import (
	"encoding/csv"
	"regexp"
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

var listRow = regexp.MustCompile(`^-\s*\[(.*)\]\s*$`)

// rowsOf are the rows of a table of cells, as a spreadsheet writes it or as lists in brackets;
// nil where the text is no table.
func rowsOf(text string) (rows [][]string) {
	named := 0
	for _, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if m := listRow.FindStringSubmatch(line); m != nil {
			line = m[1]
		} else if line != "" && !strings.ContainsAny(line, ",;\t") {
			return nil
		}
		cells := cellsOf(line)
		if isHeader(cells) || keyed(cells) {
			named++
		}
		rows = append(rows, cells)
	}
	if named == 0 || len(rows) < 2 {
		return nil
	}
	return rows
}

func cellsOf(line string) []string {
	r := csv.NewReader(strings.NewReader(line))
	r.LazyQuotes, r.TrimLeadingSpace = true, true
	for _, c := range []rune{'\t', ';'} {
		if strings.ContainsRune(line, c) {
			r.Comma = c
		}
	}
	cells, err := r.Read()
	if err != nil {
		return nil
	}
	for k := range cells {
		cells[k] = strings.TrimSpace(cells[k])
	}
	for len(cells) > 2 && cells[len(cells)-1] == "" { // a row of the day has fewer cells
		cells = cells[:len(cells)-1]
	}
	return cells
}

// isHeader says whether cells are names of fields, one of them of a dish or of the day.
func isHeader(cells []string) bool {
	n := 0
	for _, cell := range cells {
		if cell == "" {
			continue
		}
		if !isColumn(cell) {
			return false
		}
		n++
	}
	return n > 1
}

func isColumn(name string) bool {
	_, top := guessOf("", name)
	field, _ := unitOfName(name)
	_, dish := guessOf("dishes", field)
	return top || dish || isForm(name) || oneOf(strings.ToLower(name), formDish...) || oneOf(plainWord(name), foodFields...) || oneOf(plainWord(name), "weighteach", "state", "each")
}

// keyed says whether a row is a field of the day with its value.
func keyed(cells []string) bool { return len(cells) >= 2 && ofDay(cells[0]) && !isColumn(cells[1]) }

// ofDay says whether a column is of the day and not of a dish.
func ofDay(name string) bool {
	g, ok := guessOf("", name)
	return isForm(name) && !oneOf(strings.ToLower(name), "dishes", "name") || isGuests(name) || ok && (strings.HasPrefix(g.right, "serve:") || strings.HasPrefix(g.right, "grill:"))
}

// table is a request whose fields are the columns of a table: those of the day at the top,
// the others of a dish for each row.
func table(rows [][]string) *strict.Node {
	out, list := strict.NewGroup(1), strict.NewList(1)
	var columns []string
	for k, cells := range rows {
		line := k + 1
		switch {
		case keyed(cells) && (columns == nil || len(cells) == 2):
			out = out.WithAt(cells[0], line, strict.NewText(cells[1], line))
			continue
		case isHeader(cells):
			columns = cells
			continue
		}
		dish := strict.NewGroup(line)
		for i, cell := range cells {
			switch {
			case cell == "" || i >= len(columns) || columns[i] == "":
			case ofDay(columns[i]) && out.Get(columns[i]) == nil:
				out = out.WithAt(columns[i], line, strict.NewText(cell, line))
			case !ofDay(columns[i]) && digitsOnly.MatchString(cell):
				dish = dish.WithAt(columns[i], line, &strict.Node{Kind: strict.NodeNumber, Text: cell, Line: line})
			case !ofDay(columns[i]):
				dish = dish.WithAt(columns[i], line, strict.NewText(cell, line))
			}
		}
		if !dish.Empty() {
			list.Items = append(list.Items, dish)
		}
	}
	if len(list.Items) == 0 {
		return nil
	}
	return out.WithAt("dishes", list.Items[0].Line, list)
}
