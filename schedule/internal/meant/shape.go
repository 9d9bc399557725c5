package meant

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// Shaped is a request as a group of fields, whatever its cook made of it.
func Shaped(request *strict.Node) *strict.Node { return spokenKeys(shaped(request)) }

// shaped is a request as a group of fields: dishes alone are its menu, and what stands in a
// group of its own about the day stands at the top.
func shaped(n *strict.Node) *strict.Node {
	if n.Kind == strict.NodeList && len(n.Items) > 0 && !slices.ContainsFunc(n.Items, func(item *strict.Node) bool { return !namesFood(item) }) {
		return strict.NewGroup(n.Line).With("dishes", n)
	}
	if n.Kind != strict.NodeObject {
		return n
	}
	out, meals := strict.NewGroup(n.Line), 0
	for name := range n.Fields() {
		if oneOf(plainWord(name), mealNames...) {
			meals++
		}
	}
	for name, value := range n.Fields() {
		inside := !(meals > 1 && oneOf(plainWord(name), mealNames...)) && value.Kind == strict.NodeObject && !isForm(name) && holdsFields(value) && !holdsMenu(value) && !namesGrill(name)
		for inner := range value.Fields() {
			inside = inside && n.Get(inner) == nil && out.Get(inner) == nil
		}
		if !inside {
			out = out.WithAt(name, n.LineOf(name), value)
			continue
		}
		for inner, v := range value.Fields() {
			out = out.WithAt(inner, value.LineOf(inner), v)
		}
	}
	return out
}

// spokenKeys gives a sentence that was dictated as the name of a field, or with no name at
// all, the name of what it says: "dinner on the table at six thirty p.m. this saturday: yes".
func spokenKeys(n *strict.Node) *strict.Node {
	if n.Kind != strict.NodeObject {
		return n
	}
	out := strict.NewGroup(n.Line)
	for name, value := range n.Fields() {
		yes, said := value.Says()
		when := instant.WhenWithin(name)
		if when == "" || len(strings.Fields(name)) < 4 || !(said && yes || value.Empty() && value.Text == "") || n.Get("serve") != nil {
			out = out.WithAt(name, n.LineOf(name), value)
			continue
		}
		out = out.WithAt("serve", n.LineOf(name), strict.NewText(when, value.Line))
	}
	return out
}

// namesGrill says whether a field is one of the grill by another name.
func namesGrill(name string) bool {
	g, ok := guessOf("", name)
	return ok && strings.HasPrefix(g.right, "grill:")
}
