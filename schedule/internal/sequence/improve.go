package sequence

import "slices"

// This file looks for better plans near the best one: it frees a few chains,
// keeps the ways of the others and their order among themselves, and solves what
// is free exactly. What it frees: a chain with those it meets most closely, all
// in a zone, all in a phase; and it tries to move the plan to another sequence
// of fires, freeing only what cannot follow.

// quotaFor is the number of nodes spent on freeing n chains.
func quotaFor(n int) int { return 60 + 40*n }

// improve goes on until the nodes are spent or nothing it knows helps.
func (h *hunt) improve(list []*candidate, until int) {
	if h.plan == nil {
		return
	}
	for h.size = max(2, h.size); h.size <= max(2, len(h.plan.Chains)); {
		before, size := h.best, h.size
		for c := range h.plan.Chains {
			h.free(list, h.plan.around(c, size), until)
		}
		for cell := range h.plan.cells {
			h.free(list, h.plan.within(size, func(s *stay) bool { return slices.Contains(s.cells, cell) }), until)
		}
		for k := range h.plan.fires {
			h.free(list, h.plan.within(2*size, func(s *stay) bool { return s.first <= k && k <= s.last }), until)
		}
		for _, c := range list {
			h.move(c, until)
		}
		if h.spent(until) {
			return
		}
		if !h.best.less(before) {
			h.size++
		}
	}
}

// spent says that no more nodes may be opened up to a number of them.
func (h *hunt) spent(until int) bool {
	return h.err != nil || h.nodes >= min(until, h.budget) || h.done()
}

// done says that the plan is good enough: a partial day's, once it leaves nobody
// out.
func (h *hunt) done() bool {
	return h.plan != nil && h.plan.partial && len(h.plan.out(1)) == 0
}

// out returns the first chains that are left out.
func (p *plan) out(most int) []int {
	var all []int
	for c, w := range p.ways {
		if w.out && len(all) < most {
			all = append(all, c)
		}
	}
	return all
}

// free solves the best plan again with some chains free.
func (h *hunt) free(list []*candidate, chains []int, until int) {
	if len(chains) == 0 || h.spent(until) || !h.count() {
		return
	}
	i := slices.IndexFunc(list, func(c *candidate) bool { return c.search.course == h.plan.course })
	if i < 0 {
		return
	}
	n := h.plan.near(list[i].search)
	chains = append(chains, h.plan.out(2)...)
	for _, c := range chains {
		n.release(list[i].search, c)
	}
	list[i].search.run(quotaFor(len(chains)), h.plan.longest, n)
}

// move solves the best plan again under another sequence of fires. Chains that
// cannot do there what they do now are free.
func (h *hunt) move(to *candidate, until int) {
	if h.spent(until) || to.search.course == h.plan.course || !to.root.less(h.best) || !h.count() {
		return
	}
	s := to.search
	n := h.plan.near(s)
	freed := 0
	for c, w := range h.plan.ways {
		n.ways[c] = s.counterpart(s.class[c], w, h.plan.course)
		if n.ways[c] == nil {
			n.release(s, c)
			freed++
		}
	}
	s.run(quotaFor(freed), h.plan.longest, n)
}

// counterpart is the way of a class with the modes and fires of a way under
// another course, nil if there is none.
func (c *course) counterpart(class int, w *way, of *course) *way {
	for i := range c.ways[class] {
		o := &c.ways[class][i]
		if slices.EqualFunc(o.stays, w.stays, func(a, b stay) bool {
			return a.mode == b.mode && slices.Equal(c.burns(&a), of.burns(&b))
		}) {
			return o
		}
	}
	return nil
}

// burns lists the fires over which a stay is.
func (c *course) burns(s *stay) []int {
	if s.first < 0 {
		return nil
	}
	return c.fires[s.first : s.last+1]
}

// near fixes everything of the plan, for a search that may be under another
// course.
func (p *plan) near(s *search) *near {
	n := &near{ways: slices.Clone(p.ways), fixed: make([]bool, len(s.low)), y: make([]int, len(s.low))}
	for c := range p.Chains {
		for j := range p.Chains[c].Tasks {
			n.fixed[s.at[c]+j] = true
			n.y[s.at[c]+j] = p.y[p.at[c]+j]
		}
	}
	return n
}

// release frees a chain.
func (n *near) release(s *search, c int) {
	n.ways[c] = nil
	for j := range s.Chains[c].Tasks {
		n.fixed[s.at[c]+j] = false
	}
}

// around returns a chain and the size-1 chains nearest to it: those that end at
// about the same time, in the same zones before others.
func (p *plan) around(c, size int) []int {
	all := make([]int, len(p.Chains))
	far := make([]int, len(p.Chains))
	for o := range all {
		all[o] = o
		far[o] = p.y[p.last(o)] - p.y[p.last(c)]
		if far[o] < 0 {
			far[o] = -far[o]
		}
		if !p.meet(c, o) {
			far[o] += strangers
		}
	}
	far[c] = -1
	slices.SortStableFunc(all, func(a, b int) int { return far[a] - far[b] })
	return all[:min(size, len(all))]
}

// strangers in other zones count as so many minutes further away.
const strangers = 60

// meet says that two chains use a cell in common.
func (p *plan) meet(a, b int) bool {
	for i := range p.ways[a].stays {
		for _, cell := range p.ways[a].stays[i].cells {
			for j := range p.ways[b].stays {
				if slices.Contains(p.ways[b].stays[j].cells, cell) {
					return true
				}
			}
		}
	}
	return false
}

// within returns the chains with a stay of a kind, the most costly holds first.
func (p *plan) within(most int, is func(*stay) bool) []int {
	var all []int
	for c, w := range p.ways {
		if slices.ContainsFunc(w.stays, func(s stay) bool { return is(&s) }) {
			all = append(all, c)
		}
	}
	cost := func(c int) int { return p.hold(&p.Chains[c], p.ways[c].gap, p.y[p.last(c)]) }
	slices.SortStableFunc(all, func(a, b int) int { return cost(b) - cost(a) })
	return all[:min(most, len(all))]
}
