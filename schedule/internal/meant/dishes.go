package meant

import (
	"regexp"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
)

// betweenDishes are the words between two dishes of one text.
var betweenDishes = regexp.MustCompile(`\s*(?:[,;&+\n]|\band\b|\bplus\b)\s*`)

// Dishes are several dishes in a cook's words: a text, a list of them, or foods with what
// is said of each. The last says whether all of it was understood, and in one way.
// Heard is what a cook has to see of how they were read.
func Dishes(n *strict.Node, eaters int) (list *strict.Node, open string, certain bool, heard []string) {
	list = strict.NewList(n.Line)
	certain = true
	for _, item := range itemsOf(n, eaters) {
		if item.Node == nil {
			return nil, item.Lead(), false, nil
		}
		if !item.Certain() {
			certain = false
			open += "; " + strings.TrimPrefix(Spoken{Unclear: item.Unclear, Left: item.Left}.Lead(), "; ")
		}
		list.Items = append(list.Items, item.Node)
		heard = append(heard, item.Told()...)
	}
	if len(list.Items) == 0 {
		return nil, "", false, nil
	}
	return list, open, certain, heard
}

// itemsOf are the dishes of a text, of a list, or of foods with what is said of each.
func itemsOf(n *strict.Node, eaters int) (items []Spoken) {
	switch n.Kind {
	case strict.NodeText:
		whole := Dish(n.Text, eaters, n.Line)
		if whole.Certain() || len(betweenDishes.Split(n.Text, -1)) < 2 {
			return []Spoken{whole}
		}
		for _, text := range betweenDishes.Split(n.Text, -1) {
			one := Dish(text, eaters, n.Line)
			if one.Node == nil { // then it is no list of dishes
				return []Spoken{whole}
			}
			items = append(items, one)
		}
	case strict.NodeList:
		for _, item := range n.Items {
			if item.Kind == strict.NodeText {
				items = append(items, Dish(item.Text, eaters, item.Line))
			} else {
				items = append(items, Spoken{})
			}
		}
	case strict.NodeObject:
		for name, value := range n.Fields() {
			items = append(items, named(name, value, eaters))
		}
	}
	return items
}

// named is a dish whose food is the name of a field: "ribs: 2 racks", "turkey: {weight: 14 lb}".
func named(name string, value *strict.Node, eaters int) Spoken {
	if value.Kind == strict.NodeObject {
		s := Dish(name, eaters, value.Line)
		if s.Node != nil {
			s.Node = s.Node.Joined(value)
		}
		return s
	}
	return Dish(asSpoken(name, value), eaters, value.Line)
}

// asSpoken is a food and what stands behind it as one text.
func asSpoken(name string, value *strict.Node) string {
	switch value.Kind {
	case strict.NodeText:
		return name + ", " + value.Text
	case strict.NodeNumber:
		if c, unknown := cut.One(name); unknown == "" && c.Style == cut.Tough && !c.Ribs() {
			return name + ", " + value.Text + " lb"
		}
		return name + ", " + value.Text
	}
	return name
}

// meantDish is the meaning of a field that is called like a food: "ribs: 2 racks".
func meantDish(group, name string, value *strict.Node) strict.Meaning {
	if cuts, outside := cut.Named(name); len(cuts)+len(outside) == 0 {
		return strict.Meaning{}
	}
	s := named(name, value, 0)
	if s.Node == nil {
		return strict.Meaning{Sentence: s.Lead()}
	}
	if group == "" {
		in := s
		in.Node = nil
		return strict.Meaning{Sentence: leadTo(in.Lead(), "dishes: ["+s.Line()+"]"), Instead: []string{"dishes"}}
	}
	return strict.Meaning{Sentence: s.Lead(), Instead: []string{"cut", "weight", "count"}}
}

// leadTo is a sentence that ends in the line to write.
func leadTo(open, line string) string {
	switch {
	case open == "":
		return "write " + line
	case strings.HasSuffix(open, "write which"):
		return open + ": " + line
	}
	return open + "; without that it is " + line
}
