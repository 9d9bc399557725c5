// Package assemble answers one question: how is the arranged day told to a cook?
//
// In: an [arrange.Arrangement] and its batches. Out: a [schedule.Plan]: instants and
// windows, charcoal, places on the grate, steps, sentences, and findings. What cannot
// be arranged becomes a plan that says why ([Assembler.Infeasible]).
//
// It searches for nothing: what is decided here is wording, order and rounding.
//
//	assembler.go, assemble.go, blank.go, dishes.go  the plan and its dishes
//	steps*.go, look_words.go           what to do; over the coals: steps_coals.go; how to look at a piece
//	fire_start.go                      how a fire of this grill begins: vents, cold food, coals that are lit later
//	fire_reach.go                      what a cooker can hold, and how many of ten hold it all night
//	night.go                           how the night is spent, and what a fire needs that burns in it
//	laid.go                            layouts that were asked for, and why a ring
//	fuel*.go                           charcoal
//	room.go, tight.go, curve.go        who lies where, and how close, how warm it gets
//	wait*.go, wrap.go, lethality.go    holds and what may go wrong with them
//	heat_note.go, heat_words.go        why a cut cooks hotter than it usually does; where the heat is
//	why.go, trouble.go, infeasible.go  why then, and why not
//	caution.go                         what the cook is warned of
package assemble
