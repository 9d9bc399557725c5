package meant

import (
	"math"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// foodOf finds which food a dish is of: by the fields that say so, or by a field that is
// called like one. What is left of the group has no such field any more.
func (t *taker) foodOf(n *strict.Node) (rest, food *strict.Node) {
	var said []string
	var fields []string
	for name, value := range n.Fields() {
		if oneOf(plainWord(name), foodFields...) && value.Kind == strict.NodeText && !(plainWord(name) == "kind" && !knownFood(value.Text)) {
			said, fields = append(said, value.Text), append(fields, name)
		}
	}
	if c := n.Get("cut"); c != nil && c.Kind == strict.NodeText && knownFood(c.Text) && n.Get("name") != nil {
		if frozenWord.MatchString(n.Get("name").Text) && n.Get("start") == nil {
			return n.With("start", strict.NewText("frozen", c.Line)), nil
		}
		return n, nil // a dish has a name of its own besides
	}
	for k := range said {
		for _, text := range []string{said[k], strings.Join(said[k:], ", ")} {
			s := Dish(decimalPoint(text), t.Eaters, n.Line)
			if !s.Certain() || len(said) > 1 && text == said[k] && !t.rest(said, k) {
				continue
			}
			rest = n
			for _, f := range fields {
				rest = rest.Without(f)
			}
			for field := range s.Node.Fields() {
				if field != "cut" && rest.Get(field) != nil {
					s.Node = s.Node.Without(field)
				}
			}
			t.tell(s)
			if k == 0 && len(said) > 1 && text == said[k] && !knownFood(said[1]) {
				rest = rest.With("name", strict.NewText(said[1], n.Line))
			}
			return rest, s.Node
		}
	}
	if len(said) == 1 && n.Get("cut") == nil && fields[0] != "name" { // which food it is, if it is one that is not known
		return n.Without(fields[0]), strict.NewGroup(n.Line).WithAt("cut", n.LineOf(fields[0]), strict.NewText(said[0], n.LineOf(fields[0])))
	}
	if len(said) > 0 {
		return n, nil
	}
	for name, value := range n.Fields() {
		if s := Dish(name, t.Eaters, n.Line); s.Certain() && !oneOf(strings.ToLower(name), formDish...) && (value.Kind == strict.NodeNumber || value.Kind == strict.NodeText) {
			if s = Dish(asSpoken(name, strict.NewText(decimalPoint(value.Text), value.Line)), t.Eaters, n.Line); s.Certain() {
				t.tell(s)
				return n.Without(name), s.Node
			}
		}
	}
	return n, nil
}

// tell says what a cook has to see of how the words of a dish were read.
func (t *taker) tell(s Spoken) {
	for _, said := range s.Told() {
		t.say("%s", said)
	}
}

// rest says whether the other words for the food of a dish are only a name of it.
func (t *taker) rest(said []string, but int) bool {
	for k, text := range said {
		if k != but && (knownFood(text) || Dish(text, t.Eaters, 0).Node == nil && knownFood(said[but]) && k < but) {
			continue
		}
		if k != but {
			return false
		}
	}
	return true
}

// loneFood is a group of one field that no table knows, as the text of a dish: its name is
// what the cook calls the food. Empty for every other group.
func loneFood(n *strict.Node) string {
	fields := 0
	text := ""
	for name, value := range n.Fields() {
		fields++
		_, known := guessOf("dishes", name)
		if oneOf(strings.ToLower(name), formDish...) || known && !knownFood(name) || value.Kind != strict.NodeText && value.Kind != strict.NodeNumber {
			return ""
		}
		text = asSpoken(name, value)
	}
	if fields != 1 {
		return ""
	}
	return text
}

// thawed is a dish that goes by the clock without a start in the freezer, which the clock does
// not know: it is planned thawed, and that is said.
func (t *taker) thawed(dish *strict.Node) *strict.Node {
	start, food := dish.Get("start"), dish.Get("cut")
	if start == nil || food == nil || start.Text != "frozen" {
		return dish
	}
	c, unknown := cut.One(food.Text)
	if unknown != "" || c.Style != cut.Timed || c.Food == "leftovers" {
		return dish
	}
	t.say("%s, frozen: it goes by the clock, which knows only thawed ones, so thaw it in the refrigerator the night before; from frozen it takes longer than the plan says", food.Text)
	return dish.Without("start")
}

// boneOf takes whether there is a bone in a dish: it is another cut, or makes no difference
// that a plan has a figure for; nil where it is not understood.
func (t *taker) boneOf(dish *strict.Node, word string, value *strict.Node) *strict.Node {
	yes, known := value.Says()
	if !known {
		return nil
	}
	said := map[bool]string{true: "bone-in", false: "boneless"}[yes == oneOf(word, "bonein", "bone")]
	food := dish.Get("cut")
	for _, called := range []string{said + " " + food.Text, food.Text + " " + said} {
		if c, unknown := cut.One(called); unknown == "" {
			return dish.With("cut", strict.NewText(c.Name, food.Line))
		}
	}
	if c, unknown := cut.One(food.Text); unknown == "" {
		if bone := strings.Contains(c.Name, "bone-in"); !bone || said == "bone-in" {
			t.say("%s is one cut here, with its bone or without", c.InText())
			return dish
		}
	}
	return nil
}

// allOfIt is a dish of small pieces whose weight no piece has: it is what all of them weigh, as
// it is on a line in words.
func (t *taker) allOfIt(dish *strict.Node) *strict.Node {
	weight, food := dish.Get("weight"), dish.Get("cut")
	if weight == nil || food == nil || dish.Get("count") != nil || dish.Get("weights") != nil {
		return dish
	}
	c, unknown := cut.One(food.Text)
	kg, err := unit.ParseMass(weight.Text)
	if unknown != "" || err != nil || !c.Quick() || float64(kg) <= c.MaxPieceKg {
		return dish
	}
	n := int(math.Round(float64(kg) / c.UsualKg(food.Text)))
	t.say("%s of %s is taken as all of it: %d pieces of the usual weight", weight.Text, food.Text, n)
	return dish.Without("weight").With("count", strict.NewNumber(n, weight.Line))
}
