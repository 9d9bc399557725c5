// Package meant guesses what a cook meant by words that the form of a request does not
// have: a dish in words ("two racks of ribs"), a field by another name ("cook_temp"). What
// means one thing without doubt is taken; for all else there is the line that would be
// right, for an error that teaches.
//
//	shape.go             a request as a group of fields, whatever its cook made of it
//	plain.go             a note without any fields, part by part
//	plain_letter.go      ... a letter, with names before some lines; a sentence taken apart
//	plain_request.go     ... and its parts as a request
//	plain_table.go       a table of cells
//	plain_meals.go       meals of a note, each with its hour
//	loosely.go           a text of any shape, for a guess
//	take.go              a whole request in the form's words, as far as that is certain
//	take_rest.go         ... fields that a plan does nothing with, or that are the one dish's
//	take_guests.go       ... who eats
//	guest_words.go       ... who eats, in words
//	some.go              ... dishes for some of them
//	take_grill.go        ... the grill
//	take_weather.go      ... the weather
//	take_hours.go        ... hours in which nobody tends a fire; what is there
//	take_meals.go        ... several meals
//	meal_times.go        ... when each is eaten
//	take_menu.go         ... the dishes, in whatever shape
//	take_dish.go         ... one dish, told field by field
//	take_each.go         ... what is said of several dishes at once
//	dish_food.go         ... which food it is of
//	take_heat.go         ... how hot, and how done
//	when.go              which fields say when people eat, and where
//	names.go             units at the end of a field's name
//	field.go, meant.csv  fields by other names (common practice, no source)
//	special.go           fields that a plan has no place for; how many eat
//	dish.go, hear.go     a dish in words: its food, and what is said of it
//	styled.go            ... a food with words of a kitchen about it; whole fruit in its pieces
//	hear_words.go        ... words about it, by the field that they are of
//	hear_done.go         ... how done it is to be
//	amounts.go           ... how much of it there is
//	dish_open.go         ... numbers of it that may be of something else
//	not_grilled.go       ... that is nothing for a grill
//	guess_food.go        ... the likeliest dishes of words that are not certain
//	guess_guests.go      ... who eats by words that are not certain, and who may be frail
//	lead.go              ... what is open of it, as an error says it
//	dishes.go            several dishes in words
//	spoken.go            answers to a question: who eats, when everybody sleeps
//	understood.go        values in words that mean one thing
//	value.go             values that their field cannot take
package meant
