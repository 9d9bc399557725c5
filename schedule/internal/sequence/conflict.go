package sequence

// conflict looks at the least solution for tasks that are too many for their
// room and for hands that are needed twice. Of all conflicts it takes the one
// whose cheapest way out costs most. The way outs become links in children.
// dead: some conflict has no way out. forced: there is exactly one way out.
func (s *search) conflict(children *[]child) (found, dead, forced bool) {
	p := &s.picker
	p.search, p.best, p.children, p.dead, p.forced = s, -1, children, false, false
	for i := range s.guests {
		if p.room(i); p.dead {
			return true, true, false
		}
		if p.forced {
			return true, false, true
		}
	}
	if p.handsTwice(); p.dead {
		return true, true, false
	}
	return p.best >= 0, false, p.forced
}

// picker keeps the most pressing conflict.
type picker struct {
	*search
	children     *[]child
	best         int // its score, -1: none yet
	dead, forced bool
	set          []guest
	outs         []link
	starts, ends []int // of what is looked at
}

// room offers, for each end of a task in the cell, the smallest set that is
// present there and too large.
func (p *picker) room(cell int) {
	g, capacity := p.guests[cell], p.cells[cell].capacity
	total := 0
	for i := range g {
		total += g[i].area
	}
	if total <= capacity {
		return
	}
	p.span(g)
	for _, at := range p.ends {
		load := 0
		for j, end := range p.ends {
			if end <= at && at < p.starts[j] {
				load += g[j].area
			}
		}
		if load <= capacity {
			continue
		}
		p.set = p.set[:0]
		for j, end := range p.ends {
			if end <= at && at < p.starts[j] {
				p.set = append(p.set, g[j])
			}
		}
		p.part(cell)
		if p.offer(); p.dead || p.forced {
			return
		}
	}
}

// span lists when each of some tasks starts and ends.
func (p *picker) span(g []guest) {
	p.starts, p.ends = p.starts[:0], p.ends[:0]
	for i := range g {
		x := p.low[g[i].v]
		p.starts, p.ends = append(p.starts, x+g[i].minutes), append(p.ends, x)
	}
}

// part makes outs the ways to part the smallest set in the cell that is too
// large for it.
func (p *picker) part(cell int) {
	largestFirst(p.set)
	n := 0
	for sum := 0; sum <= p.cells[cell].capacity; n++ {
		sum += p.set[n].area
	}
	p.outs = p.outs[:0]
	for a := range p.set[:n] {
		for b := range p.set[:n] {
			if a != b {
				p.outs = append(p.outs, link{p.set[a].v, p.set[b].v, p.set[a].minutes, tie{bondZone, cell}})
			}
		}
	}
}

// largestFirst sorts a small set by area, stable.
func largestFirst(g []guest) {
	for i := 1; i < len(g); i++ {
		for j := i; j > 0 && g[j].area > g[j-1].area; j-- {
			g[j], g[j-1] = g[j-1], g[j]
		}
	}
}

// handsTwice offers each pair of overlapping stretches of hands.
func (p *picker) handsTwice() {
	p.starts, p.ends = p.starts[:0], p.ends[:0]
	for i := range p.hands {
		u := p.low[p.hands[i].v] + p.hands[i].off
		p.starts, p.ends = append(p.starts, u), append(p.ends, u-p.hands[i].minutes)
	}
	for i, start := range p.starts {
		end := p.ends[i]
		for j := i + 1; j < len(p.starts); j++ {
			if end >= p.starts[j] || p.ends[j] >= start {
				continue
			}
			a, b := &p.hands[i], &p.hands[j]
			p.outs = append(p.outs[:0],
				link{a.v, b.v, a.off - b.off + b.minutes, tie{kind: bondHands}},
				link{b.v, a.v, b.off - a.off + a.minutes, tie{kind: bondHands}})
			if p.offer(); p.dead || p.forced {
				return
			}
		}
	}
}

// offer weighs the conflict whose ways out are in outs.
func (p *picker) offer() {
	n, score := 0, never
	for _, l := range p.outs {
		shift := p.low[l.from] + l.by - p.low[l.to]
		if p.low[l.to]+shift > p.high[l.to] || l.from == l.to && l.by > 0 || !p.near.allows(l) {
			continue
		}
		p.outs[n] = l
		n++
		score = min(score, shift*p.weight(l.to))
	}
	p.outs = p.outs[:n]
	p.dead = n == 0
	if n <= 1 {
		score = never
	}
	if n > 0 && score > p.best {
		p.best, p.forced = score, n == 1
		*p.children = (*p.children)[:0]
		for _, l := range p.outs {
			*p.children = append(*p.children, child{link: l})
		}
	}
}

// weight is a rough cost of moving an instant by a minute.
func (p *picker) weight(v int) int {
	if v < len(p.fires) {
		return p.BurnCost + 1
	}
	for c := len(p.at) - 1; ; c-- {
		if p.at[c] <= v {
			return p.Chains[c].HoldCost + 1
		}
	}
}
