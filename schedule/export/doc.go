// Package export answers one question: what does a plan look like?
//
// In: a finished plan. Out: something to look at, print, subscribe to or compute with:
// text for a terminal, JSON, CSV, iCalendar, SVG pictures and an HTML sheet. It only
// reads the plan: it knows neither planner nor judge, has no clock and asks nobody, so
// the same plan and options give the same bytes. Instants are rounded to minutes, so
// that the bytes do not depend on the processor either.
//
//	text*.go, now*.go, alarms.go, sheet*.go, live.go  for a terminal, at a glance, as a page, and to follow the day on
//	csv.go, json.go, calendar.go, ical.go, forecast.go  for programs
//	picture.go, timeline*.go, curve*.go, grate*.go, sitting.go  pictures
//	svg*.go, axis.go, columns.go       how they are drawn and set
//	view.go, title.go, odds.go, likely.go, ahead.go, agenda.go, phases.go, merge.go       what every writer asks of a plan
//	words.go, titles.go, sayings.go, tools.go, clock.go, changes.go, clean.go  words that all of them use
//
// Names and texts in a plan come from strangers. Every writer escapes them for
// its format and drops control characters and the Unicode marks that reorder
// what follows them.
package export

import "time"

// Options says how a sheet or picture is to look. The zero value is fine.
type Options struct {
	Now     time.Time // marks the present; zero leaves it out
	Width   int       // text: columns, at least 40; 0 stands for 80
	Colour  bool      // text: bold and colour by escape sequences
	Brief   int       // text: only the next so many steps; 0 stands for all
	Picture string    // which picture [Picture] draws
}
