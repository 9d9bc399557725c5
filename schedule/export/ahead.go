package export

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/unit"
)

// A plan with dishes of the day before carries the plan of that day, or is that plan
// itself. The headline and the shopping list are of both days: what is cooked early is
// bought raw, lit for and eaten like the rest.

// warmsIndoors says whether a dish of the day before is warmed in the oven.
func (v *view) warmsIndoors(id string) bool {
	return slices.ContainsFunc(v.Ahead.Dishes, func(d schedule.AheadDish) bool { return d.Dish == id && d.Place == schedule.PlaceOven })
}

// dayBefore is the plan of the day before, nil where there is none or where this is it.
func (v *view) dayBefore() *schedule.Plan {
	if v.Ahead == nil {
		return nil
	}
	return v.Ahead.Plan
}

// bought are the dishes as they are bought, in the order of the menu: of what is warmed
// on the grate the raw piece, not the parcels.
func (v *view) bought() []schedule.DishPlan {
	before := v.dayBefore()
	if before == nil {
		return v.Dishes
	}
	var out []schedule.DishPlan
	add := func(dishes []schedule.DishPlan, id string) {
		i := slices.IndexFunc(dishes, func(d schedule.DishPlan) bool { return d.ID == id })
		known := slices.ContainsFunc(out, func(d schedule.DishPlan) bool { return d.ID == id })
		if i >= 0 && !known {
			out = append(out, dishes[i])
		}
	}
	for _, d := range v.Ahead.Request.Dishes {
		add(before.Dishes, d.ID)
		add(v.Dishes, d.ID)
	}
	for _, d := range v.Dishes { // added since
		add(v.Dishes, d.ID)
	}
	return out
}

// early says whether a dish is cooked the day before.
func (v *view) early(id string) bool {
	return v.Ahead != nil && slices.ContainsFunc(v.Ahead.Dishes, func(d schedule.AheadDish) bool { return d.Dish == id })
}

// lightAt says when to light, on the day before too.
func (v *view) lightAt() string {
	if v.LightAt == nil {
		return ""
	}
	text := v.lights()
	if b := v.dayBefore(); b != nil && b.LightAt != nil {
		text = v.clock(*b.LightAt) + " on " + v.day(*b.LightAt) + ", and " + text
	}
	return text + v.thawAt(*v.LightAt)
}

// thawAt says when to thaw what is frozen, where that is days before the fire.
func (v *view) thawAt(light time.Time) string {
	text := ""
	for _, s := range v.Steps {
		if s.Kind == schedule.StepThaw && !s.Done && !v.sameDay(s.At, light) {
			text += "; thaw " + v.dish(s.Dish) + " from " + v.clock(s.At) + " on " + v.day(s.At)
		}
	}
	return text
}

// tableAt is when people eat. A plan that is of the day before itself ends with the
// chilling, and the meal is its last serving.
func (v *view) tableAt() time.Time {
	at := v.ServeAt
	if v.Ahead == nil || v.Ahead.Plan != nil {
		return at
	}
	for _, s := range v.Steps {
		if s.Kind == schedule.StepServe && s.At.After(at) {
			at = s.At
		}
	}
	return at
}

// sureBefore says how likely each dish of the day before is cooked in time to chill.
func (v *view) sureBefore() string {
	b := v.dayBefore()
	if b == nil {
		return ""
	}
	var words []string
	for _, d := range b.Dishes {
		words = append(words, clean(d.Name)+" "+percent(d.Chance))
	}
	return "; cooked by " + v.clockBy(b.ServeAt, v.ServeAt) + ": " + strings.Join(words, ", ")
}

// firesBefore are the fires of the day before.
func (v *view) firesBefore() []string {
	b := v.dayBefore()
	if b == nil {
		return nil
	}
	var out []string
	for _, f := range b.Phases {
		out = append(out, "The day before: "+strings.TrimSpace(lower(v.fire(f))+" "+v.howTo(f)))
	}
	return out
}

// fuelOfBoth says what to buy for two days in one, and how much of it is for which; nil where
// there is one day or one of them burns nothing.
func (v *view) fuelOfBoth() []string {
	b := v.dayBefore()
	if b == nil || b.Fuel == nil || v.Fuel == nil {
		return nil
	}
	bag := func(kg float64) string { return v.sys.MassToBuy(unit.Mass(kg)) }
	text := fmt.Sprintf("Buy %s of %s for both days, %s of it for the day before.", bag(b.Fuel.BuyKg+v.Fuel.BuyKg), clean(v.Fuel.Kind), bag(b.Fuel.BuyKg))
	lines := []string{text + " About " + v.sys.Mass(unit.Mass(b.Fuel.MassKg+v.Fuel.MassKg)) + " burn on usual days; some fires take twice that, so have a spare bag."}
	if wood := chunksText(b.Fuel.Chunks + v.Fuel.Chunks); wood != "" {
		lines = append(lines, wood)
	}
	return lines
}

// lower starts a sentence that goes on after a colon.
func lower(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToLower(r)) + s[n:]
}

// nameEarly gives the steps of the day before and of the warming their dishes again, which
// a plan of the day of serving does not have.
func (v *view) nameEarly() {
	if v.Ahead == nil {
		return
	}
	of := map[string]string{}
	if b := v.dayBefore(); b != nil {
		for _, s := range b.Steps {
			of[s.ID] = s.Dish
		}
	}
	for i := range v.Steps {
		s := &v.Steps[i]
		if s.Dish == "" {
			s.Dish = of[s.ID]
		}
		if warms := s.Kind == schedule.StepToOven || s.Kind == schedule.StepTakeOff; s.Dish == "" && warms {
			s.Dish = v.namedIn(s.Text)
		}
	}
}

// namedIn finds the dish of the day before that a text is about: the longest name in it.
func (v *view) namedIn(text string) string {
	id, longest := "", 0
	for _, d := range v.Ahead.Dishes {
		if len(d.Name) > longest && strings.Contains(text, d.Name) {
			id, longest = d.Dish, len(d.Name)
		}
	}
	return id
}

// kind says what sort of step one is: what is chilled is not served, and what was warmed in the
// oven is only looked at.
func (v *view) kind(s schedule.Step) string {
	if v.Ahead != nil && s.Kind == schedule.StepTakeOff && s.At.After(v.Ahead.ChillAt) && v.warmsIndoors(s.Dish) {
		return "check"
	}
	if v.Ahead != nil && s.Kind == schedule.StepServe && !s.At.After(v.Ahead.ChillAt) {
		return "chill"
	}
	if poursCoals(s) {
		return "pour coals"
	}
	return phrase(s.Kind)
}
