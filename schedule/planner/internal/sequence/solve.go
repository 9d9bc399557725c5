package sequence

import "context"

// Solve finds the plan of least cost, or as good a one as the budget allows, or
// proves that there is none. Of plans of one cost it prefers the one whose
// chains start later in sum; beyond that the order of the chains decides, so
// that equal problems have equal answers. The error is ctx.Err() or a
// *ProblemError.
func Solve(ctx context.Context, p *Problem) (Solution, error) { return (*Room)(nil).Solve(ctx, p) }

// Solve is [Solve] in a room that is used again; nil stands for a new one.
func (r *Room) Solve(ctx context.Context, p *Problem) (Solution, error) {
	if r == nil {
		r = new(Room)
	}
	if err := check(p); err != nil {
		return Solution{}, err
	}
	r.store.back(&pools{})
	d := prepare(p, &r.store)
	h := &solver{ctx: ctx, budget: p.Budget, best: value{never, never}, any: p.FirstPlan}
	if h.budget == 0 {
		h.budget = DefaultBudget
	}
	if p.Below > 0 {
		h.best = value{p.Below, 0}
	}
	bound := h.solve(d)
	answer := h.answer(bound)
	if answer.Status == Infeasible && !p.NoClash {
		answer.Clash = h.clash(d)
		answer.Nodes = h.nodes
	}
	if h.err == nil {
		h.err = ctx.Err()
	}
	if h.err != nil {
		return Solution{}, h.err
	}
	return answer, nil
}
