package remedy

import (
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// lift is the request without a rule that a cook can let go of; false if it does
// not have it.
func lift(r schedule.Request, rule string) (schedule.Request, bool) {
	r = plans.CopyRequest(r)
	switch rule {
	case arrange.RuleQuiet:
		had := len(r.Quiet) > 0
		r.Quiet = nil
		return r, had
	case arrange.RuleEarliest:
		had := assemble.HasEarliest(r)
		r.Earliest = nil
		for i := range r.Dishes {
			r.Dishes[i].Earliest = nil
		}
		return r, had
	}
	return r, false
}

// liftAll is the request without some rules.
func liftAll(r schedule.Request, rules []string) schedule.Request {
	for _, rule := range rules {
		r, _ = lift(r, rule)
	}
	return r
}
