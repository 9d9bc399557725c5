// Package steer answers one question: what should the cook do with the vents now, and what will the grate do then?
//
// In: a grill, how its fire began, and the fire's log ([Event]: readings, vents, coals, lid, wind). Out: what the grate
// will do, as a range, and one advice ([Advice]) with its reason.
//
// It knows no food, no plan and no wall clock: time is minutes from any instant of the caller's. Dice are its own and
// seeded by the caller: equal logs give equal answers, and equal entries may stand in any order.
//
// Where to look:
//
//	event.go    what a fire's log says      begin.go   how a fire began, what is known of it
//	follow.go   the fire as many guesses
//	pull.go     what a reading teaches      guess.go   one guess
//	dice.go     the generator
//	ahead.go    what the grate will do      advise.go  which vent, how far, when to look again
//	choose.go   the vents that serve best   trust.go   readings that cannot be the grate's
//	hands.go    what hands should not do, whatever the guesses say
//	cold.go     the dip of cold food        reach.go   what vents cannot do
//	remedy.go   and what can
//	reason.go   why                           record.go, learn.go  what was learned of a grill
//	start.go    the vents to start with
//	words.go, words_why.go                  the advice as a cook reads it
//	names.go    codes of what to do and why
//
// Accuracy: told nothing but vents and coals it is off by 50 F on a stranger's grill. With readings at the grate the next
// one within the hour comes out to some 25 F. Every figure it gives is a range.
package steer
