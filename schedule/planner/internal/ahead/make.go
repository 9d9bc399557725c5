package ahead

import (
	"context"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/strict"
	arrangepkg "example.com/cookday/schedule/planner/internal/arrange"
	assemblepkg "example.com/cookday/schedule/planner/internal/assemble"
	daypkg "example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// makePlan is Make without remedies.
func MakePlan(ctx context.Context, r schedule.Request, e daypkg.Effort) (schedule.Plan, error) {
	r = r.WithDefaults()
	loc, err := r.Location()
	if err != nil {
		loc = nil // validation says it
	}
	if faults := r.ValidateIn(loc); len(faults) > 0 {
		return schedule.Plan{}, &strict.InputError{Faults: faults}
	}
	if err := ctx.Err(); err != nil {
		return schedule.Plan{}, err
	}
	if plans.CookedAhead(r) {
		return makeAhead(ctx, r, e)
	}
	d, faults := daypkg.ResolveIn(r, loc)
	if len(faults) > 0 {
		return schedule.Plan{}, &strict.InputError{Faults: faults}
	}
	d.Effort = e
	if d.Memo == nil {
		d.Memo = daypkg.NewMemo()
	}
	if !e.Part {
		d.Findings = append(d.Findings, guestFindings(r)...)
	}
	a, err := arrangepkg.DayArrange(d, ctx)
	if err != nil {
		return schedule.Plan{}, err
	}
	if s := a.Solution.Status; s == sequence.Infeasible || s == sequence.Unknown {
		return assemblepkg.DayInfeasible(d, a), nil
	}
	if e.Probe {
		return schedule.Plan{Feasible: true, Solution: assemblepkg.SolutionOf(a.Solution)}, nil
	}
	return assemblepkg.DayAssemble(d, ctx, a)
}
