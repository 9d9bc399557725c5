// Package check answers one question: is this plan sound?
//
// In: a plan. Out: every promise that it breaks, each led by the name of its rule
// ([Plan]). The rules are worked out again from the plan, the request in it, the
// catalogue, and the rules of fire and safety. It must never use what made the plan: it
// cannot import a room of the planner, for these are internal to it, and a test keeps it
// from the planner's door.
//
// A rule is a row of the table in check.go and a method of its own; what several rules
// need to know of the plan is worked out once, in facts.go.
package check
