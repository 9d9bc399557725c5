package sequence

// A way is how a chain goes through the day under one sequence of fires: the
// mode and the phases of each task. With it chosen, all the chain asks for is a
// list of links.
type way struct {
	stays []stay
	uses  uint   // a bit for each phase
	links []link // local numbers: phase begins 0..K-1, then the tasks
	cost  int    // of the modes
	gap   Gap
	out   bool // the chain is left out, on a partial day
	asked int8
	reach []int // see measure
}

// A stay is one task in one mode, from phase first to phase last (-1: oven).
type stay struct {
	mode, minutes, area int
	first, last         int
	cells               []int  // what it takes room in
	holes               []Span // where its end may not lie
	latest              int    // its end lies at this or a smaller u
}

// A link says y[to] >= y[from] + by.
type link struct {
	from, to, by int
	tie          tie
}

// tie says where a link comes from.
type tie struct {
	kind bond
	cell int // of a bondZone
}

type bond int8

const (
	bondNext   bond = iota // least lag: from the next task
	bondBefore             // greatest lag: from the task before
	bondOff                // off before the fire changes: from the next phase
	bondNeed               // the fire burns for a task: from the task
	bondPhase              // one fire after another: from the next phase
	bondZone               // room
	bondHands              // hands
	bondOrder              // identical batches
	bondIdle               // no fire for nothing: from the phase
)

// A cell is room that tasks share: a zone while one phase burns, or a zone of
// the oven all day (phase -1).
type cell struct{ phase, zone, capacity int }

// newWays lists the ways of all classes under a course; false if some class has
// none.
func (c *course) newWays() bool {
	c.ways = c.store.lists.take(len(c.sample))
	for k := range c.sample {
		l := lister{course: c, chain: &c.Chains[c.sample[k]], stages: c.stages[k], stays: c.store.path[:0], found: c.store.found[:0]}
		l.extend(0, 0)
		c.store.path, c.store.found = l.stays, l.found
		if len(l.found) == 0 {
			return false
		}
		if c.partial {
			l.found = append(l.found, leftOut(&l))
		}
		c.ways = append(c.ways, c.store.ways.keep(l.found))
	}
	return true
}

// lister lists the ways of one class.
type lister struct {
	*course
	chain  *Chain
	stages [][][]stage
	stays  []stay // so far
	found  []way
}

// extend lists the ways that begin with the stays so far, the last one of them
// in mode before and phase from.
func (l *lister) extend(before, from int) {
	j := len(l.stays)
	if j == len(l.stages) {
		l.found = append(l.found, l.finish())
		return
	}
	list := l.stages[j][before]
	for i := range list {
		st := &list[i]
		s := stay{mode: st.mode, minutes: st.minutes, area: st.area, first: -1, last: -1, holes: st.holes, latest: l.Earliest - st.minutes}
		if st.oven >= 0 {
			s.cells = append(l.store.cells.take(1), st.oven)
			l.with(s, from)
			continue
		}
		for a := from; a < len(l.fires); a++ {
			s.first, s.cells = a, l.store.cells.take(len(l.fires)-a)
			for b := a; b < len(l.fires) && st.zones[l.fires[b]] >= 0; b++ {
				s.last, s.cells = b, append(s.cells, l.base[b]+st.zones[l.fires[b]])
				l.with(s, b)
			}
		}
	}
}

// with goes on after one more stay.
func (l *lister) with(s stay, from int) {
	l.stays = append(l.stays, s)
	l.extend(s.mode, from)
	l.stays = l.stays[:len(l.stays)-1]
}

// finish works out the links of a complete way.
func (l *lister) finish() way {
	K, last := len(l.fires), len(l.stays)-1
	w := way{stays: l.store.stays.keep(l.stays)}
	links := l.store.scratch[:0]
	for j := range w.stays {
		s, t, x := &w.stays[j], &l.chain.Tasks[j], K+j
		w.cost += t.Modes[s.mode].Cost
		if j == last {
			w.gap = t.Modes[s.mode].Gap
			if w.gap.Max >= 0 {
				s.latest = min(s.latest, l.chain.Serve+w.gap.Max)
			}
		} else {
			d := w.stays[j+1].minutes
			links = append(links, link{x + 1, x, d + t.LagMin, tie{kind: bondNext}})
			if t.LagMax >= 0 {
				links = append(links, link{x, x + 1, -d - t.LagMax, tie{kind: bondBefore}})
			}
		}
		if s.first >= 0 {
			links = l.burning(links, s, x)
			w.uses |= 1<<(s.last+1) - 1<<s.first
		}
	}
	w.links, l.store.scratch = l.store.links.keep(links), links
	return w
}

// leftOut is the way of a chain that is not cooked at all: no room, no hands, no
// fire.
func leftOut(l *lister) way {
	stays := l.store.stays.take(len(l.stages))
	for range l.stages {
		stays = append(stays, stay{first: -1, last: -1, latest: never})
	}
	return way{stays: stays, cost: outCost, gap: Gap{Max: NoLimit}, out: true}
}

// outCost of a chain left out is more than that of any holds.
const outCost = 1_000_000

// burning appends the links between the end x of a stay and its phases.
func (c *course) burning(links []link, s *stay, x int) []link {
	links = append(links, link{x, s.first, s.minutes, tie{kind: bondNeed}})
	if s.last+1 < len(c.fires) {
		links = append(links, link{s.last + 1, x, c.change[s.last], tie{kind: bondOff}})
	}
	if s.first < s.last { // strictly inside both, so that nothing rides by touching
		links = append(links,
			link{s.first + 1, x, c.change[s.first] + 1 - s.minutes, tie{kind: bondOff}},
			link{x, s.last, 1, tie{kind: bondNeed}})
	}
	return links
}
