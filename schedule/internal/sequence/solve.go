package sequence

import "context"

// Solve finds the plan of least cost, or as good a one as the budget allows, or
// proves that there is none. Of plans of one cost it prefers the one whose
// chains start later in sum; beyond that the order of the chains decides, so
// that equal problems have equal answers. The error is ctx.Err() or a
// *ProblemError.
func Solve(ctx context.Context, p *Problem) (Solution, error) {
	if err := check(p); err != nil {
		return Solution{}, err
	}
	d := prepare(p)
	h := &hunt{ctx: ctx, budget: p.Budget, best: value{never, never}}
	if h.budget == 0 {
		h.budget = DefaultBudget
	}
	bound := h.exact(d)
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

// tasteNodes are spent on each course in each order to find a good plan early.
const tasteNodes = 150

// exact runs the whole search and returns a bound of all plans.
func (h *hunt) exact(d *day) (bound int) {
	list := candidates(h, d)
	for _, c := range list {
		if c.root.less(h.best) {
			c.search.run(tasteNodes, d.longest, nil)
		}
	}
	bound = never
	for _, c := range list {
		if c.root.less(h.best) {
			bound = min(bound, max(c.root.cost, c.search.run(h.budget, d.longest, nil)))
		}
	}
	return bound
}
