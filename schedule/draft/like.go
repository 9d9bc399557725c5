package draft

import (
	"maps"
	"slices"

	"example.com/cookday/schedule"
)

// day is what an interview begins with.
type day struct {
	hour   int // of the meal
	guests schedule.Guests
	dishes []string
}

// likes are days of our own, invented. The one without a name has no dishes.
var likes = map[string]day{
	"":          {18, schedule.Guests{Adults: 8}, nil},
	"party":     {18, schedule.Guests{Adults: 16, Children: 6}, []string{"brisket, 10 lb", "2 spatchcock chickens, 4.5 lb", "12 burgers, 6 oz"}},
	"overnight": {12, schedule.Guests{Adults: 20}, []string{"2 pork butts, 8 lb"}},
	"ribs":      {17, schedule.Guests{Adults: 6}, []string{"2 St. Louis ribs, 2.8 lb"}},
	"steaks":    {19, schedule.Guests{Adults: 2}, []string{"2 ribeyes, 1 lb", "12 asparagus, 1 oz"}},
	"bird":      {16, schedule.Guests{Adults: 8}, []string{"turkey, 12 lb"}},
}

// Likes are the names of the days to begin with.
func Likes() []string {
	names := slices.Sorted(maps.Keys(likes))
	return names[1:] // the first has no name
}
