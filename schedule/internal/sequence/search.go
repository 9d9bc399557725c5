package sequence

import (
	"math"
	"slices"
)

const never = math.MaxInt / 4

// search is the depth-first search under one course.
type search struct {
	*course
	*system
	hunt    *hunt
	at      []int  // number of the first task of each chain
	chosen  []*way // by chain; nil: not yet
	guests  [][]guest
	hands   []hand
	est     []estimate // by class
	order   []int      // in which chains get their ways
	quota   int        // nodes this run may still open
	halted  bool
	bound   int // least bound of the nodes left open by halting
	near    *near
	users   []int // chosen chains that use each phase
	waiting []int // chains without a way in each class
	detour  int   // least cost of using phases that nothing uses yet
	kept    []int // chains that near fixes, the last one first
	spare   [][]child

	families []crowd
	extra    []int
	queueing []applicant
	sorter   sorter
	picker   picker
}

// child is a way out of a node: a link, or a way for a chain.
type child struct {
	link  link
	way   int // an index into the ways of the chain's class
	bound value
}

// value is what plans are compared by: cost, then the sum of the first starts.
type value struct{ cost, starts int }

func (a value) less(b value) bool {
	return a.cost < b.cost || a.cost == b.cost && a.starts < b.starts
}

func newSearch(h *hunt, c *course) *search {
	n := len(c.fires)
	s := &search{course: c, hunt: h, order: c.longest}
	for i := range c.Chains {
		s.at = append(s.at, n)
		n += len(c.Chains[i].Tasks)
	}
	s.system = newSystem(n)
	s.chosen = make([]*way, len(c.Chains))
	s.guests = make([][]guest, len(c.cells))
	s.est = make([]estimate, len(c.sample))
	for v := range s.high {
		s.high[v] = never
	}
	s.users, s.waiting = make([]int, len(c.fires)), make([]int, len(c.sample))
	for _, class := range c.class {
		s.waiting[class]++
	}
	s.families = c.crowds()
	return s
}

// start sets up the phases; false: the sequence of fires does not fit the day.
func (s *search) start() bool {
	for k := range s.fires {
		high := s.Earliest
		if k == 0 {
			high -= s.setup()
		}
		if !s.set(k, s.barred[k], 0, high) {
			return false
		}
		if k > 0 && !s.add(link{k, k - 1, s.change[k-1], tie{kind: bondPhase}}) {
			return false
		}
		if k == 0 && s.LightHands > 0 {
			s.hands = append(s.hands, hand{-1, 0, s.setup(), s.LightHands})
		}
		if k > 0 && s.ChangeHands > 0 {
			s.hands = append(s.hands, hand{-1, k, s.change[k-1], s.ChangeHands})
		}
	}
	return true
}

// run searches the course with at most quota nodes, giving the chains their ways
// in the given order, near a plan if one is given. It returns a bound of all the
// plans it did not see; never, if none is left.
func (s *search) run(quota int, order []int, n *near) (bound int) {
	s.quota, s.halted, s.bound, s.order, s.near = quota, false, never, order, n
	m := s.mark()
	if s.start() && s.keep() {
		s.open(0)
	}
	for _, c := range s.kept {
		s.unchoose(c)
	}
	s.undo(m)
	s.kept, s.hands, s.near = s.kept[:0], s.hands[:0], nil
	return s.bound
}

// rootBound is the bound of the course before any choice.
func (s *search) rootBound() (value, bool) {
	m := s.mark()
	defer func() { s.undo(m); s.hands = s.hands[:0] }()
	if !s.start() {
		return value{}, false
	}
	return s.assess()
}

// leave takes note of a node that is left unexplored.
func (s *search) leave(v value) { s.bound = min(s.bound, v.cost) }

// open explores a node: the system as it stands.
func (s *search) open(depth int) {
	children := s.scratch(depth)
	for {
		bound, ok := s.assess()
		if !ok {
			return
		}
		found, forced, dead := s.force(&children)
		if dead {
			return
		}
		if forced {
			continue
		}
		if s.quota--; s.quota < 0 || !s.hunt.count() {
			s.halted = true
			s.leave(bound)
			return
		}
		if found {
			s.branch(children, depth, -1)
			return
		}
		break
	}
	c := s.next()
	if c < 0 {
		v, _ := s.total()
		s.hunt.record(s, v)
		return
	}
	children = children[:0]
	class := s.class[c]
	for _, i := range s.est[class].alive {
		children = append(children, child{way: i})
	}
	s.branch(children, depth, c)
}

// force takes the ways out of conflicts that have only one. It leaves those of
// the most pressing other conflict in children.
func (s *search) force(children *[]child) (found, forced, dead bool) {
	for {
		*children = (*children)[:0]
		found, dead, one := s.conflict(children)
		if dead || !one {
			return found, forced, dead
		}
		forced = true
		if !s.add((*children)[0].link) || !s.settle() {
			return true, true, true
		}
	}
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
	slices.SortStableFunc(children, func(a, b child) int {
		if a.bound.cost != b.bound.cost {
			return a.bound.cost - b.bound.cost
		}
		return a.bound.starts - b.bound.starts
	})
	for i := range children {
		if !children[i].bound.less(s.hunt.best) {
			return
		}
		if s.halted {
			s.leave(children[i].bound)
			continue
		}
		m := s.mark()
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
