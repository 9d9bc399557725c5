// Package belief answers one question: what do readings say of a piece that cooks?
//
// In: a [Journey], which is how the piece would go, and [Reading]s. Out: a [Belief]: a
// grid over the error of the grate and the pace of the piece, with quantiles of when it
// is done. Readings that contradict physics are sifted out and named ([Sieve]).
//
// It knows no dish, no clock and no plan: minutes count from the put-on.
package belief
