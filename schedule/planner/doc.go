// Package planner makes plans: [Make] from a request, [Revise] from a plan and a log,
// [Forecast] for one piece without a schedule.
//
// [Judged] asks the judge of package check as well, and most callers want it: the judge
// did not make the plan, and looks at it anew. From Make a plan that is not sound comes
// with an error; from Revise with a finding before all others, for food is on the fire.
// [NotBefore] keeps a plan from beginning in the past.
//
// It is a door. Behind it each room answers one question, and imports only rooms
// further down:
//
//	revise    the day as it goes: what is past, what is under way, what is left
//	remedy    why a day cannot be had, and what would help
//	ahead     a request of two days, and the plan of one
//	assemble  the arranged day as a plan: instants, charcoal, steps, sentences
//	arrange   the day as a problem over integers, and the answer read back
//	day       what each dish can do by itself today: ways, holds, clocks
//	surprise  what a reading may be that is not as foretold
//	belief    what readings say
//	spread    how far a time may be off
//	sequence  which arrangement is best, and is that proven
//
// It takes words of package schedule and gives words of it back; it knows neither
// formats nor how a plan is shown. A judge stands outside: package check.
package planner
