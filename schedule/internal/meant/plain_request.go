package meant

import (
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

// request is what was heard; nil where no food is.
func (n *note) request() *strict.Node {
	if len(n.dishes)+len(n.meals) == 0 || len(n.when)+len(n.guests)+len(n.grill) == 0 && n.form.Empty() {
		return nil
	}
	return n.asRequest()
}

// asRequest is what was heard, each thing in its field.
func (n *note) asRequest() *strict.Node {
	n.loneMeal()
	n.when = append(n.oneDay(), n.places...)
	out := strict.NewGroup(1)
	for _, f := range []struct {
		name, joint string
		said        []*strict.Node
	}{{"serve", " ", n.when}, {"guests", " ", n.guests}, {"grill", " ", n.grill}, {"notes", ", ", n.others}, {"earliest", "", nil}, {"weather", "", nil}, {"rest", "", nil}, {"pit temp", "", nil}} {
		if form := n.form.Get(f.name); form != nil {
			out = out.WithAt(f.name, form.Line, form)
		} else if len(f.said) > 0 {
			line := f.said[0].Line
			out = out.WithAt(f.name, line, strict.NewText(joined(f.said, f.joint), line))
		}
	}
	if out = n.served(out); len(n.dishes) == 0 {
		return out
	}
	list := strict.NewList(n.dishes[0].Line)
	list.Items = append(list.Items, n.dishes...)
	return out.WithAt("dishes", list.Line, list)
}

// joined are the texts of parts as one.
func joined(parts []*strict.Node, joint string) string {
	var texts []string
	for _, part := range parts {
		texts = append(texts, part.Text)
	}
	return strings.Join(texts, joint)
}
