package ahead

import (
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
)

// How far the servings of a menu may be off the guests before it is worth a word
// (assumptions): people eat more of one thing and less of another.
const (
	scarce = 0.85
	lavish = 2
)

// guestFindings compares the menu with the guests.
func guestFindings(r schedule.Request) []schedule.Finding {
	if r.Guests == nil || r.Guests.Eaters() <= 0 {
		return nil
	}
	servings, mains := 0.0, menu{}
	for _, dish := range r.Dishes {
		c, ok := cut.Find(dish.Cut)
		if !ok || !c.IsMain() {
			continue
		}
		mains = append(mains, main{dish, c.Food == string(safety.Fish)})
		for _, l := range day.LotsOf(dish) {
			servings += l.MassKg * float64(l.Count) / c.ServingKg
		}
	}
	eaters := r.Guests.Eaters()
	switch {
	case len(mains) == 0:
		return nil
	case servings < scarce*eaters:
		return []schedule.Finding{day.Finding("too-little", "guests", nil, fmt.Sprintf(
			"About %s of %s for %s: too little. %s", portions(servings), mains.food(), headCount(*r.Guests), mains.moreOf(eaters/servings)))}
	case servings > lavish*eaters:
		return []schedule.Finding{day.Finding("too-much", "guests", nil, fmt.Sprintf(
			"About %s of %s for %s: there will be a lot left. Chill it within 2 hr.", portions(servings), mains.food(), headCount(*r.Guests)))}
	}
	return nil
}

// menu are the dishes of which a serving is reckoned.
type menu []main

type main struct {
	schedule.Dish
	fish bool
}

// food says what the portions are of.
func (m menu) food() string {
	of := func(fish bool) bool { return slices.ContainsFunc(m, func(d main) bool { return d.fish == fish }) }
	switch {
	case of(true) && of(false):
		return "meat and fish"
	case of(true):
		return "fish"
	}
	return "meat"
}

// moreOf says how much more is to be bought for so many times the portions: pieces where one
// dish is all there is and has several.
func (m menu) moreOf(times float64) string {
	if more := math.Ceil(float64(m[0].Count) * (times - 1)); len(m) == 1 && m[0].Count > 1 {
		return fmt.Sprintf("%s: buy %.0f more.", m[0].Name, more)
	}
	if times >= 2 {
		return fmt.Sprintf("Buy %.0f times as much.", math.Ceil(times))
	}
	return fmt.Sprintf("Buy about %.0f%% more.", math.Ceil((times-1)*20)*5)
}

func portions(n float64) string {
	if n < 1.5 {
		return "1 portion"
	}
	return fmt.Sprintf("%.0f portions", math.Floor(n+0.5))
}

// headCount says the guests as they were counted.
func headCount(g schedule.Guests) string {
	if g.Children == 0 {
		return fmt.Sprintf("%d people", g.Adults)
	}
	return fmt.Sprintf("%d adults and %d children, who eat half", g.Adults, g.Children)
}
