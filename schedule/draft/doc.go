// Package draft answers one question: what does the first request of a day say, if a cook
// is asked for it line by line?
//
// In: answers as people give them, "Saturday 6pm", "2 chickens 4.5 lb", "not read". Out: the
// text of a request with remarks on what else can be said. It asks one question at a
// time and keeps no line open: whoever shows the questions, on a terminal or over a wire,
// loops over [Interview.Next] and [Interview.Answer]. A wrong answer is refused with what would be right,
// by the rules that a request is read with.
//
//	interview.go  the order of the questions, and what an answer leads to
//	about.go      the questions of the day: grill, oven, night, guests
//	when.go       when people eat, read as a request is
//	dish.go       a dish, read as a request is
//	follow.go     what is asked of a dish: how much, what its label says, how done
//	night.go      whether a fire may burn through the night
//	like.go       days of our own to begin with
//	skip.go       what is missing where the answers end early
//	write.go      the text of the request
package draft
