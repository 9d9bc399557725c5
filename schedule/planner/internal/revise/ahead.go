package revise

import (
	"context"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/ahead"
)

// withAhead adds to a revision what the other of two days does: the steps of the day
// before, and the warming for the table, at the hour at which that is now. What is past
// of it is taken as done, unless its own log was followed.
func (v *Revision) withAhead(ctx context.Context, p schedule.Plan) (schedule.Plan, error) {
	r := plans.CopyRequest(v.ahead.Request)
	if v.ahead.Plan != nil { // the log is of the day of serving, and may move it
		r.Serve = v.day.Req.Serve
	}
	s, err := ahead.Split(ctx, r, v.base.Loc)
	if err != nil {
		return schedule.Plan{}, err
	}
	own := map[string]bool{}
	for _, step := range p.Steps {
		own[step.ID] = true
	}
	p = s.Joined(p, v.ahead.Plan)
	for i := range p.Steps {
		if step := &p.Steps[i]; !own[step.ID] && !step.At.After(v.now) && !v.followed(step.ID) {
			step.Done = true
		}
	}
	p.Findings = byUrgency(p.Findings)
	return p, nil
}

// followed says whether a step is of the day before, and its log says what was done.
func (v *Revision) followed(id string) bool {
	b := v.ahead.Plan
	return b != nil && b.Revision > 0 && slices.ContainsFunc(b.Steps, func(s schedule.Step) bool { return s.ID == id })
}
