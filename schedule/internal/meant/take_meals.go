package meant

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// meal is one of several of a day, or of two.
type meal struct {
	said  string // of when it is
	at    instant.When
	line  int
	menus []*strict.Node
	names []string // of the fields that it was made of
}

var mealNames = []string{"lunch", "dinner", "supper", "breakfast", "brunch"}

// meals takes meals of their own: each menu that says when it is eaten. The last of them is
// when people eat; the dishes of the others have a time of their own. The fields that it took
// are given back.
func (t *taker) meals(request *strict.Node) []string {
	var all []meal
	for name, value := range request.Fields() {
		all = append(all, t.mealsIn(name, request.LineOf(name), value)...)
	}
	all = append(all, pairedMeals(request)...)
	day := ""
	for name, value := range request.Fields() {
		if w, err := instant.ParseWhen(value.Text, t.Now); err == nil && w.Time == nil && (w.Day != nil || w.Relative) && saysWhen(name, value, t.Now) {
			day = value.Text
		}
	}
	if len(all) == 0 || t.Zone == "" || !t.timed(all, day) {
		return nil
	}
	last := slices.MaxFunc(all, func(a, b meal) int { return strings.Compare(instantOf(a.at), instantOf(b.at)) })
	var taken []string
	for _, m := range all {
		taken = append(taken, m.names...)
		if t.menuAt == 0 {
			t.menuAt = m.line
			t.out = t.out.WithAt("serve", m.line, strict.NewGroup(m.line).With("date", strict.NewText(last.at.Day.String(), m.line)).
				With("time", strict.NewText(last.at.Time.HhMm(), m.line)).With("tz", strict.NewText(t.Zone, m.line)))
			t.out = t.out.WithAt("dishes", m.line, strict.NewList(m.line))
		}
		t.serveMeal(m, last)
	}
	if len(all) > 1 {
		t.say("%d meals are one plan: what is not eaten at %s has its own serve", len(all), instantOf(last.at))
	}
	for _, m := range all {
		if m.at.Floating {
			t.say("%q is read as %s: said later it would be another day, so write date: %s into the file", m.said, m.at.Day.Format("Monday, January 2, 2006"), m.at.Day.String())
		}
	}
	for name, value := range request.Fields() {
		if value.Text == day && day != "" {
			taken = append(taken, name)
		}
	}
	return taken
}

func instantOf(w instant.When) string { return w.Day.String() + " " + w.Time.HhMm() }

// timed finds out when each meal is; false where that is not known of one.
func (t *taker) timed(all []meal, day string) bool {
	for k := range all {
		m := &all[k]
		text := m.said
		w, err := instant.ParseWhen(text, t.Now)
		if err == nil && w.Day == nil && day != "" {
			w, err = instant.ParseWhen(day+" "+text, t.Now)
		}
		if err != nil || w.Day == nil || w.Time == nil {
			return false
		}
		at := w.Evening()
		w.Time = &at
		m.at = w
	}
	return true
}

// serveMeal adds the dishes of a meal, with their own time where it is not the last.
func (t *taker) serveMeal(m, last meal) {
	for _, menu := range m.menus {
		for _, dish := range t.items(menu) {
			if instantOf(m.at) != instantOf(last.at) && dish.Kind == strict.NodeObject && dish.Get("serve") == nil {
				dish = dish.With("serve", ownTime(m.at, last.at, dish.Line))
			}
			t.dishes = append(t.dishes, dish)
		}
	}
}

// ownTime is the time of a dish as the form has it: with its date where that is another.
func ownTime(at, main instant.When, line int) *strict.Node {
	if at.Day.String() == main.Day.String() {
		return strict.NewText(at.Time.HhMm(), line)
	}
	return strict.NewGroup(line).With("date", strict.NewText(at.Day.String(), line)).With("time", strict.NewText(at.Time.HhMm(), line))
}

// mealsIn are the meals of one field.
func (t *taker) mealsIn(name string, line int, value *strict.Node) (all []meal) {
	switch {
	case isForm(name):
	case value.Kind == strict.NodeObject && oneOf(plainWord(name), mealNames...) && t.mealOfFoods(value) != nil:
		return []meal{*t.mealOfFoods(value).called(name, line)}
	case value.Kind == strict.NodeObject && holdsMenu(value):
		m := &meal{line: line, names: []string{name}}
		for inner, v := range value.Fields() {
			g, ok := guessOf("", inner)
			switch {
			case inner == "dishes" || ok && strings.HasPrefix(g.right, "dishes:") && !isMealTime(inner, v):
				m.menus = append(m.menus, v)
			case oneOf(plainWord(inner), "name", "meal", "title", "what") && v.Kind == strict.NodeText && oneOf(plainWord(v.Text), mealNames...):
				m.called(v.Text, line)
			case saysWhen(inner, v, t.Now) || isZone(inner):
				m.said += " " + timeOf(inner, v)
			case isGuests(inner) && t.saysMeal(name, value) && t.mealGuests(name, v):
			default:
				return nil
			}
		}
		if w, err := instant.ParseWhen(name, t.Now); err == nil && (w.Day != nil || w.Relative || w.Time != nil) {
			m.said = name + " " + m.said
		} else if oneOf(plainWord(name), "dinner", "supper") {
			m.said += " evening"
		}
		m.said = strings.TrimSpace(m.said)
		m.names, m.line = []string{name}, line
		return []meal{*m}
	case value.Kind == strict.NodeList && len(value.Items) > 0 && !slices.ContainsFunc(value.Items, func(n *strict.Node) bool { return n.Kind != strict.NodeObject || !holdsMenu(n) }):
		for k, item := range value.Items {
			inner := t.mealsIn(fmt.Sprintf("meal %d", k), item.Line, item)
			for i := range inner {
				inner[i].names = []string{name}
			}
			all = append(all, inner...)
		}
	case value.Kind == strict.NodeList && allFood(value, t.Eaters), value.Kind == strict.NodeText && allFood(value, t.Eaters):
		if w, err := instant.ParseWhen(name, t.Now); err == nil && w.Time != nil {
			return []meal{{said: name, line: line, menus: []*strict.Node{value}, names: []string{name}}}
		}
	}
	return all
}

// saysMeal says whether a group says when it is eaten, by its name or by one of its fields: a
// dish with "howmany" is no meal of so many guests.
func (t *taker) saysMeal(name string, group *strict.Node) bool {
	if w, err := instant.ParseWhen(name, t.Now); err == nil && (w.Day != nil || w.Relative || w.Time != nil) || oneOf(plainWord(name), mealNames...) {
		return true
	}
	for inner, v := range group.Fields() {
		if saysWhen(inner, v, t.Now) {
			return true
		}
	}
	return false
}

// pairedMeals are meals whose time and menu stand in two fields: "lunch: 12:30" and "lunch
// menu: ...". One meal alone is the day's.
func pairedMeals(request *strict.Node) (all []meal) {
	for _, name := range mealNames {
		m := meal{}
		for field, value := range request.Fields() {
			word := plainWord(field)
			switch {
			case word == name && isMealTime(field, value), (word == name+"time" || word == name+"at") && value.Kind == strict.NodeText:
				m.said, m.names = timeOf(name, value), append(m.names, field)
			case oneOf(word, name+"menu", name+"dishes", name+"food", name+"items", "for"+name, name+"list", "menu"+name):
				m.menus, m.line, m.names = append(m.menus, value), request.LineOf(field), append(m.names, field)
			}
		}
		if m.said != "" && len(m.menus) > 0 {
			all = append(all, m)
		}
	}
	if len(all) < 2 {
		return nil
	}
	return all
}

// mealOfFoods is a meal whose foods stand beside its time: {time: 12:30, burgers: 8}; nil
// where that is not so.
func (t *taker) mealOfFoods(group *strict.Node) *meal {
	m, foods := meal{}, strict.NewGroup(group.Line)
	for name, value := range group.Fields() {
		switch {
		case saysWhen(name, value, t.Now):
			m.said = strings.TrimSpace(m.said + " " + timeOf(name, value))
		case knownFood(name):
			foods = foods.WithAt(name, group.LineOf(name), value)
		case isGuests(name) && t.mealGuests("a meal", value):
		default:
			return nil
		}
	}
	if m.said == "" || foods.Empty() {
		return nil
	}
	m.menus = []*strict.Node{foods}
	return &m
}

// mealGuests takes who eats at one meal; a day has the most of its meals, for amounts that
// nobody says. False where that is not certain.
func (t *taker) mealGuests(of string, value *strict.Node) bool {
	c, _, ok := t.inText(value.Text)
	if !ok || value.Kind == strict.NodeObject || c.odd {
		return false
	}
	c.line = value.Line
	c.frail, c.none = c.frail || t.guests.frail, c.none || t.guests.none
	if t.guests.line != 0 && t.guests.adults+t.guests.kids != c.adults+c.kids {
		t.say("of the guests of two meals the larger number is that of the day; a dish without an amount is for all of them, so write counts for the smaller meal")
	}
	if c.adults+c.kids > t.guests.adults+t.guests.kids {
		t.guests = c
	}
	t.guests.frail, t.guests.none = c.frail, c.none
	return true
}

func (m *meal) called(name string, line int) *meal {
	m.names, m.line = []string{name}, line
	if oneOf(plainWord(name), "dinner", "supper") {
		m.said += " evening"
	}
	return m
}
