package sequence

import "slices"

// This file looks for plans under each sequence of fires by itself. Plans near
// the best one rarely lead from one sequence to another, since a change of fire
// moves everything; so each promising sequence gets a plan of its own, improved
// a little without regard to better ones elsewhere, and the best of them more. The
// others get another turn once the best one has had its turn: the sequence of the best plan
// may be slow to show it.

// start is a sequence with the best plan found under it so far. While it has
// none, loose looks for one on a partial day, on which chains may be left out at
// a price, and improves that until nobody is.
type start struct {
	*candidate
	solver, loose *solver
	partial       *candidate
}

// shareOut gives each course a share of half of the nodes, the better half of the
// courses a share of half of what is left, and so on. While there is no plan at
// all it goes on up to the greater number of nodes. It returns the courses, the
// best first.
func (h *solver) shareOut(d *day, list []*candidate, until, greater int) []*start {
	end := func() int {
		if h.plan == nil {
			return greater
		}
		return until
	}
	var all []*start
	list = list[:min(len(list), 1+max(0, end()-h.nodes)/(2*leastShare))]
	share := (end() - h.nodes) / (2 * max(1, len(list)))
	for _, c := range list {
		if !c.root.less(h.best) || h.spent(end()) {
			break
		}
		s := &start{candidate: c, solver: &solver{ctx: h.ctx, best: value{never, never}}}
		h.visit(s, d, share)
		all = append(all, s)
	}
	n := len(all)
	for before := -1; n > 0 && h.nodes > before && !h.spent(end()); {
		before = h.nodes
		rank(all)
		n = (n + 1) / 2
		share = max(1, (end()-h.nodes)/(2*n))
		for _, s := range all[:n] {
			if !h.spent(end()) {
				h.visit(s, d, share)
			}
		}
	}
	rank(all)
	return all
}

// leastShare is the fewest nodes that are worth laying a partial day out for: where there
// are too few for all courses, those of the least bounds get them.
const leastShare = 30

// rank puts the best plans first.
func rank(all []*start) {
	slices.SortStableFunc(all, func(a, b *start) int { return a.value().compare(b.value()) })
}

// revisit goes back to courses that shareOut has left, the best first, until each
// has had its turn.
func (h *solver) revisit(d *day, all []*start, until int) {
	for _, s := range all {
		if s.root.less(h.best) && !h.spent(until) {
			h.visit(s, d, (until-h.nodes+1)/2)
		}
	}
}

// freedPerTurn is how many chains are freed under one course before others get their
// turn: larger sets are seldom solved within their quota.
const freedPerTurn = 4

// value is that of the plan, or of the partial one.
func (s *start) value() value {
	if s.solver.plan == nil && s.loose != nil {
		return s.loose.best
	}
	return s.solver.best
}

// visit works on a start alone for so many nodes and takes over its plan if it is
// the best.
func (h *solver) visit(s *start, d *day, nodes int) {
	s.search.solver = s.solver
	s.solver.nodes, s.solver.budget = h.nodes, min(h.budget, h.nodes+nodes)
	if s.solver.plan == nil {
		s.begin(d)
	}
	s.solver.improve([]*candidate{s.candidate}, s.solver.budget, freedPerTurn)
	s.search.solver = h
	h.nodes, h.err = s.solver.nodes, s.solver.err
	if s.solver.best.less(h.best) {
		h.best, h.plan, h.rounds = s.solver.best, s.solver.plan, s.solver.rounds
		h.satisfied()
	}
}

// begin looks for a first plan on the partial day.
func (s *start) begin(d *day) {
	h := s.solver
	if s.loose == nil {
		part := *d
		part.partial = true
		s.loose = &solver{ctx: h.ctx, best: value{never, never}}
		s.partial = &candidate{search: newSearch(s.loose, newCourse(&part, s.search.fires))}
	}
	l := s.loose
	l.nodes, l.budget = h.nodes, h.budget
	if l.plan == nil {
		l.dive(s.partial.search, l.budget)
	}
	l.improve([]*candidate{s.partial}, l.budget, len(d.Chains))
	h.nodes, h.err = l.nodes, l.err
	if l.done() {
		h.adopt(s.search, l.plan)
	}
}

// dive searches in haste until it finds a plan.
func (h *solver) dive(s *search, until int) {
	h.any, s.hasty = true, true
	s.run(max(0, until-h.nodes), s.longest, nil)
	h.any, s.hasty = false, false
	if h.plan != nil {
		h.best = h.plan.value
	}
}

// divePatience is how many nodes a dive spends on parting a chain from others
// before it tries another way for it.
const divePatience = 10
