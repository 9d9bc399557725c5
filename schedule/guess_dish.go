package schedule

import (
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/meant"
	"example.com/cookday/schedule/internal/strict"
)

// marked is a guess of a dish with the remark that goes with it; what it leaves aside is told.
func (g *guesser) marked(dish meant.GuessedDish) guessedDish {
	for _, words := range dish.Left {
		g.leave(words + " (of " + dish.Wrote + ")")
	}
	how := dish.How
	if how == "" && len(dish.Left) > 0 {
		how = "without the words that are not used"
	}
	if how == "" {
		return guessedDish{node: dish.Node}
	}
	return guessedDish{dish.Node, mark(how, dish.Wrote)}
}

// heading says whether a dish only names what another one is of: "Ribs for Sunday" above racks
// of baby backs.
func (g *guesser) heading(dish meant.GuessedDish) bool {
	if dish.Node == nil || dish.Node.Get("weight") != nil || dish.Node.Get("weights") != nil {
		return false
	}
	if dish.Node.Get("count") != nil && !strings.Contains(strings.ToLower(dish.Wrote), " for ") {
		return false
	}
	food := dish.Node.Get("cut").Text
	for _, other := range g.dishes {
		name := other.node
		if name != nil && name.Kind == strict.NodeObject {
			name = name.Get("cut")
		}
		if name == nil || name.Kind != strict.NodeText || name.Text == dish.Wrote {
			continue
		}
		for _, inner := range g.likely(name.Text) {
			if inner.Node != nil && inner.Wrote != dish.Wrote && meant.SameFood(food, inner.Node.Get("cut").Text) {
				return true
			}
		}
	}
	return false
}

// likely are the dishes that a name may mean; each name is looked at once.
func (g *guesser) likely(name string) []meant.GuessedDish {
	if _, known := g.looked[name]; !known {
		g.looked[name] = meant.GuessDishes(name, 0, 0)
	}
	return g.looked[name]
}

// wordsToDishes guesses each dish that stands in words.
func (g *guesser) wordsToDishes() {
	was := g.dishes
	eaters := meant.Eaters(g.tree)
	var out []guessedDish
	for i, dish := range was {
		if dish.node.Kind != strict.NodeText {
			out = append(out, dish)
			continue
		}
		for _, guess := range meant.GuessDishes(dish.node.Text, eaters, 1) {
			g.dishes = without(was, i)
			switch {
			case guess.Node == nil:
				g.leave(guess.Wrote)
			case g.heading(guess):
				g.leave(guess.Wrote)
			default:
				out = append(out, g.marked(guess))
			}
		}
	}
	g.dishes = out
}

var (
	amountName = regexp.MustCompile(`(?i)^(?:amounts?|quantity|qty|size|weight|how ?much|how ?many|number|pieces)$`)
	onSecond   = regexp.MustCompile(`(?i)^.*\b(?:no|sorry|actually|make (?:it|that)|i mean)\b[\s,:]*`)
	pieceWords = regexp.MustCompile(`(?i)\b(?:plates?|pieces?|pcs|of them)\b`)
	anyDigit   = regexp.MustCompile(`\d`)
)

// amountOfOne takes an amount that stands in a field of its own for the one dish; of what is said
// twice the second.
func (g *guesser) amountOfOne(said string) bool {
	food := g.dishes[0].node.Get("cut")
	text := pieceWords.ReplaceAllString(onSecond.ReplaceAllString(said, ""), " ")
	if food == nil || !anyDigit.MatchString(text) {
		return false
	}
	first, rest, _ := strings.Cut(text, ",")
	for _, guess := range meant.GuessDishes(strings.TrimSpace(first)+" "+food.Text+", "+rest, meant.Eaters(g.tree), 1) {
		if guess.Node != nil && !guess.Title {
			g.dishes[0] = guessedDish{g.dishes[0].node.Joined(guess.Node.Without("cut").Without("name")), joinMarks(g.dishes[0].mark, mark("this amount", said))}
			return true
		}
	}
	return false
}

// attribute takes what is said of the one dish in a field of its own.
func (g *guesser) attribute(said string) bool {
	food := g.dishes[0].node.Get("cut")
	if food == nil {
		return false
	}
	guess := meant.GuessDishes(food.Text+", "+said, meant.Eaters(g.tree), 1)
	if len(guess) != 1 || guess[0].Node == nil || len(guess[0].Left) > 0 || guess[0].How != "" || guess[0].Node.Same(strict.NewGroup(1).With("cut", guess[0].Node.Get("cut"))) {
		return false
	}
	g.dishes[0].node = guess[0].Node.Joined(g.dishes[0].node)
	g.dishes[0].mark = joinMarks(g.dishes[0].mark, mark("of this dish", said))
	return true
}

// without are dishes but for one.
func without(dishes []guessedDish, at int) []guessedDish {
	return slices.Delete(slices.Clone(dishes), at, at+1)
}

// guessDish fills one dish that has a fault, or leaves it out.
func (g *guesser) guessDish(i int, rest string, f strict.Fault) {
	dish := g.dishes[i]
	field, _, _ := strings.Cut(rest, ".")
	field, _, _ = strings.Cut(field, "[")
	if dish.node.Kind != strict.NodeObject {
		g.dishes = without(g.dishes, i)
		g.leave(dish.node.Said())
		return
	}
	value := dish.node.Get(field)
	switch {
	case field == "cut":
		g.guessCut(i)
	case value != nil && guards(field):
		g.dishes = without(g.dishes, i)
		g.leave(dish.node.Flow() + " (" + f.Sentence + ")")
	case value != nil:
		g.dishes[i].node = dish.node.Without(field)
		g.dishes[i].mark = joinMarks(dish.mark, mark("the usual "+field+" stands, or what is right for who eats", value.Flow()))
	case field == "weight" && f.Sentence != "" && g.tree.Get("guests") == nil:
		g.tree = g.tree.WithAt("guests", 1, strict.NewNumber(usualGuests, 1))
		g.marks["guests"] = mark("so many eat", "")
	case field == "" || field == "weight":
		g.dishes[i].node = dish.node.With("count", strict.NewNumber(1, 1))
		g.dishes[i].mark = joinMarks(dish.mark, mark("one of the usual weight", dish.node.Flow()))
	default:
		g.dishes = without(g.dishes, i)
		g.leave(dish.node.Flow() + " (" + f.Sentence + ")")
	}
}

// guards says whether a field of a dish is never set aside for a guess: without it the dish may
// be cooked less than it must be.
func guards(field string) bool { return field == "prep" || field == "start" }

func joinMarks(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

// guessCut finds the food of a dish by its words.
func (g *guesser) guessCut(i int) {
	dish := g.dishes[i]
	var words []string
	for _, field := range []string{"cut", "name"} {
		if v := dish.node.Get(field); v != nil && v.Kind == strict.NodeText {
			words = append(words, v.Text)
		}
	}
	for _, said := range words {
		for _, guess := range meant.GuessDishes(said, meant.Eaters(g.tree), 1) {
			if guess.Node == nil {
				continue
			}
			node := guess.Node.Joined(dish.node.Without("cut"))
			marked := g.marked(guess)
			if marked.mark == "" {
				marked.mark = mark(guess.Node.Get("cut").Text, said)
			}
			g.dishes[i] = guessedDish{node, joinMarks(dish.mark, marked.mark)}
			if g.dishes[i].node.Same(dish.node) {
				break
			}
			return
		}
	}
	g.dishes = without(g.dishes, i)
	g.leave(strings.Join(words, ", ") + ", which nobody here knows how to cook")
}
