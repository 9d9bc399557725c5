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
//
// Where the request says what has happened already, the plan is the revision of its day
// as of the instant of [NotBefore], or else of the last that happened: it is planned as
// before its first entry, and then revised.
func Make(ctx context.Context, r schedule.Request, how ...Option) (schedule.Plan, error) {
	o := optionsOf(how)
	e := o.effort()
	if happened(r) {
		return underWay(ctx, r, o)
	}
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
	p = inOwnUnits(p)
	if faults := o.judge(p); len(faults) > 0 {
		return p, &UnsoundError{Faults: faults}
	}
	return p, nil
}

// happened says whether a sound request says what has happened already.
func happened(r schedule.Request) bool {
	return len(r.Happened()) > 0 && len(r.WithDefaults().Validate()) == 0
}

// underWay is the plan of a day that has begun.
func underWay(ctx context.Context, r schedule.Request, o options) (schedule.Plan, error) {
	quick := ahead.FullEffort()
	if o.nodes > 0 {
		quick = o.effort()
	}
	p, err := ahead.Plan(ctx, r, quick)
	if err != nil {
		return p, err
	}
	now := o.notBefore
	if now.IsZero() {
		log := r.Happened()
		now = log[len(log)-1].At
	}
	return reviseWith(ctx, p, nil, now, o)
}
