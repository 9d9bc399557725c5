package export

import "fmt"

// title is the plan's name, or what it is.
func (v *view) title() string {
	if name := clean(v.Name); name != "" {
		return name
	}
	return v.titleByFood()
}

// titleDishes is how many dishes a title names: more are counted.
const titleDishes = 3

// titleByFood names a day that its cook gave no name: what is cooked, and for which day of the week.
func (v *view) titleByFood() string {
	var names []string
	for _, m := range v.menuItems() {
		if m.Name != "" {
			names = append(names, m.Name)
		}
	}
	if len(names) == 0 {
		return "Cook day"
	}
	if more := len(names) - titleDishes + 1; more > 1 {
		names = append(names[:titleDishes-1], fmt.Sprintf("%d more", more))
	}
	if v.ServeAt.IsZero() {
		return list(names)
	}
	return list(names) + ", " + v.at(v.ServeAt).Weekday().String()
}
