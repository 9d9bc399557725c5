package meant

import (
	"regexp"
	"slices"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

var bullet = regexp.MustCompile(`^\s*[-*•]\s+`)

// menuNames are fields for what there is to eat beside those of the table (common practice,
// no source).
var menuNames = []string{"fleisch", "courses", "course", "things", "stuff", "meal", "lunchmenu", "dinnermenu", "grilling", "smoking", "cook", "roasting", "list", "foodlist", "ongrill", "onthegrill", "starters", "starter", "appetizers", "veg", "veggies", "beilagen", "hauptgang", "kids menu", "tocook", "toeat", "foods", "eats", "togrill", "tosmoke", "fish", "seafood", "poultry", "beef", "pork"}

var numberedDish = regexp.MustCompile(`(?i)^(?:dish|item|food|meat|course|main|side)\s*#?_?\d+$`)

// isMenu says whether a field holds dishes: by its name, or because all that it holds is food.
func (t *taker) isMenu(name string, value *strict.Node) bool {
	word := plainWord(name)
	g, ok := guessOf("", name)
	switch {
	case numberedDish.MatchString(name), ok && strings.HasPrefix(g.right, "dishes:"), oneOf(word, menuNames...) && !knownFood(name):
		return value.Kind == strict.NodeText || value.Kind == strict.NodeObject || value.Kind == strict.NodeList
	case ok || isForm(name) || word == "notes":
		return false
	case knownFood(name):
		return !ofDish(word)
	}
	return allFood(value, t.Eaters)
}

// namesFood says whether a group says of a dish which food it is.
func namesFood(n *strict.Node) bool {
	if n.Kind != strict.NodeObject {
		return false
	}
	for name, value := range n.Fields() {
		if oneOf(plainWord(name), foodFields...) && value.Kind == strict.NodeText {
			return true
		}
	}
	return false
}

// foodFields are names of the field that says which food a dish is.
var foodFields = []string{"cut", "name", "type", "meat", "food", "item", "dish", "protein", "product", "what", "title", "kind", "ingredient"}

// allFood says whether every thing in a list or group is food.
func allFood(n *strict.Node, eaters int) bool {
	if n.Kind == strict.NodeText && len(strings.Fields(n.Text)) > 30 || n.Kind == strict.NodeNumber {
		return false
	}
	items := itemsOf(n, eaters)
	for k, item := range items {
		if item.Node == nil && !(n.Kind == strict.NodeList && namesFood(n.Items[k])) {
			return false
		}
	}
	return len(items) > 0
}

// holdsMenu says whether a group about a meal has its dishes in it.
func holdsMenu(group *strict.Node) bool {
	for name, value := range group.Fields() {
		if g, ok := guessOf("", name); (name == "dishes" || ok && strings.HasPrefix(g.right, "dishes:")) && value.Kind != strict.NodeNumber && !isMealTime(name, value) {
			return true
		}
	}
	return false
}

// menu takes the dishes of one field; several fields make one list.
func (t *taker) menu(name string, line int, value *strict.Node) {
	if t.menuAt == 0 {
		t.menuAt = line
		t.out = t.out.WithAt("dishes", line, strict.NewList(line)) // its place
	}
	if knownFood(name) && !numberedDish.MatchString(name) && !oneOf(plainWord(name), "main", "side") {
		if g, ok := guessOf("", name); !ok || g.right == "" {
			group := strict.NewGroup(line).WithAt(name, line, value)
			t.dishes = append(t.dishes, t.items(group)...)
			return
		}
	}
	t.dishes = append(t.dishes, t.items(value)...)
}

// serveUp writes the menu down, once all fields are read.
func (t *taker) serveUp() {
	if t.menuAt == 0 {
		return
	}
	if len(t.dishes) == 0 && len(t.dropped) > 0 { // that is told, and not that nothing is there
		t.out = t.out.WithAt("dishes", t.menuAt, strict.NewList(t.menuAt))
		return
	}
	if len(t.dishes) == 0 {
		t.out = t.out.Without("dishes")
		return
	}
	t.seatMeatless()
	t.out = t.out.With("dishes", strict.NewList(t.menuAt, t.dishes...))
}

// items are the dishes of a value, each in the form's words where it is understood, else as
// it was written.
func (t *taker) items(n *strict.Node) (dishes []*strict.Node) {
	switch n.Kind {
	case strict.NodeText:
		for k, line := range strings.Split(strings.TrimSpace(n.Text), "\n") {
			line = strings.TrimSpace(bullet.ReplaceAllString(line, ""))
			if line == "" {
				continue
			}
			for _, text := range t.parted(strict.NewText(line, n.Line+k)) {
				dishes = append(dishes, t.spokenDish(strict.NewText(text, n.Line))...)
			}
		}
	case strict.NodeList:
		for _, item := range n.Items {
			switch {
			case item.Kind == strict.NodeText:
				for _, text := range t.parted(item) {
					dishes = append(dishes, t.spokenDish(strict.NewText(text, item.Line))...)
				}
			case item.Kind == strict.NodeObject:
				dishes = append(dishes, t.dishGroup(item)...)
			default:
				dishes = append(dishes, item)
			}
		}
	case strict.NodeObject:
		if namesFood(n) || n.Get("cut") != nil {
			return t.dishGroup(n)
		}
		for name, value := range n.Fields() {
			dishes = append(dishes, t.namedDish(name, value)...)
		}
	}
	return dishes
}

// parted are the dishes of one text, which is one dish where it can be.
func (t *taker) parted(n *strict.Node) []string {
	whole := Dish(decimalPoint(n.Text), t.Eaters, n.Line)
	parts := splitDishes(n.Text)
	beside := slices.ContainsFunc(parts, notForGrill)
	if whole.Certain() && !beside || len(parts) < 2 {
		return []string{n.Text}
	}
	named := 0
	for _, text := range parts {
		if one := Dish(decimalPoint(text), t.Eaters, n.Line); one.Node != nil || notForGrill(text) || knownFood(cut.Speak(text).Name) {
			named++
		}
	}
	if 2*named <= len(parts) {
		return []string{n.Text}
	}
	return parts
}

// spokenDish is one dish in words; none where it is no food for a grill, which is said.
func (t *taker) spokenDish(n *strict.Node) []*strict.Node {
	text := decimalPoint(n.Text)
	if notForGrill(text) {
		t.say("%s is not planned: it is nothing for the grill", `"`+n.Text+`"`)
		t.dropped = append(t.dropped, n)
		return nil
	}
	if plain, beside := withoutSides(text); beside != "" && Dish(plain, t.Eaters, n.Line).Certain() && !Dish(text, t.Eaters, n.Line).Certain() {
		t.say("%s is not planned: it is nothing for the grill", `"`+beside+`"`)
		text = plain
	}
	alone, some, who := t.forSome(text)
	eaters := t.Eaters
	if some > 0 {
		eaters = some
	}
	s := Dish(alone, eaters, n.Line)
	if s.Node == nil {
		if mended := dishOf(alone, eaters, n.Line, true); mended.Certain() {
			s = mended
		}
	}
	if !s.Certain() {
		return []*strict.Node{strict.NewText(text, n.Line)}
	}
	t.tell(s)
	dish := t.thawed(s.Node)
	if some > 0 {
		fed, said := fedFor(dish, some, who)
		if dish = fed; said != "" {
			t.say("%s", said)
		}
	}
	return []*strict.Node{dish}
}

// namedDish is a dish whose food is the name of a field: "ribs: 2 racks".
func (t *taker) namedDish(name string, value *strict.Node) []*strict.Node {
	if value.Kind == strict.NodeObject {
		if s := Dish(name, t.Eaters, value.Line); s.Certain() {
			return t.dishGroup(s.Node.Joined(value))
		}
		return t.dishGroup(strict.NewGroup(value.Line).With("cut", strict.NewText(name, value.Line)).Joined(value))
	}
	if value.Kind == strict.NodeList {
		return append([]*strict.Node{}, t.items(value)...)
	}
	if value.Kind == strict.NodeText { // "steak: four ribeyes, medium rare"
		alone, of := Dish(decimalPoint(value.Text), t.Eaters, value.Line), Dish(name, t.Eaters, value.Line)
		if alone.Certain() && of.Node != nil && SameFood(alone.Node.Get("cut").Text, of.Node.Get("cut").Text) {
			return t.spokenDish(value)
		}
	}
	if value.Kind == strict.NodeText && !knownFood(name) { // "pulled chicken: 5 lb boneless thighs"
		inside := Dish(decimalPoint(value.Text), t.Eaters, value.Line)
		for _, word := range strings.Fields(name) {
			if inside.Certain() && !Dish(name, t.Eaters, value.Line).Certain() && ofFood(inside.Node.Get("cut").Text, word) && inside.Node.Get("name") == nil {
				t.tell(inside)
				dish := inside.Node.With("name", strict.NewText(name, value.Line))
				if c, _ := cut.One(inside.Node.Get("cut").Text); pulledName.MatchString(name) && dish.Get("target") == nil {
					if done, _ := donenessOf(c, "pulled"); done != "" {
						dish = dish.With("target", strict.NewText(done, value.Line))
					}
				}
				return []*strict.Node{dish}
			}
		}
	}
	return t.spokenDish(strict.NewText(asSpoken(name, value), value.Line))
}

var pulledName = regexp.MustCompile(`(?i)\b(?:pulled|shredded)\b`)

// SameFood says whether one of two names of food is a name of the other.
func SameFood(a, b string) bool {
	first, _ := cut.Named(a)
	second, _ := cut.Named(b)
	for _, x := range first {
		for _, y := range second {
			if x.Name == y.Name {
				return true
			}
		}
	}
	return false
}

// mealAt is when the dishes of a meal are eaten, as a dish has it; nil where that is not known.
func (t *taker) mealAt(text string, line int) *strict.Node {
	w, err := instant.ParseWhen(text, t.Now)
	if err != nil || w.Time == nil {
		return nil
	}
	at := w.Evening()
	if w.Day == nil {
		return strict.NewText(at.HhMm(), line)
	}
	if w.Floating {
		t.say("%q is read as %s: said later it would be another day, so write its date", text, w.Day.Format("Monday, January 2, 2006"))
	}
	return strict.NewGroup(line).With("date", strict.NewText(w.Day.String(), line)).With("time", strict.NewText(at.HhMm(), line))
}
