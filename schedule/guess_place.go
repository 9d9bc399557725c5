package schedule

import (
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
)

// place finds a place for a part of a text that was not understood: as food, else nowhere.
func (g *guesser) place(text string) {
	if guests := meant.GuessGuests(text, 1); guests != nil && g.tree.Get("guests") == nil && people.MatchString(text) {
		g.tree = g.tree.WithAt("guests", 1, guests)
		g.marks["guests"] = mark("these people", text)
		return
	}
	found := false
	for _, dish := range meant.GuessDishes(text, 0, 0) {
		if dish.Node != nil && !g.heading(dish) {
			g.dishes = append(g.dishes, g.marked(dish))
			found = true
		}
	}
	if !found {
		g.leave(text)
	}
}

// people are words for who eats.
var people = regexp.MustCompile(`(?i)\b(?:people|persons?|guests?|adults?|grown[- ]?ups?|of us|eaters?|party of|friends|family)\b`)

// leave keeps a part of a text that the guess does nothing with.
func (g *guesser) leave(text string) {
	text = strings.Join(strings.Fields(text), " ")
	if text != "" && !slices.Contains(g.unused, text) {
		g.unused = append(g.unused, text)
	}
}

// drop takes a field away that has no place; what is food in it is a dish.
func (g *guesser) drop(name string) {
	value := g.tree.Get(name)
	if value == nil {
		return
	}
	g.tree = g.tree.Without(name)
	said := strings.Trim(value.Flow(), "{}\"")
	if value.Kind == strict.NodeText {
		said = value.Text
	}
	if name == "rest" && len(g.dishes) == 1 && g.dishes[0].node.Kind == strict.NodeObject && g.dishes[0].node.Get("rest") == nil {
		g.dishes[0].node = g.dishes[0].node.With("rest", value)
		return
	}
	if amountName.MatchString(name) && value.Kind == strict.NodeText && len(g.dishes) == 1 && g.amountOfOne(value.Text) {
		return
	}
	if value.Kind == strict.NodeText && len(g.dishes) == 1 && g.attribute(value.Text) {
		return
	}
	if _, known := fieldOf(name); known && name != "dishes" {
		g.leave(name + ": " + said)
		return
	}
	g.place(name + ": " + said)
}
