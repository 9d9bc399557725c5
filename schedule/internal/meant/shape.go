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
		inside := !(meals > 1 && oneOf(plainWord(name), mealNames...)) && value.Kind == strict.NodeObject && !isForm(name) && holdsFields(value) && !holdsMenu(value) && (!namesGrill(name) || holdsGrill(value))
		for inner := range value.Fields() {
			inside = inside && n.Get(inner) == nil && out.Get(inner) == nil
		}
		if !inside {
			out = out.WithAt(name, n.LineOf(name), value)
			continue
		}
		for inner, v := range value.Fields() {
			line := value.LineOf(inner)
			if oneOf(plainWord(name), partyNames...) && oneOf(plainWord(inner), "start", "starts", "begin", "begins", "starttime", "startsat") {
				inner = partyStarts // of a party, and not of its cook
			}
			out = out.WithAt(inner, line, v)
		}
	}
	return out
}

// partyNames are groups of fields about the party itself.
var partyNames = []string{"event", "party", "occasion", "meal", "dinner", "lunch", "supper", "bbq", "cookout", "barbecue", "gathering"}

// partyStarts is the field that says when a party begins.
const partyStarts = "party starts"

// holdsGrill says whether a group of what is there has the grill in a field of its own.
func holdsGrill(group *strict.Node) bool {
	for name, value := range group.Fields() {
		if oneOf(plainWord(name), "grill", "smoker", "cooker", "bbq", "barbecue") && (value.Kind == strict.NodeText || value.Kind == strict.NodeObject) && group.Get("kind") == nil {
			for other := range group.Fields() {
				if oneOf(plainWord(other), "oven", "cooler", "box", "thermometer", "probes", "chimney", "tools") {
					return true
				}
			}
		}
	}
	return false
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
