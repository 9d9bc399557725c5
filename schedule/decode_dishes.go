package schedule

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/internal/strict"
)

// dishList reads the dishes: a list of them, one alone, a text of several, or foods with
// what is said of each.
func (d decoder) dishList(to *[]Dish) strict.Reader {
	read := strict.List(d.Decoder, to, maxDishes, d.dish)
	return func(n *strict.Node, path string) {
		switch {
		case n.Probed():
			n.TakesText()
			n.TakesAnyGroup()
		case n.Kind == strict.NodeObject && n.Get("cut") != nil:
			n = strict.NewList(n.Line, n)
		case n.Kind == strict.NodeObject || n.Kind == strict.NodeText:
			if n = d.dishesInWords(n, path); n == nil {
				return
			}
		}
		read(n, path)
	}
}

// dishesInWords are dishes in a cook's words as a list; nil where not all is understood.
func (d decoder) dishesInWords(n *strict.Node, path string) *strict.Node {
	list, open, certain, heard := meant.Dishes(n, d.day.Eaters)
	said := "these dishes"
	if n.Kind == strict.NodeText {
		said = say.Quoted(n.Text)
	}
	open = strings.TrimPrefix(open, "; ")
	switch {
	case certain:
		*d.heard = append(*d.heard, heard...)
		return list
	case list == nil && open == "":
		d.Faults.AddLine(path, n.Line, "%s cannot be read; write each dish on a line of its own, such as - {cut: brisket, weight: 10 lb}", said)
	case list == nil:
		d.Faults.AddLine(path, n.Line, "%s: %s", said, open)
	default:
		d.Faults.AddLine(path, n.Line, "%s: %s. Without that: dishes: %s", said, open, list.Flow())
	}
	return nil
}

// rowAsText is a row of cells, [burgers, 8, 6 oz], as the text that says the same; another
// list stays as it is.
func rowAsText(row *strict.Node) *strict.Node {
	var cells []string
	for _, cell := range row.Items {
		switch {
		case cell.Kind != strict.NodeText && cell.Kind != strict.NodeNumber:
			return row
		case strings.TrimSpace(cell.Text) != "":
			cells = append(cells, strings.TrimSpace(cell.Text))
		}
	}
	return strict.NewText(strings.Join(cells, ", "), row.Line)
}

// dishItem is a dish in the form's words; nil where what a text says is not understood.
func (d decoder) dishItem(n *strict.Node, path string) *strict.Node {
	switch {
	case n.Probed():
		n.TakesText()
		return n
	case n.Kind == strict.NodeObject:
		n, cutting := d.day.Cutting(d.day.Tidy(n))
		if cutting != "" {
			*d.heard = append(*d.heard, cutting)
		}
		return n
	case n.Kind == strict.NodeList && len(n.Items) > 0:
		n = rowAsText(n)
	}
	if n.Kind != strict.NodeText {
		return n
	}
	s := meant.Dish(n.Text, d.day.Eaters, n.Line)
	if s.Certain() {
		*d.heard = append(*d.heard, s.Told()...)
		return s.Node
	}
	d.Faults.AddLine(path, n.Line, "%s: %s", say.Quoted(n.Text), s.Lead())
	return nil
}

// teachCut finds the line that would be right for what a dish is, where that is missing: the
// food that its name says, or what is not known of that name; never another food.
func (d decoder) teachCut(n *strict.Node, path string) {
	if n.Kind != strict.NodeObject || n.Probed() || n.Get("cut") != nil {
		return
	}
	line := "what it is, as in cut: chicken-thigh"
	if words := d.wordsOf(n, path); words != "" {
		c, unknown := cut.One(words)
		if line = "cut: " + c.Name; unknown != "" {
			line = "what it is behind cut:, for " + unknown
			if near, ok := meant.Nearest(words); ok {
				line = fmt.Sprintf("cut: %s to plan it as that, for %s%s", near.Name, unknown, tooRare(near, n))
			}
		}
	}
	d.taught[path+".cut"] = line
}

// tooRare says why a dish can not be done as its group wants it, where it is planned as another
// food that is not cooked so; empty where it can.
func tooRare(c cut.Cut, dish *strict.Node) string {
	for _, field := range []string{"target", "doneness", "done"} {
		v := dish.Get(field)
		if v == nil || v.Kind != strict.NodeText || v.LikeNumber() {
			continue
		}
		if _, ok := c.FindDoneness(meant.Doneness(v.Text)); !ok && c.Food == "poultry" {
			return fmt.Sprintf("; and leave %s: %s out, for poultry is cooked to 165 °F", field, v.Text)
		}
	}
	return ""
}

// wordsOf are those by which a dish is called: its name, else a field that is none.
func (d decoder) wordsOf(n *strict.Node, path string) string {
	for _, field := range []string{"name", "id"} {
		if v := n.Get(field); v != nil && v.Kind == strict.NodeText && v.Text != "" {
			return v.Text
		}
	}
	for field, v := range n.Fields() {
		_, known := fieldOf("dishes[]." + field)
		if !known && strings.Contains(field, " ") && d.day.Field(path, field, v).Sentence == "" {
			return field
		}
	}
	return ""
}
