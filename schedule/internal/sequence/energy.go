package sequence

// This file bounds what tasks that crowd into the same room, or that need the
// same hands, must cost together. Taken one by one each may look as if it could
// end just in time; together they must queue.

// crowd is a family of zones and the last tasks that have no choice but to go
// there. A zone family holds all zones that some way of some of its chains
// uses, so chains of different families never meet.
type crowd struct {
	classes []bool  // by class
	chains  []int   // those whose holds cost, the dearest first
	phases  [][]int // capacities of its zones, by phase; the oven in each
	most    int     // the greatest capacity at one time
}

// applicant is a last task in a crowd.
type applicant struct {
	front, minutes, energy int // least start, least length, least area x minutes
	end, area              int // least end, least area
	due, weight            int // start up to which holding is free
}

// crowds parts the classes by the zones their last tasks may use.
func (c *course) crowds() []crowd {
	family := make([]int, len(c.cells))
	for i := range family {
		family[i] = i
	}
	find := func(i int) int {
		for family[i] != i {
			i = family[i]
		}
		return i
	}
	root := func(class int) int {
		last := func(w *way) *stay { return &w.stays[len(w.stays)-1] }
		r := last(&c.ways[class][0]).cells[0]
		for i := range c.ways[class] {
			for _, cell := range last(&c.ways[class][i]).cells {
				family[find(cell)] = find(r)
			}
		}
		return r
	}
	of := make([]int, len(c.ways))
	for class := range c.ways {
		of[class] = root(class)
	}
	var all []crowd
	for i := range c.cells {
		if find(i) != i {
			continue
		}
		k := crowd{classes: make([]bool, len(c.ways)), phases: make([][]int, max(1, len(c.fires)))}
		for class, r := range of {
			k.classes[class] = find(r) == i
		}
		for _, ch := range c.dearest {
			if k.classes[c.class[ch]] {
				k.chains = append(k.chains, ch)
			}
		}
		for j, cell := range c.cells {
			if find(j) != i {
				continue
			}
			for ph := range k.phases {
				if cell.phase < 0 || cell.phase == ph {
					k.phases[ph] = append(k.phases[ph], cell.capacity)
				}
			}
		}
		for _, caps := range k.phases {
			k.most = max(k.most, sum(caps))
		}
		if len(k.chains) > 1 {
			all = append(all, k)
		}
	}
	return all
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
	return s.near != nil || s.hunt.best.cost == never && !s.atRoot
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
		st := &w.stays[len(w.stays)-1]
		x := s.low[s.at[c]+len(w.stays)-1]
		return applicant{x + st.minutes, st.minutes, st.minutes * st.area, x, st.area, ch.Serve + w.gap.Ideal + st.minutes, ch.HoldCost}
	}
	return s.est[s.class[c]].last
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

// together is how many tasks can be there at one time at most.
func (k *crowd) together(areas []int) int {
	most := 1
	for _, zones := range k.phases {
		n := 0
		for _, room := range zones {
			for _, a := range areas {
				if room -= a; room < 0 {
					break
				}
				n++
			}
		}
		most = max(most, n)
	}
	return most
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
