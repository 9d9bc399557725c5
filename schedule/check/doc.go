// Package check answers one question: is this plan sound?
//
// In: a plan. Out: every promise that it breaks, each led by the name of its rule
// ([Plan]). The rules are worked out again from the plan, the request in it, the
// catalogue, and the rules of fire and safety. It must never use what made the plan: it
// cannot import a room of the planner, for these are internal to it, and a test keeps it
// from the planner's door.
//
// A rule is a row of the table in check.go and a method of its own; what several rules
// need to know of the plan is worked out once, in facts.go. The methods:
//
//	walk.go, form.go         numbers and instants; names, dates, makers
//	steps.go, order.go       what is done, and in which order
//	stages.go, minutes.go    how each batch goes from put-on to serving, and how long that takes
//	hold.go, overnight.go    how it waits until it is served, how long, and in an oven at night
//	kept.go, apart.go        whether the log tells where it is since it came off, and one piece of several
//	ordered.go, undone.go    what a fire that fails, a storm and a piece that is not done ask for
//	clock.go, past.go, shown.go  milestones, hours, what is done in a revision, and what nothing shows to be
//	before.go                what is thawed before, and what is chilled for another day
//	night.go, unwatched.go   who sleeps when, and what a fire needs that burns then
//	chance*.go, odds.go      windows and chances, and what takes no part in them
//	place.go, room.go, levels.go  pieces, zones, how much goes there, and what hangs over what
//	spots.go, outline.go     where each piece lies
//	one_oven.go              at which heat the oven is, for whom
//	fire.go, safety.go       fires and charcoal; rules of food safety
package check
