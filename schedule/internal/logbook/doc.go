// Package logbook reads what a cook writes down while a day goes: the rows of a log, and a
// few words said in passing. A day tells it what it needs to know of a plan; an entry comes
// out, or a fault with its line, or a sentence that asks back.
//
//	day.go                  what comes in, what goes out
//	kinds.go, forms.go, meanings.go   kinds of entry: how each is written, what it tells
//	rows.go                 CSV and JSON as rows
//	line.go                 a row as an entry
//	clock.go, misplaced.go, names.go   which instant, which dish is meant; AM for PM
//	fire.go, fire_log.go    what is noted of a fire; a log of a fire alone
//	note.go, note_parts.go, note_thing.go, note_everything.go   a note in a cook's words: taken apart; one thing of it, or of all that is on
//	note_value.go           what a thing carries, as the log has it
//	note_plain.go, note_spoken.go   its words as they are looked for; numbers said in words
//	note_time.go, note_span.go, note_moment.go   when it was
//	note_kind.go, sayings.go, note_dish.go       what was done, to which dish
//	note_coals.go, note_vents.go, note_place.go, note_piece.go, note_range.go, note_air.go, note_lid.go, note_degrees.go   what was counted and read
//	note_least.go           what is off below its minimum, said at once
//	note_serving.go         when people eat
//	note_answers.go         what is answered where no line of a log says it
//	emergency.go            danger to people, answered before grammar
//	note_beside.go          the figure among remarks: it is noted, the answer stands beside it
package logbook
