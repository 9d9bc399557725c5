// Package sequence answers one question: which arrangement of a cook day is best, and
// is that proven?
//
// In: a [Problem]. Out: a [Solution] ([Solve]), which others may hold against the problem
// ([Verify]).
//
// It knows integers only: minutes before the last serving instant (larger is earlier)
// and square centimetres. It knows nothing of meat, heat, clocks or chance, takes no
// time limit (budgets are numbers of nodes) and gives equal answers to equal problems.
//
// # The problem
//
// Chains of tasks end before their serving instants. Each task is done in one of
// its modes, in a zone of the fire that burns, or of the oven. Fires burn one
// after another; a task may ride through a change if its mode has a place under
// all the fires it meets. Zones have room, hands are one pair, some instants are
// barred: quiet hours for what is attended, closed hours for a mode. See Problem
// for each field and Verify for each rule.
//
// The cost is the sum of holds beyond the ideal gap, modes, changes of fire, and
// minutes from the light to the last serving instant. Counting the fire to that
// constant end matters: no cost ever falls when something moves earlier.
//
// # Why the search is exact
//
// Fix three things: the sequence of fires; for each chain a way, that is modes
// and the phases of each task; and, for tasks that compete, who goes first. What
// is left asks for instants y with
//
//	y[j] >= y[i] + w       (lags, fires, order; w of any sign)
//	y[i] not in its holes  (barred instants)
//	y[i] <= its bound      (longest gap, earliest instant)
//
// If y and y' both obey this then so does their minimum, instant by instant: on
// the right of each inequality stands one variable, and the smaller of two
// allowed values is allowed. So there is one least solution, and raising values
// only where something forces it finds it (type system). Every cost is least
// there, and the sum of starts too.
//
// The search (type search) goes depth first. A node is such a system with some
// chains placed. Its least solution is a bound for all below, since adding
// constraints only raises values. A conflict in it is a pair of overlapping
// stretches of hands, or a smallest set of tasks that together exceed a zone at
// one instant. Intervals that meet in pairs meet in one point; so in any plan
// two of such a set do not meet, and one is wholly before the other: a child for
// each ordered pair loses no plan. With no conflict left and all chains placed
// the least solution is the best plan of its leaf.
//
// A rider is counted in the zone of each phase it meets for its whole length.
// That is the same as counting it only while the phase burns: another task of
// the phase and the phase itself meet it in pairs, hence together.
//
// # What makes it fast
//
//   - Alike chains end in their order (they could be exchanged).
//   - Most sequences of fires are thrown out before they are laid out (drafts.go), and
//     those that are left are laid out while they may still be better than the best plan.
//   - A phase in which nothing cooks is left to shorter sequences (idle.go).
//   - Bounds: placed chains at their least, others by their cheapest way under
//     the phases as they stand, the fire that any way of some chain needs, and
//     what those that crowd into the same zones or need the same hands must
//     cost as a queue (energy.go).
//   - No term may grow by more than what is left to the best plan; upper bounds
//     are lowered by that and passed on against the links, so that many
//     conflicts have one way out only.
//
// # Beyond proof
//
// On large days the budget ends first. Part of it then goes to each promising
// sequence of fires by itself (turns.go): a first plan comes from a partial day, on
// which chains may be left out at a price, improved until nobody is. The rest goes
// to plans near the best one (improve.go), which free a few chains and solve those
// exactly; where no small set helps any more, to the sequences left behind. Placing tasks or whole chains one by
// one, each as late as it fits, is no method here: it misses optima, and even
// plans, as soon as lags have a greatest length or hands take minutes
// (counterexample_test.go).
//
// # Why, and what clashes
//
// What raised an instant last in the least solution is tight, and following it
// ends at a serving instant or a hole: it is the reason of a start. An
// infeasible problem is shrunk to a set of chains and rules of which every
// proper subset is feasible (clash.go).
//
// # Where to look
//
//	problem.go, solution.go, solve.go, answer.go   what is asked and what comes of it
//	check*.go, verify*.go                          is a problem one, does a plan keep it
//	windows.go, drafts.go                          which sequences of fires are worth a look
//	prepare.go, stages.go, ways.go, course.go, alone.go, store.go  the problem laid out for a sequence of fires
//	system.go                                      the least solution
//	search.go, branch.go, conflict.go, choose.go, assess.go  the search under one sequence
//	estimate.go, crowd.go, energy.go, idle.go      its bounds
//	solver.go, strategy.go, turns.go, improve.go, near.go    what the budget is spent on
//	why.go, clash.go                               reasons
package sequence
