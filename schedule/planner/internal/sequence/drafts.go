package sequence

import "slices"

// This file throws most sequences of fires out before anything is laid out for them:
// those in which some task has no place or the fires come in the wrong order for
// somebody, in which one is of no use, or of which even the least that all must cost is
// too much. What it says of the others is a bound.

// draft is a sequence of fires that may be possible, and a bound of its plans.
type draft struct {
	fires []int
	bound int
}

// drafts are the sequences of up to d.phases fires with possible changes that may be
// possible, those of the least bound first and of these the shortest.
func (h *solver) drafts(d *day) []draft {
	p := &drafter{day: d}
	p.extend()
	slices.SortStableFunc(p.found, func(a, b draft) int {
		if a.bound != b.bound {
			return a.bound - b.bound
		}
		return len(a.fires) - len(b.fires)
	})
	return p.found
}

// drafter goes through all sequences.
type drafter struct {
	*day
	found     []draft
	fires     []int
	change    [phaseLimit]int
	low, high [phaseLimit]int // of the begin of each phase
	holes     [phaseLimit][]Span
	users     uint            // phases that something may cook in
	detour    [phaseLimit]int // what a task must cost more at the least that uses the phase
	moved     bool
}

// extend judges the sequence so far and all that begin with it.
func (p *drafter) extend() {
	if bound, ok := p.judge(); ok {
		p.found = append(p.found, draft{slices.Clone(p.fires), bound})
	}
	n := len(p.fires)
	if n == p.phases {
		return
	}
	for f := range p.Fires {
		if n > 0 && (p.fires[n-1] == f || p.Change[p.fires[n-1]][f] < 0) || p.IdleMost > 0 && !p.used[f] { // nothing would be on it
			continue
		}
		if n > 0 {
			p.change[n-1] = p.Change[p.fires[n-1]][f]
		}
		p.fires = append(p.fires, f)
		p.extend()
		p.fires = p.fires[:n]
	}
}

// judge is a bound of the plans under a sequence; false: there are none.
func (p *drafter) judge() (bound int, ok bool) {
	for class := range p.sample {
		for j := range p.places[class] {
			if at := p.places[class][j]; !at[len(p.Fires)] && !p.has(at) {
				return 0, false
			}
		}
	}
	if !p.reset() {
		return 0, false
	}
	for p.moved = true; p.moved; {
		p.moved, p.users, bound = false, 0, 0
		for k := range p.fires {
			p.detour[k] = never
		}
		for class := range p.sample {
			cost, ok := p.class(class)
			if !ok || !p.fits() {
				return 0, false
			}
			bound += cost * p.size[class]
		}
	}
	if p.IdleMost > 0 && p.users != 1<<len(p.fires)-1 {
		return 0, false
	}
	if n := len(p.fires); n > 0 {
		bound += p.changes(p.fires) + p.BurnCost*(p.low[0]+p.Fires[p.fires[0]].Setup)
	}
	if p.IdleMost > 0 { // something uses each of them
		bound += slices.Max(append(p.detour[:len(p.fires)], 0))
	}
	return bound, true
}

// has says whether one of the fires is marked.
func (p *drafter) has(marked []bool) bool {
	for _, f := range p.fires {
		if marked[f] {
			return true
		}
	}
	return false
}

// reset leaves the phases all the day.
func (p *drafter) reset() bool {
	for k := range p.fires {
		p.low[k], p.high[k], p.holes[k] = 0, p.Earliest, p.holesAt(p.fires, k)
	}
	if len(p.fires) > 0 {
		p.high[0] -= p.Fires[p.fires[0]].Setup
	}
	p.pass()
	return p.fits()
}

// fits says whether no phase must begin before it can.
func (p *drafter) fits() bool {
	for k := range p.fires {
		if p.low[k] > p.high[k] {
			return false
		}
	}
	return true
}

// pass carries bounds from phase to phase.
func (p *drafter) pass() {
	n := len(p.fires)
	for k := n - 1; k >= 0; k-- {
		if k+1 < n {
			p.low[k] = max(p.low[k], p.low[k+1]+p.change[k])
		}
		p.low[k] = lift(p.holes[k], p.low[k])
	}
	for k := range n {
		if k > 0 {
			p.high[k] = min(p.high[k], p.high[k-1]-p.change[k-1])
		}
		p.high[k] = sink(p.holes[k], p.high[k])
	}
}

// class draws what follows from the chains of a class, task by task; false: one has no
// place in time. cost is the least of its modes.
func (p *drafter) class(class int) (cost int, ok bool) {
	ch := &p.Chains[p.sample[class]]
	for _, at := range p.windows[class] {
		l := p.look(at, ch.HoldCost)
		if l.cost == never {
			return 0, false
		}
		cost += l.cost
		p.users |= l.users
		for k := range p.fires {
			if l.using[k] < never {
				p.detour[k] = min(p.detour[k], l.using[k]-l.cost)
			}
		}
		if at[len(p.Fires)].least < never { // or it is in the oven
			continue
		}
		if l.need > p.low[l.first] {
			p.low[l.first], p.moved = l.need, true
		}
		if next := l.last + 1; next < len(p.fires) && l.late < p.high[next] {
			p.high[next], p.moved = l.late, true
		}
		if p.moved {
			p.pass()
		}
	}
	return cost, true
}

// looked is what is known of a task under the sequence: the first phase that it may
// begin in and the last that it may end in, what the first needs at the least, by when the
// one after the last must have begun, the phases that it may use, and its least cost.
type looked struct {
	first, last, need, late int
	users                   uint
	cost                    int
	using                   [phaseLimit]int // the least cost where it uses a phase
}

// look tries a task in each stretch of phases.
func (p *drafter) look(at []window, holdCost int) looked {
	n := len(p.fires)
	l := looked{first: n, last: -1, need: never, late: -1, cost: never}
	if oven := &at[len(p.Fires)]; oven.least < never {
		l.cost = oven.price(oven.least, holdCost)
	}
	for k := range n {
		l.using[k] = never
	}
	for a, f := range p.fires {
		w := &at[f]
		if w.least == never || w.start > p.high[a] {
			continue
		}
		for b := a; b < n && at[p.fires[b]].least < never; b++ {
			late, end := never, w.least
			if b+1 < n {
				late = at[p.fires[b]].most - p.change[b]
				if p.low[b+1] > late {
					continue
				}
				end = max(end, p.low[b+1]+p.change[b])
			}
			l.first, l.last = min(l.first, a), max(l.last, b)
			l.need, l.late = min(l.need, w.start), max(l.late, late)
			l.users |= 1<<(b+1) - 1<<a
			cost := w.price(end, holdCost)
			l.cost = min(l.cost, cost)
			for k := a; k <= b; k++ {
				l.using[k] = min(l.using[k], cost)
			}
		}
	}
	return l
}

// price is the least that the task costs where it ends at an instant or sooner before it is served.
func (w *window) price(end, holdCost int) int {
	return w.cost + holdCost*max(0, end-w.free)
}
