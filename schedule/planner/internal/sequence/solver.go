package sequence

import (
	"context"
	"slices"
)

// solver is the state shared by all searches of one Solve: the best plan so far,
// the nodes spent.
type solver struct {
	ctx    context.Context
	nodes  int
	budget int
	best   value // of plan; never while there is none
	plan   *plan
	rounds      // of improve
	any    bool // the first plan will do: looking for feasibility only
	err    error
}

// plan is a leaf of a search, kept.
type plan struct {
	*course
	value
	at   []int
	ways []*way
	y    []int
	arcs []link
}

// last is the number of the end of a chain.
func (p *plan) last(c int) int { return p.at[c] + len(p.Chains[c].Tasks) - 1 }

// order exchanges alike chains so that an earlier one ends no later.
func (p *plan) order() {
	for c := range p.Chains {
		for o := range c {
			if p.class[o] == p.class[c] && p.y[p.last(o)] < p.y[p.last(c)] {
				p.exchange(o, c)
			}
		}
	}
}

// exchange gives each of two alike chains what the other had.
func (p *plan) exchange(a, b int) {
	p.ways[a], p.ways[b] = p.ways[b], p.ways[a]
	n := len(p.Chains[a].Tasks)
	for j := range n {
		p.y[p.at[a]+j], p.y[p.at[b]+j] = p.y[p.at[b]+j], p.y[p.at[a]+j]
	}
	other := func(v int) int {
		switch {
		case v >= p.at[a] && v < p.at[a]+n:
			return v - p.at[a] + p.at[b]
		case v >= p.at[b] && v < p.at[b]+n:
			return v - p.at[b] + p.at[a]
		}
		return v
	}
	for i := range p.arcs {
		p.arcs[i].from, p.arcs[i].to = other(p.arcs[i].from), other(p.arcs[i].to)
	}
}

// count opens one more node; false: the search has to stop.
func (h *solver) count() bool {
	if h.err != nil || h.nodes >= h.budget {
		return false
	}
	h.nodes++
	h.err = h.ctx.Err() // nanoseconds; a node takes ten microseconds, and some hundreds on the largest days
	return h.err == nil
}

// record keeps a leaf that is better than the best.
func (h *solver) record(s *search, v value) {
	h.best = v
	h.plan = &plan{s.course, v, s.at, slices.Clone(s.chosen), slices.Clone(s.low), slices.Clone(s.arcs)}
	h.plan.order()
	h.satisfied()
}

// satisfied ends all searches if any plan will do: nothing can be better.
func (h *solver) satisfied() {
	if h.any {
		h.best = value{-1, -1}
	}
}

// candidate is a course that may hold a better plan.
type candidate struct {
	search *search
	root   value
	seen   bool // there is no plan under it better than the best
}

// candidates are the courses that may hold a plan better than the best, the best bound
// first. They are laid out one after another, the most promising first, and each is tasted
// at once: the plans found show that most of the others need not be laid out at all.
func candidates(h *solver, d *day, until int) []*candidate {
	var list []*candidate
	for _, p := range h.drafts(d) {
		if h.err = h.ctx.Err(); h.err != nil {
			return nil
		}
		if p.bound > h.best.cost || h.done() {
			break
		}
		m := d.store.mark()
		c := newCourse(d, p.fires)
		if c == nil {
			d.store.back(&m)
			continue
		}
		s := newSearch(h, c)
		root, ok := s.enterRoot()
		if !ok {
			s.leaveRoot()
			d.store.search = s
			d.store.back(&m)
			continue
		}
		k := &candidate{search: s, root: root}
		if !h.spent(until) {
			k.seen = s.taste(min(tasteNodes, until-h.nodes)) == never
		} else {
			s.leaveRoot()
		}
		if k.seen && (h.plan == nil || h.plan.course != c) { // there is nothing under it, and its room is free again
			d.store.search = s
			d.store.back(&m)
			continue
		}
		list = append(list, k)
	}
	slices.SortStableFunc(list, func(a, b *candidate) int { return a.root.compare(b.root) })
	return list
}
