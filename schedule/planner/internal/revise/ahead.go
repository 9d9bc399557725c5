package revise

import (
	"context"
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
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
	v.ofTheRest(&p, p.Findings) // what was thrown away the day before is no part of it
	if v.ahead.Plan != nil {
		withoutThrown(&p, v.ahead.Plan.Findings)
	}
	return p, nil
}

// followed says whether a step is of the day before, and its log says what was done.
func (v *Revision) followed(id string) bool {
	b := v.ahead.Plan
	return b != nil && b.Revision > 0 && slices.ContainsFunc(b.Steps, func(s schedule.Step) bool { return s.ID == id })
}

// leaveOut is a step of what was thrown away.
const leaveOut = "Leave this out, and throw it away: it is outside the published limits."

// withoutThrown leaves nothing on the day of serving of what the day before has to throw away.
func withoutThrown(p *schedule.Plan, before []schedule.Finding) {
	var gone []string
	for _, f := range before {
		if f.Severity == schedule.Danger {
			gone = append(gone, f.Dishes...)
		}
	}
	var left, thrown []string
	for _, d := range p.Dishes {
		if slices.Contains(gone, d.ID) {
			thrown = append(thrown, d.Name)
		} else {
			left = append(left, d.Name)
		}
	}
	if len(thrown) == 0 {
		return
	}
	for i, s := range p.Steps {
		if !s.Done && slices.Contains(gone, s.Dish) {
			p.Steps[i].Text = leaveOut
		}
		if s.Kind == schedule.StepServe && !s.Done {
			p.Steps[i].Text = fmt.Sprintf("Do not serve %s: outside the published limits.", say.Listed(thrown, "or"))
			if len(left) > 0 {
				p.Steps[i].Text = fmt.Sprintf("Serve: %s. %s", say.Listed(left, "and"), p.Steps[i].Text)
			}
		}
	}
	p.Findings = slices.DeleteFunc(p.Findings, func(f schedule.Finding) bool {
		return f.Severity != schedule.Danger && len(f.Dishes) > 0 && !slices.ContainsFunc(f.Dishes, func(id string) bool { return !slices.Contains(gone, id) })
	})
}
