package sequence

import "slices"

// child is a way out of a node: a link, or a way for a chain.
type child struct {
	link  link
	way   int // an index into the ways of the chain's class
	bound value
}

// value is what plans are compared by: cost, then the sum of the first starts.
type value struct{ cost, starts int }

func (a value) less(b value) bool {
	return a.compare(b) < 0
}

// compare is negative where a is better than b, for sorting.
func (a value) compare(b value) int {
	if a.cost != b.cost {
		return a.cost - b.cost
	}
	return a.starts - b.starts
}

// leave takes note of a node that is left unexplored.
func (s *search) leave(v value) { s.bound = min(s.bound, v.cost) }

// open explores a node: the system as it stands.
func (s *search) open(depth int) {
	children := s.scratch(depth)
	bound, found, ok := s.narrow(&children)
	if !ok {
		return
	}
	if s.quota--; s.quota < 0 || !s.solver.count() {
		s.halted = true
		s.leave(bound)
		return
	}
	before := s.restrict(depth)
	defer func() { s.viable = before }()
	if found {
		if s.patience--; s.hasty && s.patience < 0 {
			s.leave(bound)
			return
		}
		s.branch(children, depth, -1)
		return
	}
	c := s.next()
	if c < 0 {
		v, _ := s.total()
		s.solver.record(s, v)
		return
	}
	for _, i := range s.est[s.class[c]].alive {
		children = append(children, child{way: i})
	}
	s.branch(children, depth, c)
}

// narrow draws what follows and takes the ways out of conflicts that have only
// one, until nothing moves; false: the node is closed. Where a conflict is found,
// its ways out are in children.
func (s *search) narrow(children *[]child) (bound value, found, ok bool) {
	for {
		if bound, ok = s.assess(); !ok {
			return bound, false, false
		}
		found, forced, dead := s.conflict(children)
		if dead || !forced {
			return bound, found, !dead
		}
	}
}

// restrict leaves the ways that work under a node to what lies below it, and returns
// what worked above it: the phases only ever move one way on the way down.
func (s *search) restrict(depth int) (before [][]int) {
	for len(s.held) <= depth {
		s.held = append(s.held, make([][]int, len(s.sample)))
	}
	before, now := s.viable, s.held[depth]
	for k := range now {
		now[k] = now[k][:0]
		if s.waiting[k] > 0 {
			now[k] = append(now[k], s.est[k].alive...)
		}
	}
	s.viable = now
	return before
}

// next is the next chain without a way, -1 for none.
func (s *search) next() int {
	for _, c := range s.order {
		if s.chosen[c] == nil {
			return c
		}
	}
	return -1
}

// branch tries the children, the most promising first.
func (s *search) branch(children []child, depth int, chain int) {
	s.spare[depth] = children
	n := 0
	for i := range children {
		m := s.mark()
		if s.enter(&children[i], chain) {
			if v, ok := s.glance(); ok {
				children[i].bound = v
				children[n] = children[i]
				n++
			}
		}
		s.leaveChild(m, chain)
	}
	children = children[:n]
	slices.SortStableFunc(children, func(a, b child) int { return a.bound.compare(b.bound) })
	for i := range children {
		if !children[i].bound.less(s.solver.best) {
			return
		}
		if s.halted {
			s.leave(children[i].bound)
			continue
		}
		m := s.mark()
		if chain >= 0 && (i == 0 || !s.partial) {
			s.patience = divePatience
		}
		if s.enter(&children[i], chain) {
			s.open(depth + 1)
		}
		s.leaveChild(m, chain)
	}
}

func (s *search) enter(c *child, chain int) bool {
	if chain < 0 {
		return s.add(c.link)
	}
	return s.choose(chain, &s.ways[s.class[chain]][c.way])
}

func (s *search) leaveChild(m mark, chain int) {
	if chain >= 0 {
		s.unchoose(chain)
	}
	s.undo(m)
}

// scratch is an empty list of children for a node of this depth.
func (s *search) scratch(depth int) []child {
	for len(s.spare) <= depth {
		s.spare = append(s.spare, nil)
	}
	return s.spare[depth][:0]
}
