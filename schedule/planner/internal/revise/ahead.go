package revise

import (
	"context"
	"slices"
	"time"

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
	if v.unfitBefore() {
		p.Steps = slices.DeleteFunc(p.Steps, func(s schedule.Step) bool { return !s.Done && v.ofUnfitAhead(s, own, p.Ahead.ChillAt) })
	}
	return p, nil
}

// unfitAhead says whether a dish that was cooked the day before is outside the published limits.
func (v *Revision) unfitAhead(id string) bool {
	if v.ahead == nil || v.ahead.Plan == nil {
		return false
	}
	return slices.ContainsFunc(v.ahead.Plan.Findings, func(f schedule.Finding) bool {
		return f.Severity == schedule.Danger && slices.Contains(f.Dishes, id)
	})
}

// unfitBefore says whether all that was cooked the day before is outside the published limits.
func (v *Revision) unfitBefore() bool {
	if v.ahead.Plan == nil {
		return false
	}
	return !slices.ContainsFunc(v.ahead.Plan.Dishes, func(d schedule.DishPlan) bool { return !v.unfitAhead(d.ID) })
}

// ofUnfitAhead says whether a step is of another day than the plan's own, and nobody waits for it
// any more: it is of chilling what is thrown away, or of warming it.
func (v *Revision) ofUnfitAhead(s schedule.Step, own map[string]bool, chillAt time.Time) bool {
	return !own[s.ID] && s.At.After(chillAt) && s.Kind != schedule.StepServe
}

// followed says whether a step is of the day before, and its log says what was done.
func (v *Revision) followed(id string) bool {
	b := v.ahead.Plan
	return b != nil && b.Revision > 0 && slices.ContainsFunc(b.Steps, func(s schedule.Step) bool { return s.ID == id })
}
