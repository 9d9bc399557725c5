package meant

import (
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/strict"
)

// lastServed is when people eat where only the dishes say it: the last of them.
func (t *taker) lastServed() {
	list := t.out.Get("dishes")
	if t.out.Get("serve") != nil || list == nil || t.Zone == "" {
		return
	}
	last, at := -1, ""
	t.onTheDay(list)
	list = t.out.Get("dishes")
	for k, dish := range list.Items {
		own := dish.Get("serve")
		if own == nil || own.Kind != strict.NodeObject || own.Get("date") == nil || own.Get("time") == nil {
			return
		}
		if when := own.Get("date").Text + " " + own.Get("time").Text; when > at {
			last, at = k, when
		}
	}
	if last < 0 {
		return
	}
	served := list.Items[last].Get("serve")
	items := slices.Clone(list.Items)
	for k, dish := range items {
		switch own := dish.Get("serve"); {
		case own.Same(served):
			items[k] = dish.Without("serve")
		case own.Get("date").Text == served.Get("date").Text:
			items[k] = dish.With("serve", own.Get("time"))
		}
	}
	t.out = t.out.With("dishes", strict.NewList(list.Line, items...))
	t.out = t.out.WithAt("serve", list.Line, served.With("tz", strict.NewText(t.Zone, list.Line)))
}

// onTheDay gives the day of the meal to the times of its dishes, where it is said without a
// time and each dish has one.
func (t *taker) onTheDay(list *strict.Node) {
	if t.Date == "" || slices.ContainsFunc(list.Items, func(n *strict.Node) bool { return n.Get("serve") == nil }) {
		return
	}
	items := slices.Clone(list.Items)
	for k, dish := range items {
		if own := dish.Get("serve"); own.Kind == strict.NodeText {
			items[k] = dish.With("serve", strict.NewGroup(dish.Line).With("date", strict.NewText(t.Date, dish.Line)).With("time", own))
		}
	}
	t.out = t.out.With("dishes", strict.NewList(list.Line, items...))
	for name, value := range t.out.Fields() {
		if name != "serve" && saysWhen(name, value, t.Now) {
			t.out = t.out.Without(name)
		}
	}
}

// oneSitting says that menus of two meals are eaten at one time, where only one is said.
func (t *taker) oneSitting(request *strict.Node, taken []string) {
	var names []string
	for name, value := range request.Fields() {
		if oneOf(plainWord(name), mealNames...) && !slices.Contains(taken, name) && value.Kind != strict.NodeNumber && !isMealTime(name, value) && (value.Kind != strict.NodeText || allFood(value, t.Eaters)) {
			names = append(names, name)
		}
	}
	if len(names) > 1 {
		t.say("%s are eaten at one time here; give each dish of the other meal its own time, as in serve: \"12:30\"", strings.Join(names, " and "))
	}
}
