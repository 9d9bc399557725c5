package planner

import (
	"context"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/remedy"
)

// Make plans the day of a request. Bad requests give an [*schedule.InputError] with
// all faults; a cancelled context gives its error and no plan. A day that cannot be
// done is no error: the plan says Feasible false, why, and what would help.
func Make(ctx context.Context, r schedule.Request, how ...Option) (schedule.Plan, error) {
	o := optionsOf(how)
	e := o.effort()
	b, err := boundBy(r, o.notBefore)
	if err != nil {
		return schedule.Plan{}, err
	}
	p, err := ahead.Plan(ctx, b.planned, e)
	if err == nil && o.nodes == 0 {
		p, err = remedy.WithRemedies(ctx, b.planned.WithDefaults(), p, e)
	}
	if err != nil {
		return p, b.fault(err)
	}
	p = b.undo(p)
	if o.nodes == 0 {
		if p, err = b.inTime(ctx, p, e); err != nil {
			return p, err
		}
	}
	if faults := o.judge(p); len(faults) > 0 {
		return p, &UnsoundError{Faults: faults}
	}
	return p, nil
}
