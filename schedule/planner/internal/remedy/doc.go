// Package remedy answers one question: why can the day not be had, and what would help?
//
// In: a request and its plan. Out: the plan with the smallest sets of dishes and rules
// that clash, and with remedies: changes of the request as edits, each planned and
// priced, the least painful first ([WithRemedies]). Of a tight but feasible day it says
// what would ease it.
//
// It knows nothing of heat or charcoal: whether a change helps is asked of the planner.
//
//	remedy.go, whole.go, resort.go   the search
//	change*.go                       what may be changed: a remedy is added here
//	told.go                          what it asks of the cook, and which are told
//	clash.go                         the smallest clashes
//	prober.go                        whether a part of the day can be had
//	known.go                         what is known of parts of the menu
//	ease.go                          a tight day
package remedy
