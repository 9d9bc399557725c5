package sequence

import "slices"

// This file looks for better plans near the best one: it frees a few chains,
// keeps the ways of the others and their order among themselves, and solves what
// is free exactly. What it frees: a chain with those it meets most closely, all
// in a zone, all in a phase; and it tries to move the plan to another sequence
// of fires, freeing only what cannot follow.

// quotaFor is the number of nodes spent on freeing n chains.
func quotaFor(n int) int { return 60 + 40*n }

// rounds is how far improve has come with the plan.
type rounds struct {
	size   int     // chains that are freed; smaller sets no longer help
	turn   int     // neighbourhoods of this round done
	before value   // of the plan at the beginning of the round
	tried  [][]int // sets of chains freed in vain
}

// improve goes on, from where it was left, until the nodes are spent or nothing
// it knows helps. A round without any gain is followed by one with larger sets,
// up to most chains.
func (h *solver) improve(list []*candidate, until, most int) {
	for h.plan != nil && !h.spent(until) {
		if h.size == 0 {
			h.rounds = rounds{size: 2, before: h.best}
		}
		if h.size > max(2, min(most, len(h.plan.Chains))) {
			return
		}
		last := h.plan
		if !h.neighbourhood(list, until) {
			if !h.best.less(h.before) {
				h.size++
			}
			h.turn, h.before = 0, h.best
			continue
		}
		if h.turn++; h.plan != last {
			h.tried = h.tried[:0]
		}
	}
}

// neighbourhood searches the one whose turn it is; false: the round is over.
func (h *solver) neighbourhood(list []*candidate, until int) bool {
	p, i := h.plan, h.turn
	if i < len(p.Chains) {
		h.free(list, p.around(i, h.size), until)
		return true
	}
	i -= len(p.Chains)
	if i < len(p.cells) {
		h.free(list, p.within(h.size, func(s *stay) bool { return slices.Contains(s.cells, i) }), until)
		return true
	}
	i -= len(p.cells)
	if i < len(p.fires) {
		h.free(list, p.within(2*h.size, func(s *stay) bool { return s.first <= i && i <= s.last }), until)
		return true
	}
	i -= len(p.fires)
	if i < len(list) {
		h.move(list[i], until)
		return true
	}
	return false
}

// spent says that no more nodes may be opened up to a number of them.
func (h *solver) spent(until int) bool {
	return h.err != nil || h.nodes >= min(until, h.budget) || h.done()
}

// done says that the plan is good enough: any at all, if that was asked for, and
// a partial day's once it leaves nobody out.
func (h *solver) done() bool {
	return h.plan != nil && (h.any || h.plan.partial && len(h.plan.out(1)) == 0)
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

// free solves the best plan again with some chains free, and with some of those
// that it leaves out.
func (h *solver) free(list []*candidate, chains []int, until int) {
	chains = append(chains, h.plan.out(2)...)
	slices.Sort(chains)
	chains = slices.Compact(chains)
	if len(chains) == 0 || slices.ContainsFunc(h.tried, func(t []int) bool { return slices.Equal(t, chains) }) || !h.count() {
		return
	}
	h.tried = append(h.tried, chains)
	i := slices.IndexFunc(list, func(c *candidate) bool { return c.search.course == h.plan.course })
	if i < 0 {
		return
	}
	n := h.plan.near(list[i].search)
	for _, c := range chains {
		n.release(list[i].search, c)
	}
	list[i].search.run(min(quotaFor(len(chains)), until-h.nodes), h.plan.longest, n)
}

// move solves the best plan again under another sequence of fires. Chains that
// cannot do there what they do now are free.
func (h *solver) move(to *candidate, until int) {
	if to.search.course == h.plan.course || !to.root.less(h.best) || !h.count() {
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
// another course, nil if there is none. A fire may burn twice a day: under the same
// sequence the phases must be the same too.
func (c *course) counterpart(class int, w *way, of *course) *way {
	same := slices.Equal(c.fires, of.fires)
	alike := func(a, b stay) bool {
		if same {
			return a.mode == b.mode && a.first == b.first && a.last == b.last
		}
		return a.mode == b.mode && slices.Equal(c.burns(&a), of.burns(&b))
	}
	for i := range c.ways[class] {
		if o := &c.ways[class][i]; slices.EqualFunc(o.stays, w.stays, alike) {
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
