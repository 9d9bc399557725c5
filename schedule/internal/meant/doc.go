// Package meant guesses what a cook meant by words that the form of a request does not
// have: a field by another name ("cook_temp"), a dish in words ("two racks of ribs"). Each
// guess is the line that would be right, for an error that teaches; nothing is taken
// without being asked.
//
//	field.go, meant.csv  fields by other names (common practice, no source)
//	dish.go              dishes in words
//	value.go             values that their field cannot take
package meant
