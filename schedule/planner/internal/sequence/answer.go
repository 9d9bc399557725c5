package sequence

// answer puts the best plan into words.
func (h *solver) answer(bound int) Solution {
	s := Solution{Nodes: h.nodes, Light: -1}
	if bound < h.best.cost {
		s.Stopped = "the budget of nodes is spent"
	}
	switch {
	case h.plan == nil && bound == never:
		s.Status = Infeasible
		return s
	case h.plan == nil:
		s.Status, s.Bound = Unknown, bound
		return s
	}
	s.Status = Feasible
	s.Bound = min(bound, h.best.cost)
	if s.Stopped == "" {
		s.Status = Optimal
	}
	if h.any { // nothing is known of better ones
		s.Status, s.Bound, s.Stopped = Feasible, 0, "the first plan is enough"
	}
	h.plan.tell(&s)
	return s
}

// tell fills in the plan itself.
func (p *plan) tell(s *Solution) {
	K := len(p.fires)
	if K > 0 {
		s.Light = p.y[0] + p.setup()
		s.Parts.Burn = p.BurnCost * s.Light
		s.Parts.Change = p.changes(p.fires)
	}
	for k, f := range p.fires {
		ph := Phase{Fire: f, Begin: p.y[k]}
		if k+1 < K {
			ph.End = p.y[k+1] + p.change[k]
		}
		s.Phases = append(s.Phases, ph)
	}
	for c, w := range p.ways {
		var tasks []Placed
		for j, st := range w.stays {
			x := p.y[p.at[c]+j]
			tasks = append(tasks, Placed{st.mode, x + st.minutes, x, st.first, st.last})
			if j == len(w.stays)-1 {
				s.Parts.Hold += p.hold(&p.Chains[c], w.gap, x)
			}
		}
		s.Parts.Mode += w.cost
		s.Chains = append(s.Chains, tasks)
	}
	s.Cost = s.Parts.Sum()
	s.Why, s.WhyLight = p.reasons()
}
