// Package belief answers one question: what do readings say of a piece that cooks?
//
// In: a [Journey], which is how the piece would go, and [Reading]s of which it is known
// whether they count. Out: a [Belief]: when it is done, and the curve of its core.
//
// Two clocks are multiplied. Clock A is what the core still has to climb from the newest
// reading, at the usual pace: no pace is carried over. Clock B is what is left of a whole
// cook that is not over.
//
//	journey.go, ride.go     the day of a piece, and a piece on its way through it
//	nodes.go                many readings in few points
//	lattice.go              which paces bring it to a reading; clock A
//	belief.go, creep.go     both clocks of a piece; a core that creeps near its target
//	share.go, huber.go      the product, over the error of the grate that pieces share
//	rest.go, curve.go       what is read off it: quantiles, chances, the curve
//	cover.go, walk.go       what else may be; the past, for the clocks of safety
//	cooling.go              how long a piece that is held stays hot, by its readings
//	outlook.go              what a reading ought to be: the core foretold from one before
//
// It knows no dish, no clock and no plan: minutes count from the put-on.
package belief
