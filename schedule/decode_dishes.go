package schedule

import (
	"strings"

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

// dishItem is a dish in the form's words; nil where what a text says is not understood.
func (d decoder) dishItem(n *strict.Node, path string) *strict.Node {
	switch {
	case n.Probed():
		n.TakesText()
		return n
	case n.Kind == strict.NodeObject:
		return d.day.Tidy(n)
	case n.Kind != strict.NodeText:
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
