package schedule

import (
	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
)

// dishList reads the dishes. What stands there in a cook's words is shown as a list of them.
func (d decoder) dishList(to *[]Dish) strict.Reader {
	read := strict.List(d.Decoder, to, maxDishes, d.dish)
	return func(n *strict.Node, path string) {
		if !n.Probed() && (n.Kind == strict.NodeText || n.Kind == strict.NodeObject) {
			if list, unclear := meant.Dishes(n); list != "" {
				d.Faults.AddShape(path, n.Line, "%s; it must be a list: dishes: %s%s", n.Said(), list, unclear)
				return
			}
		}
		read(n, path)
	}
}

// dishItem refuses a dish that is one text, with the group of fields that it would be.
func (d decoder) dishItem(n *strict.Node, path string) bool {
	if n.Kind != strict.NodeText || n.Probed() {
		return false
	}
	line, unclear := meant.Dish(n.Text)
	switch {
	case line == "":
		return false
	case unclear == "":
		d.Faults.AddShape(path, n.Line, "%s; it must be a group of fields: %s", n.Said(), line)
	default:
		d.Faults.AddShape(path, n.Line, "%s; it must be a group of fields. %s", n.Said(), meant.LeadTo(unclear, line))
	}
	return true
}
