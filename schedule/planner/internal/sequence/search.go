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
	atRoot   bool // enterRoot

	weight   []int // of each instant, see weights
	families []crowd
	queues   []queue // by family; the last one is that for hands
	extra    []int   // by family
	nothing  []int   // likewise: zeros
	sorter   sorter
	picker   picker
}

// newSearch is one in the room of another that was thrown out, if there is one.
func newSearch(h *solver, c *course) *search {
	s := c.store.search
	if c.store.search = nil; s == nil {
		s = new(search)
	}
	s.course, s.solver, s.order, s.near = c, h, c.longest, nil
	n := len(c.fires)
	s.at = s.at[:0]
	for i := range c.Chains {
		s.at = append(s.at, n)
		n += len(c.Chains[i].Tasks)
	}
	s.system = newSystem(s.system, n)
	s.chosen = sized(s.chosen, len(c.Chains))
	s.guests, s.hands, s.kept = emptied(s.guests, len(c.cells)), s.hands[:0], s.kept[:0]
	s.allViable()
	for v := range s.high {
		s.high[v] = never
	}
	s.users, s.waiting = sized(s.users, len(c.fires)), sized(s.waiting, len(c.sample))
	for _, class := range c.class {
		s.waiting[class]++
	}
	s.weigh()
	s.families = c.crowds(s.families[:0])
	for len(s.queues) <= len(s.families) {
		s.queues = append(s.queues, queue{})
	}
	for i := range s.queues {
		s.queues[i] = queue{members: s.queues[i].members[:0]}
	}
	s.extra, s.nothing = sized(s.extra, len(s.families)), sized(s.nothing, len(s.families))
	return s
}

// allViable says of all ways that they work, and of all classes that nothing is known.
func (s *search) allViable() {
	s.est, s.viable = s.est[:0], s.viable[:0]
	for k := range s.sample {
		n, cells := len(s.fires), &s.store.cells
		s.est = append(s.est, estimate{
			need: cells.take(n), useCost: cells.take(n), useNeed: cells.take(n), key: cells.take(2 * n), alive: cells.take(len(s.ways[k])),
		})
		viable := cells.take(len(s.ways[k]))
		for i := range s.ways[k] {
			viable = append(viable, i)
		}
		s.viable = append(s.viable, viable)
	}
	s.held = s.held[:0]
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

// enterRoot leaves the system as it stands before any choice, and says its bound; false: there is no plan.
func (s *search) enterRoot() (value, bool) {
	s.atRoot = true
	defer func() { s.atRoot = false }()
	if !s.start() {
		return value{}, false
	}
	return s.assess()
}

// leaveRoot takes back all that was done at the root.
func (s *search) leaveRoot() {
	s.undo(mark{})
	s.hands = s.hands[:0]
}

// taste searches with at most quota nodes from the root, as it was entered, and leaves it; what it returns is as of run.
func (s *search) taste(quota int) (bound int) {
	s.quota, s.halted, s.bound, s.order, s.near = quota, false, never, s.longest, nil
	s.open(0)
	s.leaveRoot()
	return s.bound
}
