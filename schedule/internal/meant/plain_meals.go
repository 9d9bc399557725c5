package meant

import (
	"regexp"
	"strings"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/strict"
)

// mealLine is a meal of a note with its hour and its food: "lunch 12:30 - burgers (16)".
var (
	mealLine = regexp.MustCompile(`(?i)^(?:(?:on |this |next |for )*((?:mon|tues|wednes|thurs|fri|satur|sun)day)[\s,:-]+)?(lunch|dinner|supper|brunch|breakfast)\s*(?:at |is at |around |@ ?)?(\d{1,2}(?:[:.]\d{2})?\s*(?:[ap]\.?m\b\.?)?)\s*[-–:,]+\s*(\D*\d*.*\pL.*)$`)
	forCrowd = regexp.MustCompile(`(?i)[\s,(]+for (\d{1,3})(?: (?:people|persons|guests|adults|of us))?\)?\s*$`)
)

// isMeal takes a part that tells a meal with its hour and its food.
func (n *note) isMeal(part string) bool {
	m := mealLine.FindStringSubmatch(strings.TrimSpace(part))
	if m == nil {
		return false
	}
	food, crowd := m[4], ""
	if who := forCrowd.FindStringSubmatch(food); who != nil {
		food, crowd = strings.Replace(food, who[0], "", 1), who[1]
	}
	for _, text := range splitDishes(food) {
		if one := Dish(decimalPoint(text), 0, 0); one.Node == nil && !notForGrill(text) {
			return false
		}
	}
	meal := strict.NewGroup(n.line).With("meal", strict.NewText(strings.ToLower(m[2]), n.line)).With("time", strict.NewText(strings.TrimSpace(m[3]), n.line))
	if m[1] != "" && len(n.when) == 0 {
		n.add(&n.when, m[1])
	}
	if crowd != "" {
		meal = meal.With("guests", strict.NewText(crowd, n.line))
	}
	list := strict.NewList(n.line)
	for _, text := range splitDishes(food) {
		list.Items = append(list.Items, strict.NewText(text, n.line))
	}
	n.meals = append(n.meals, meal.With("dishes", list))
	return true
}

// served is a request with the meals of a note: one alone is when people eat.
func (n *note) served(out *strict.Node) *strict.Node {
	if len(n.meals) == 0 {
		return out
	}
	if when := out.Get("serve"); when != nil { // it says the day of them
		out = out.Without("serve").WithAt("day", when.Line, when)
	}
	return out.WithAt("meals", n.meals[0].Line, strict.NewList(n.meals[0].Line, n.meals...))
}

// loneMeal takes a meal that is the only one as the day's own.
func (n *note) loneMeal() {
	if len(n.meals) != 1 {
		return
	}
	meal := n.meals[0]
	n.meals = nil
	if n.line = meal.Line; !hasTime(n.when, n) {
		n.add(&n.when, meal.Get("time").Text)
	}
	if guests := meal.Get("guests"); guests != nil && len(n.guests) == 0 {
		n.add(&n.guests, guests.Text+" people")
	}
	n.dishes = append(n.dishes, meal.Get("dishes").Items...)
}

// hasTime says whether one of the parts that say when says an hour.
func hasTime(when []*strict.Node, n *note) bool {
	for _, part := range when {
		if w, err := instant.ParseWhen(part.Text, n.now); err == nil && w.Time != nil {
			return true
		}
	}
	return false
}
