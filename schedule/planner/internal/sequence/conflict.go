package sequence

// conflict looks at the least solution for tasks that are too many for their
// room and for hands that are needed twice. A conflict with one way out is parted
// at once and all that follows is drawn: forced. Of the others it takes the one
// whose cheapest way out costs most; its ways out are in children. dead: some
// conflict has no way out.
func (s *search) conflict(children *[]child) (found, forced, dead bool) {
	p := &s.picker
	*children = (*children)[:0]
	p.search, p.best, p.children, p.forced = s, -1, children, false
	for i := range s.guests {
		for p.room(i) {
			if !p.force() {
				return true, p.forced, true
			}
		}
	}
	for p.handsTwice() {
		if !p.force() {
			return true, p.forced, true
		}
	}
	if p.best < 0 && !p.forced {
		return p.idling()
	}
	return p.best >= 0, p.forced, false
}

// picker keeps the most pressing conflict.
type picker struct {
	*search
	children     *[]child
	best         int // its score, -1: none yet
	forced       bool
	set          []guest
	outs         []link // of the conflict that is looked at
	score        int    // its own, so far
	starts, ends []int  // of what is looked at
}

// force takes the only way out of the conflict just looked at; false: it has
// none, or no solution is left. What was found before may be stale then: no other
// conflict is worth keeping.
func (p *picker) force() bool {
	p.forced, p.best = true, never
	return len(p.outs) == 1 && p.add(p.outs[0]) && p.settle()
}

// room looks, for each end of a task in the cell, at the smallest set that is
// present there and too large. It says whether one has no or one way out.
func (p *picker) room(cell int) bool {
	g, capacity := p.guests[cell], p.cells[cell].capacity
	total := 0
	for i := range g {
		total += g[i].area
	}
	if total <= capacity {
		return false
	}
	p.span(g)
	starts, ends := p.starts, p.ends[:len(p.starts)]
	for _, at := range ends {
		load := 0
		for j, start := range starts {
			if ends[j] <= at && at < start {
				load += g[j].area
			}
		}
		if load <= capacity {
			continue
		}
		p.set = p.set[:0]
		for j, start := range starts {
			if ends[j] <= at && at < start {
				p.set = append(p.set, g[j])
			}
		}
		if p.part(cell) {
			return true
		}
	}
	return false
}

// span lists when each of some tasks starts and ends.
func (p *picker) span(g []guest) {
	p.starts, p.ends = p.starts[:0], p.ends[:0]
	for i := range g {
		x := p.low[g[i].v]
		p.starts, p.ends = append(p.starts, x+g[i].minutes), append(p.ends, x)
	}
}

// part looks at the ways to part the smallest set in the cell that is too large
// for it.
func (p *picker) part(cell int) bool {
	largestFirst(p.set)
	n := 0
	for sum := 0; sum <= p.cells[cell].capacity; n++ {
		sum += p.set[n].area
	}
	p.outs, p.score = p.outs[:0], never
	for a := range p.set[:n] {
		for b := range p.set[:n] {
			if a != b && !p.offer(link{p.set[a].v, p.set[b].v, p.set[a].minutes, tie{bondZone, cell}}) {
				return false
			}
		}
	}
	return p.weigh()
}

// largestFirst sorts a small set by area, stable.
func largestFirst(g []guest) {
	for i := 1; i < len(g); i++ {
		for j := i; j > 0 && g[j].area > g[j-1].area; j-- {
			g[j], g[j-1] = g[j-1], g[j]
		}
	}
}

// handsTwice looks at each pair of overlapping stretches of hands. It says
// whether one has no or one way out.
func (p *picker) handsTwice() bool {
	p.starts, p.ends = p.starts[:0], p.ends[:0]
	for i := range p.hands {
		u := p.low[p.hands[i].v] + p.hands[i].off
		p.starts, p.ends = append(p.starts, u), append(p.ends, u-p.hands[i].minutes)
	}
	starts, ends := p.starts, p.ends[:len(p.starts)]
	for i, start := range starts {
		end := ends[i]
		for j := i + 1; j < len(starts); j++ {
			if end < starts[j] && ends[j] < start && p.handsPair(&p.hands[i], &p.hands[j]) {
				return true
			}
		}
	}
	return false
}

func (p *picker) handsPair(a, b *hand) bool {
	p.outs, p.score = p.outs[:0], never
	return p.offer(link{a.v, b.v, a.off - b.off + b.minutes, tie{kind: bondHands}}) &&
		p.offer(link{b.v, a.v, b.off - a.off + a.minutes, tie{kind: bondHands}}) &&
		p.weigh()
}

// offer takes note of a way out if it is one; false: the conflict has a choice
// and is not the most pressing one, whatever its other ways out.
func (p *picker) offer(l link) bool {
	y := p.low[l.from] + l.by
	if y > p.high[l.to] || l.from == l.to && l.by > 0 || !p.near.allows(l) {
		return true
	}
	p.outs = append(p.outs, l)
	p.score = min(p.score, (y-p.low[l.to])*p.weight[l.to])
	return len(p.outs) == 1 || p.score > p.best
}

// weigh compares the conflict with the most pressing one. It says whether it has
// no or one way out.
func (p *picker) weigh() bool {
	if len(p.outs) <= 1 {
		return true
	}
	p.best = p.score
	*p.children = (*p.children)[:0]
	for _, l := range p.outs {
		*p.children = append(*p.children, child{link: l})
	}
	return false
}

// weights are a rough cost of moving each instant by a minute.
func (s *search) weigh() {
	s.weight = sized(s.weight, len(s.low))
	w := s.weight
	for k := range s.fires {
		w[k] = s.BurnCost + 1
	}
	for c, at := range s.at {
		for j := range s.Chains[c].Tasks {
			w[at+j] = s.Chains[c].HoldCost + 1
		}
	}
}
