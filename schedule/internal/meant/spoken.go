package meant

import (
	"example.com/cookday/schedule/internal/strict"
)

// Guests are who eats, in a cook's words; false where something else is said, or nobody is counted.
func Guests(text string) (adults, children int, frail, ok bool) {
	c, _, ok := new(taker).inText(text)
	return c.adults, c.kids, c.frail, ok && !c.odd
}

// Quiet are the hours in which nobody tends a fire, in a cook's words, as clocks show them;
// false where they are not said.
func Quiet(text string) (from, to string, ok bool) {
	hours := quietIn(strict.NewText(text, 0))
	if hours == nil || len(hours.Items) != 1 {
		return "", "", false
	}
	return hours.Items[0].Get("from").Text, hours.Items[0].Get("to").Text, true
}
