package ahead

import (
	"context"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// Effort is how hard a plan is tried for. The zero value is a full plan.
type Effort struct {
	arrange.Effort
	Memo *day.Memo // simulated cooks; shared by plans made one after another
}

// FullEffort is that of an answer: one allowance for all its searches.
func FullEffort() Effort {
	return Effort{Effort: arrange.Effort{Allowance: arrange.NewAllowance(arrange.FullAllowance), Room: new(sequence.Room)}, Memo: day.NewMemo()}
}

// Plan makes the plan of a request, without remedies. Where it cannot be had, what would burn
// over the coals before it is done lies there after all, if that makes room, and it is said.
func Plan(ctx context.Context, r schedule.Request, e Effort) (schedule.Plan, error) {
	p, err := planAsked(ctx, r, e)
	if err != nil || p.Feasible {
		return p, err
	}
	over, ok := overTheCoals(r)
	if !ok {
		return p, nil
	}
	if q, err := planAsked(ctx, over, e); err == nil && q.Feasible {
		return q, nil
	}
	return p, ctx.Err()
}

func planAsked(ctx context.Context, r schedule.Request, e Effort) (schedule.Plan, error) {
	s, err := day.Examine(r)
	if err != nil {
		return schedule.Plan{}, err
	}
	if err := ctx.Err(); err != nil {
		return schedule.Plan{}, err
	}
	if plans.CookedAhead(s.Request) {
		return planTwo(ctx, s, e)
	}
	p, err := planOne(ctx, s, e, day.Options{Memo: e.Memo}, menuFindings(s.Request))
	if err == nil {
		p.Findings = append(p.Findings, belowAsked(p)...)
	}
	return p, err
}

// planOne plans one day; known is what was found of it before.
func planOne(ctx context.Context, s day.Sound, e Effort, o day.Options, known []schedule.Finding) (schedule.Plan, error) {
	resolved, err := day.Resolve(s, o)
	if err != nil {
		return schedule.Plan{}, err
	}
	if faults := resolved.CoolBirds(); len(faults) > 0 {
		return schedule.Plan{}, &schedule.InputError{Faults: faults}
	}
	n := sleeper{day: resolved, effort: e, known: known}
	if s.Request.Quiet != nil {
		return n.said(ctx)
	}
	return n.unsaid(ctx)
}
