package planner

import (
	"context"

	"example.com/cookday/schedule"
	aheadpkg "example.com/cookday/schedule/planner/internal/ahead"
	daypkg "example.com/cookday/schedule/planner/internal/day"
	remedypkg "example.com/cookday/schedule/planner/internal/remedy"
)

// Make plans the day of a request. Bad requests give an *[InputError] with all
// faults; a cancelled context gives its error and no plan. A day that cannot be
// done is no error: the plan says Feasible false, why, and what would help.
func Make(ctx context.Context, r schedule.Request) (schedule.Plan, error) {
	e := daypkg.Effort{Memo: daypkg.NewMemo(), Purse: &daypkg.Purse{daypkg.FullPurse}}
	p, err := aheadpkg.MakePlan(ctx, r, e)
	if err != nil {
		return p, err
	}
	return remedypkg.WithRemedies(ctx, r.WithDefaults(), p, e)
}
