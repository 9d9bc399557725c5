// Package meant guesses what a cook meant by words that the form of a request does not
// have: a dish in words ("two racks of ribs"), a field by another name ("cook_temp"). What
// means one thing without doubt is taken; for all else there is the line that would be
// right, for an error that teaches.
//
//	field.go, meant.csv  fields by other names (common practice, no source)
//	special.go           fields that a plan has no place for; when people eat, and how many
//	dish.go, hear.go     dishes in words
//	understood.go        values in words that mean one thing
//	value.go             values that their field cannot take
package meant
