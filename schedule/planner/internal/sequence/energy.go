package sequence

// This file bounds what tasks that crowd into the same room, or that need the
// same hands, must cost together. Taken one by one each may look as if it could
// end just in time; together they must queue.

// applicant is a last task in a crowd.
type applicant struct {
	front, minutes, energy int // least start, least length, least area x minutes
	end, area              int // least end, least area
	due, weight            int // start up to which holding is free
}

func sum(v []int) (s int) {
	for _, x := range v {
		s += x
	}
	return s
}

// crowding is what the holds must cost beyond their plain bounds: for each
// family of zones, and for the hands.
func (s *search) crowding() (rooms []int, hands int) {
	if s.coarse() {
		return s.nothing, 0
	}
	for i := range s.families {
		k := &s.families[i]
		q := &s.queues[i]
		for j, c := range k.chains {
			q.put(j, s.applicant(c))
		}
		s.extra[i] = s.sorter.extra(q, k)
	}
	q, n := &s.queues[len(s.families)], 0
	for _, c := range s.dearest {
		ch := &s.Chains[c]
		if h := ch.Tasks[len(ch.Tasks)-1].StartHands; h > 0 {
			a := s.applicant(c)
			a.end, a.minutes, a.energy, a.area = a.front-h, h, h, 1
			q.put(n, a)
			n++
		}
	}
	return s.extra, s.sorter.extra(q, &onePair)
}

// coarse says that crowding is not worth its time: near a plan hardly anything is
// left to queue, and without a plan no bound closes a node.
func (s *search) coarse() bool {
	return s.near != nil || s.solver.best.cost == never && !s.atRoot
}

// queue is the members of a crowd and what they were found to cost together.
type queue struct {
	members []applicant
	cost    int
	stale   bool
}

// put sets member i; the members stay the same chains in the same order.
func (q *queue) put(i int, a applicant) {
	switch {
	case i == len(q.members):
		q.members, q.stale = append(q.members, a), true
	case q.members[i] != a:
		q.members[i], q.stale = a, true
	}
}

// extra is queueCost, worked out again only where a member has changed.
func (s *sorter) extra(q *queue, k *crowd) int {
	if q.stale {
		q.cost, q.stale = s.queueCost(q.members, k), false
	}
	return q.cost
}

// onePair of hands is a zone with room for one.
var onePair = crowd{phases: [][]int{{1}}, most: 1}

// applicant says what is known of the last task of a chain.
func (s *search) applicant(c int) applicant {
	ch := &s.Chains[c]
	if w := s.chosen[c]; w != nil {
		return ch.applicant(w, s.low[s.at[c]+len(w.stays)-1])
	}
	return s.est[s.class[c]].last
}

// applicant is the last task of a chain in a way, where it ends at x or earlier.
func (ch *Chain) applicant(w *way, x int) applicant {
	st := &w.stays[len(w.stays)-1]
	return applicant{x + st.minutes, st.minutes, st.minutes * st.area, x, st.area, ch.Serve + w.gap.Ideal + st.minutes, ch.HoldCost}
}

// join widens an applicant by another way of the same chain.
func (a *applicant) join(b applicant) {
	a.front, a.minutes, a.energy = min(a.front, b.front), min(a.minutes, b.minutes), min(a.energy, b.energy)
	a.end, a.area, a.due = min(a.end, b.end), min(a.area, b.area), max(a.due, b.due)
}

// sorter holds the members of a queue so far, each list sorted.
type sorter struct {
	fronts, energies, areas, dues []int
	release, shortest             int
}

// queueCost is the least cost of the queue, the dearest member first, beyond
// what its members cost by themselves. It adds up layers of weight: of all
// members of at least a weight, the k-th smallest start is at least the release
// and the work of the k smallest ones, and at least the k-th smallest of their
// own; against that stands the k-th smallest start that is free.
func (s *sorter) queueCost(q []applicant, k *crowd) int {
	s.fronts, s.energies, s.areas, s.dues = s.fronts[:0], s.energies[:0], s.areas[:0], s.dues[:0]
	s.release, s.shortest = never, never
	plain, cost := 0, 0
	for i := range q {
		a := &q[i]
		plain += a.weight * max(0, a.front-a.due)
		s.release, s.shortest = min(s.release, a.end), min(s.shortest, a.minutes)
		s.fronts = insert(s.fronts, a.front)
		s.energies = insert(s.energies, a.energy)
		s.areas = insert(s.areas, a.area)
		s.dues = insert(s.dues, a.due)
		next := 0
		if i+1 < len(q) {
			next = q[i+1].weight
		}
		if next < a.weight {
			cost += (a.weight - next) * s.layer(k)
		}
	}
	return max(0, cost-plain)
}

// layer is the sum of minutes that the members so far start before they are
// free to.
func (s *sorter) layer(k *crowd) int {
	together := k.together(s.areas)
	work, minutes, at, n := 0, 0, s.release, 0
	for i := range s.fronts {
		if work += s.energies[i]; n == 0 {
			at += s.shortest
			n = together
		}
		n--
		front := max(s.fronts[i], at)
		if k.most > 0 {
			front = max(front, s.release+(work+k.most-1)/k.most)
		}
		minutes += max(0, front-s.dues[i])
	}
	return minutes
}

// insert keeps a short list sorted.
func insert(v []int, x int) []int {
	v = append(v, x)
	i := len(v) - 1
	for ; i > 0 && v[i-1] > x; i-- {
		v[i] = v[i-1]
	}
	v[i] = x
	return v
}
