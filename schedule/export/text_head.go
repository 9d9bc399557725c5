package export

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/cookday/schedule"
)

func (t *textSheet) headline() {
	t.heading(t.title(), '=')
	t.row("What", t.menu())
	t.row("Eat at", t.eatAt())
	if light := t.lightAt(); light != "" {
		t.row(t.lightLabel(), light)
	}
	t.row("Odds", t.sure())
	if !t.now.IsZero() {
		t.row("Now", t.clock(t.now)+" on "+t.day(t.now))
	}
	if next := t.next(); next != "" {
		t.row("Next", next)
	}
	if t.Revision > 0 {
		t.row("Revision", fmt.Sprint(t.Revision))
	}
}

// menu lists the dishes with their portions.
func (v *view) menu() string {
	var words []string
	for _, m := range v.menuItems() {
		word := m.Name
		if m.Portion != "" {
			word += " (" + m.Portion + ")"
		}
		words = append(words, word)
	}
	return list(words)
}

func (v *view) menuItems() []menuItem {
	var items []menuItem
	for _, d := range v.bought() {
		item := menuItem{v.dish(d.ID), v.portion(d)}
		if v.early(d.ID) {
			item.Portion = strings.TrimPrefix(item.Portion+", cooked the day before", ", ")
		}
		items = append(items, item)
	}
	if len(items) == 0 { // a plan that could not be made may know the request only
		for _, d := range v.Request.Dishes {
			items = append(items, menuItem{Name: clean(d.Name)})
		}
	}
	return items
}

// eatAt says when people eat, and which dishes come at another time.
func (v *view) eatAt() string {
	if at := v.tableAt(); at.After(v.ServeAt) {
		return v.clock(at) + " on " + v.date(at) + "; chilled by " + v.clockBy(v.ServeAt, at)
	}
	text := v.clock(v.ServeAt) + " on " + v.date(v.ServeAt)
	for _, d := range v.Dishes {
		if !v.at(d.ServeAt).Equal(v.at(v.ServeAt)) && !d.ServeAt.IsZero() {
			verb := " at "
			if v.travels(d.ID) {
				verb = " leaves at "
			}
			text += "; " + v.dish(d.ID) + verb + v.clockBy(d.ServeAt, v.ServeAt)
		}
	}
	return text
}

// travels says whether a dish is eaten elsewhere, some time after it is served.
func (v *view) travels(id string) bool {
	return slices.ContainsFunc(v.Request.Dishes, func(d schedule.Dish) bool { return d.ID == id && d.Travel != nil })
}

// Headline writes the first lines of the text sheet: what, when to eat and to light, how
// sure; of a day that cannot be had, why and what would help. Errors are those of [Text].
func Headline(w io.Writer, p schedule.Plan, o Options) error {
	if !p.Feasible {
		return Text(w, p, o)
	}
	v, err := look(p, o.Now)
	if err != nil {
		return err
	}
	t := &textSheet{view: v, width: max(o.Width, 40), colour: o.Colour}
	t.headline()
	_, err = io.WriteString(w, t.String())
	return err
}
