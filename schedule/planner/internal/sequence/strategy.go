package sequence

// tasteNodes are spent on each course to find a good plan early.
const tasteNodes = 150

// solve spends the budget and returns a bound of all plans: a taste of each
// course, a short exact search that suffices for small days, a plan under each
// course and plans near the best one, and the exact search again.
func (h *solver) solve(d *day) (bound int) {
	list := candidates(h, d, h.share(10))
	bound = h.exact(list, h.share(25))
	if bound >= h.best.cost || h.spent(h.budget) {
		return bound
	}
	all := h.shareOut(d, list, h.share(50), h.share(70))
	h.improve(list, h.share(90), freedPerTurn)
	h.revisit(d, all, h.share(75))
	h.improve(list, h.share(90), 2*freedPerTurn)
	return max(bound, h.exact(list, h.budget))
}

// share is a number of nodes: so many hundredths of the budget.
func (h *solver) share(hundredths int) int { return h.budget / 100 * hundredths }

// exact searches the courses in order of their bounds, but for those that were seen whole.
func (h *solver) exact(list []*candidate, until int) (bound int) {
	bound = never
	for _, c := range list {
		if c.seen || !c.root.less(h.best) {
			continue
		}
		left := c.search.run(max(0, until-h.nodes), c.search.longest, nil)
		c.seen = left == never
		bound = min(bound, max(c.root.cost, left))
	}
	return bound
}

// adopt takes over the plan of a partial day.
func (h *solver) adopt(s *search, p *plan) {
	n := p.near(s)
	for c, w := range p.ways {
		n.ways[c] = s.counterpart(s.class[c], w, p.course)
	}
	s.run(quotaFor(0), s.longest, n)
}
