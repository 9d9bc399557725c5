// Package assemble answers one question: how is the arranged day told to a cook?
//
// In: an [arrange.Arrangement] and its batches. Out: a [schedule.Plan]: instants and
// windows, charcoal, places on the grate, steps, sentences, and findings. What cannot
// be arranged becomes a plan that says why ([Assembler.Infeasible]).
//
// It searches for nothing: what is decided here is wording, order and rounding.
//
//	assemble.go, blank.go, dishes.go   the plan and its dishes
//	steps*.go                          what to do
//	fuel*.go                           charcoal
//	room.go, curve.go                  who lies where, how warm it gets
//	wait*.go, wrap.go, lethality.go    holds and what may go wrong with them
//	trouble.go, infeasible.go          why not
package assemble
