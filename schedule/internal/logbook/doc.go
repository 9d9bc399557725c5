// Package logbook reads what a cook writes down while a day goes: the rows of a log, and a
// few words said in passing. A day tells it what it needs to know of a plan; an entry comes
// out, or a fault with its line, or a sentence that asks back.
//
//	day.go                  what comes in, what goes out
//	kinds.go, forms.go, meanings.go   kinds of entry: how each is written, what it tells
//	rows.go                 CSV and JSON as rows
//	line.go                 a row as an entry
//	clock.go, names.go      which instant, which dish is meant
//	fire.go, fire_log.go    what is noted of a fire; a log of a fire alone
//	note.go, note_*.go      a note in a cook's words
package logbook
