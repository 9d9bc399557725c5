package sequence

import "math"

const never = math.MaxInt / 4

// search is the depth-first search under one course.
type search struct {
	*course
	*system
	solver   *solver
	at       []int  // number of the first task of each chain
	chosen   []*way // by chain; nil: not yet
	guests   [][]guest
	hands    []hand
	est      []estimate // by class
	viable   [][]int    // by class: the ways that work where the search has come to
	held     [][][]int  // by depth: lists for viable
	order    []int      // in which chains get their ways
	quota    int        // nodes this run may still open
	halted   bool
	bound    int // least bound of the nodes left open by halting
	near     *near
	users    []int // chosen chains that use each phase
	waiting  []int // chains without a way in each class
	detour   int   // least cost of using phases that nothing uses yet
	kept     []int // chains that near fixes, the last one first
	spare    [][]child
	patience int  // nodes left for parting what the last chain meets, on a dive
	hasty    bool // this run is a dive
	atRoot   bool // rootBound

	weight   []int // of each instant, see weights
	families []crowd
	queues   []queue // by family; the last one is that for hands
	extra    []int   // by family
	nothing  []int   // likewise: zeros
	sorter   sorter
	picker   picker
}

func newSearch(h *solver, c *course) *search {
	n := len(c.fires)
	s := &search{course: c, solver: h, order: c.longest}
	for i := range c.Chains {
		s.at = append(s.at, n)
		n += len(c.Chains[i].Tasks)
	}
	s.system = newSystem(n)
	s.chosen = make([]*way, len(c.Chains))
	s.guests = make([][]guest, len(c.cells))
	s.est, s.viable = make([]estimate, len(c.sample)), make([][]int, len(c.sample))
	for k := range s.viable {
		s.viable[k] = c.store.cells.take(len(c.ways[k]))
		for i := range c.ways[k] {
			s.viable[k] = append(s.viable[k], i)
		}
	}
	for v := range s.high {
		s.high[v] = never
	}
	s.users, s.waiting = make([]int, len(c.fires)), make([]int, len(c.sample))
	for _, class := range c.class {
		s.waiting[class]++
	}
	s.weight = s.weights()
	s.families = c.crowds()
	s.queues = make([]queue, len(s.families)+1)
	s.extra, s.nothing = make([]int, len(s.families)), make([]int, len(s.families))
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
	s.atRoot = true
	defer func() { s.undo(m); s.hands, s.atRoot = s.hands[:0], false }()
	if !s.start() {
		return value{}, false
	}
	return s.assess()
}
