package schedule

import (
	"context"

	"example.com/cookday/schedule/internal/sequence"
)

// Make plans the day of a request. Bad requests give an *[InputError] with all
// faults; a cancelled context gives its error and no plan. A day that cannot be
// done is no error: the plan says Feasible false, why, and what would help.
func Make(ctx context.Context, r Request) (Plan, error) {
	e := effort{memo: newMemo(), purse: &purse{fullPurse}}
	p, err := makePlan(ctx, r, e)
	if err != nil {
		return p, err
	}
	return withRemedies(ctx, r.withDefaults(), p, e)
}

// makePlan is Make without remedies.
func makePlan(ctx context.Context, r Request, e effort) (Plan, error) {
	r = r.withDefaults()
	loc, err := r.Location()
	if err != nil {
		loc = nil // validation says it
	}
	if faults := r.validateIn(loc); len(faults) > 0 {
		return Plan{}, &InputError{Faults: faults}
	}
	if err := ctx.Err(); err != nil {
		return Plan{}, err
	}
	if cookedAhead(r) {
		return makeAhead(ctx, r, e)
	}
	d, faults := resolveIn(r, loc)
	if len(faults) > 0 {
		return Plan{}, &InputError{Faults: faults}
	}
	d.effort = e
	if d.memo == nil {
		d.memo = newMemo()
	}
	if !e.part {
		d.findings = append(d.findings, guestFindings(r)...)
	}
	a, err := d.arrange(ctx)
	if err != nil {
		return Plan{}, err
	}
	if s := a.solution.Status; s == sequence.Infeasible || s == sequence.Unknown {
		return d.infeasible(a), nil
	}
	if e.probe {
		return Plan{Feasible: true, Solution: solutionOf(a.solution)}, nil
	}
	return d.assemble(ctx, a)
}
