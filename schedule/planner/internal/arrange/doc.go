// Package arrange answers one question: in which order, on which fire and when does
// everything go on?
//
// In: a [day.Day]. Out: an [Arrangement]: the problem over integers that it stated, the
// answer of package sequence, and, by [Arranger.Place], the batches of that answer in
// the planner's terms ([Placed]). What no cook would do is closed to the solver here.
//
// It writes no sentence and no instant of a clock.
//
//	arranger.go, allowance.go              how hard a search tries, how much it may spend
//	arrange.go, meals.go, chain.go, modes.go, stated.go  the problem
//	hearth.go, night.go, closed.go         fires on offer, and hours that are closed
//	laid.go                                layouts that are asked for, and a ring through the night
//	level.go                               what another heat than the usual one is felt to cost
//	reserve.go                             how slow a day each way counts with
//	rules.go                               rules that may be lifted
//	batch.go, load.go, stack.go            loads of the grate, their room, grates one above another
//	placed.go, hold_choice.go, rekindle.go the answer read back; how long a hold may be is of package day
package arrange
