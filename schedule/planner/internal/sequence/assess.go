package sequence

// assess settles the system, draws what follows from the chains without a way
// and from the best plan, and returns a bound; false: the node is closed.
func (s *search) assess() (value, bool) {
	for {
		if !s.settle() {
			return value{}, false
		}
		moved, ok := s.survey()
		if !ok {
			return value{}, false
		}
		if moved {
			continue
		}
		bound, joint := s.total()
		if !(value{bound.cost + joint, bound.starts}).less(s.solver.best) {
			return value{}, false
		}
		rooms, hands := s.crowding()
		extra := max(hands, sum(rooms))
		if !s.tighten(s.solver.best.cost-bound.cost, rooms, extra) {
			return value{}, false
		}
		bound.cost += max(joint, extra)
		if !bound.less(s.solver.best) {
			return value{}, false
		}
		if len(s.queue) == 0 {
			return bound, true
		}
	}
}

// glance is assess without the costlier part: enough to sort children.
func (s *search) glance() (value, bool) {
	for moved := true; moved; {
		if !s.settle() {
			return value{}, false
		}
		var ok bool
		if moved, ok = s.survey(); !ok {
			return value{}, false
		}
	}
	bound, joint := s.total()
	bound.cost += joint
	return bound, bound.less(s.solver.best)
}

// total is the plain bound of the node, term by term, and what the fire of some
// chain without a way must add to it.
func (s *search) total() (v value, joint int) {
	joint = s.detour
	if K := len(s.fires); K > 0 {
		v.cost = s.cost + s.BurnCost*(s.low[0]+s.setup())
	}
	for c := range s.Chains {
		w := s.chosen[c]
		if w == nil {
			e := &s.est[s.class[c]]
			v.cost += e.cost
			v.starts += e.starts
			joint = max(joint, e.joint-e.cost)
			continue
		}
		v.cost += w.cost + s.hold(&s.Chains[c], w.gap, s.low[s.at[c]+len(w.stays)-1])
		v.starts += s.low[s.at[c]] + w.stays[0].minutes
	}
	return v, joint
}

// tighten lowers the upper bounds to what the best plan leaves: no term may
// grow by more than the slack over the plain bound, less what the queues of
// others must cost.
func (s *search) tighten(slack int, rooms []int, extra int) bool {
	if s.solver.best.cost == never {
		return true
	}
	if len(s.fires) > 0 && s.BurnCost > 0 && (slack < extra || !s.lower(0, s.low[0]+(slack-extra)/s.BurnCost)) {
		return false
	}
	total := sum(rooms)
	for c := range s.Chains {
		w, ch := s.chosen[c], &s.Chains[c]
		if w == nil || ch.HoldCost == 0 {
			continue
		}
		x := s.at[c] + len(w.stays) - 1
		free := ch.Serve + w.gap.Ideal
		others := total
		for i := range rooms {
			if rooms[i] > 0 && s.families[i].classes[s.class[c]] {
				others -= rooms[i]
			}
		}
		grow := s.hold(ch, w.gap, s.low[x]) + slack - others
		if grow < 0 {
			return false
		}
		if !s.lower(x, free+grow/ch.HoldCost) {
			return false
		}
	}
	return true
}
