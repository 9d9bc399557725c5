package export

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
)

func (t *textSheet) headline() {
	t.heading(t.title(), '=')
	t.row("What", t.menu())
	if first := t.firstOfAll(); first != "" && t.now.IsZero() {
		t.row("First", first)
	}
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

// eatAt says when people eat, and where that is more than once, what at which time.
func (v *view) eatAt() string {
	if at := v.tableAt(); at.After(v.ServeAt) {
		return v.clock(at) + " on " + v.date(at) + "; chilled by " + v.clockBy(v.ServeAt, at)
	}
	var away, meals []string
	of := map[time.Time][]string{}
	for _, d := range v.bought() {
		at := v.servedWhen(d)
		if v.travels(d.ID) && !at.Equal(v.at(v.ServeAt)) {
			away = append(away, "; "+v.dish(d.ID)+": on the way at "+v.clockBy(at, v.ServeAt))
			continue
		}
		of[at] = append(of[at], v.dish(d.ID))
	}
	for _, at := range slices.SortedFunc(maps.Keys(of), time.Time.Compare) {
		meals = append(meals, v.clockBy(at, v.ServeAt)+" ("+list(of[at])+")")
	}
	text := list(meals)
	switch len(of) {
	case 0:
		text = v.clock(v.ServeAt)
	case 1:
		text, _, _ = strings.Cut(text, " (")
	}
	return text + " on " + v.date(v.ServeAt) + strings.Join(away, "")
}

// servedWhen is when a dish comes to the table: what was cooked the day before and is warmed in
// the oven has no serving of its own but a step.
func (v *view) servedWhen(d schedule.DishPlan) time.Time {
	at := v.ServeAt
	if !d.ServeAt.IsZero() && !v.early(d.ID) {
		at = d.ServeAt
	}
	for _, s := range v.Steps {
		if v.early(d.ID) && s.Kind == schedule.StepServe && v.kind(s) != "chill" && strings.Contains(s.Text, d.Name) {
			at = s.At
		}
	}
	return v.at(at)
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
