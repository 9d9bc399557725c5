// Package meant guesses what a cook meant by words that the form of a request does not
// have: a dish in words ("two racks of ribs"), a field by another name ("cook_temp"). What
// means one thing without doubt is taken; for all else there is the line that would be
// right, for an error that teaches.
//
//	take.go              a whole request in the form's words, as far as that is certain
//	take_guests.go       ... who eats
//	take_grill.go        ... the grill
//	take_meals.go        ... several meals
//	take_menu.go         ... the dishes, in whatever shape
//	take_dish.go         ... one dish, told field by field
//	when.go              which fields say when people eat, and where
//	names.go             units at the end of a field's name
//	field.go, meant.csv  fields by other names (common practice, no source)
//	special.go           fields that a plan has no place for; how many eat
//	dish.go, hear.go     a dish in words: its food, and what is said of it
//	amounts.go           ... how much of it there is
//	lead.go              ... what is open of it, as an error says it
//	dishes.go            several dishes in words
//	understood.go        values in words that mean one thing
//	value.go             values that their field cannot take
package meant
