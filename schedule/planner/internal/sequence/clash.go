package sequence

import "slices"

// earliestRelief is how much earlier the day may begin where RuleEarliest is
// let go: a week, more than any cook takes. Finite, so that a search ends.
const earliestRelief = 7 * 24 * 60

// clash shrinks an infeasible problem to a set of chains and rules that is
// infeasible alone while each proper subset is feasible (deletion filter).
// Chains go first and in bundles, so that few chains are left and few problems
// are solved. That a subset of a feasible set is feasible makes one pass of
// single deletions enough.
func (h *solver) clash(d *day) *Clash {
	f := filter{solver: h, day: d, left: h.budget - h.nodes, minimal: true}
	for c := range d.Chains {
		f.chains = append(f.chains, c)
	}
	for r := range ruleCount {
		f.rules = append(f.rules, r)
	}
	f.loneChain()
	f.chains = shrink(f.chains, func(kept []int) bool { return f.infeasible(kept, f.rules) })
	f.rules = shrink(f.rules, func(kept []Rule) bool { return f.infeasible(f.chains, kept) })
	return &Clash{Chains: f.chains, Rules: f.rules, Minimal: f.minimal}
}

// layoutNodes is what laying out the sequences of fires costs, in nodes for a chain
// and a fire (measured, rounded): a clash is sought in many small problems.
const layoutNodes = 20

// filter is the state of the deletion filter.
type filter struct {
	*solver
	day     *day
	chains  []int
	rules   []Rule
	left    int // nodes it may still open
	minimal bool
}

// loneChain looks for a chain that cannot be had even alone: the clash a cook
// understands best.
func (f *filter) loneChain() {
	for _, s := range f.day.sample {
		if f.infeasible([]int{s}, f.rules) {
			f.chains = []int{s}
			return
		}
	}
}

// shrink drops elements as long as what is kept stays infeasible: bundles of
// half, a quarter ... and at last each element by itself.
func shrink[T any](set []T, infeasible func([]T) bool) []T {
	for size := max(1, len(set)/2); ; size /= 2 {
		for i := 0; i < len(set); {
			kept := slices.Delete(slices.Clone(set), i, min(i+size, len(set)))
			if infeasible(kept) {
				set = kept
			} else {
				i += size
			}
		}
		if size == 1 {
			return set
		}
	}
}

// infeasible says whether it is proven that these chains and rules clash.
func (f *filter) infeasible(chains []int, rules []Rule) bool {
	if f.left <= 0 {
		f.minimal = false
		return false
	}
	h := &solver{ctx: f.ctx, budget: f.left, best: value{never, never}, any: true}
	m := f.day.store.mark()
	bound := h.solve(prepare(relax(f.day.Problem, chains, rules), f.day.store))
	f.day.store.back(&m)
	f.left -= h.nodes + layoutNodes*len(chains)*len(f.day.Fires)
	f.nodes += h.nodes
	f.err = h.err
	if h.plan == nil && bound < never {
		f.minimal = false
	}
	return h.plan == nil && bound == never && h.err == nil
}

// relax returns the problem of some of its chains under some of its rules.
func relax(p *Problem, chains []int, rules []Rule) *Problem {
	q := *p
	has := func(r Rule) bool { return slices.Contains(rules, r) }
	q.Chains = nil
	for _, c := range chains {
		ch := p.Chains[c]
		ch.Tasks = slices.Clone(ch.Tasks)
		for j := range ch.Tasks {
			relaxTask(&ch.Tasks[j], has)
		}
		q.Chains = append(q.Chains, ch)
	}
	if !has(RuleQuiet) {
		q.Quiet = nil
	}
	if !has(RuleHands) {
		q.LightHands, q.ChangeHands = min(q.LightHands, 0), min(q.ChangeHands, 0)
	}
	if !has(RuleEarliest) {
		q.Earliest += earliestRelief
	}
	if !has(RuleClosed) {
		q.Fires = slices.Clone(q.Fires)
		for f := range q.Fires {
			q.Fires[f].LightClosed, q.Fires[f].ChangeClosed = nil, nil
		}
	}
	if !has(RuleCapacity) {
		unbound(&q)
	}
	if !has(RulePhases) {
		eternal(&q)
	}
	return &q
}

func relaxTask(t *Task, has func(Rule) bool) {
	if !has(RuleHands) {
		t.StartHands, t.EndHands = min(t.StartHands, 0), min(t.EndHands, 0)
	}
	t.Modes = slices.Clone(t.Modes)
	for m := range t.Modes {
		if !has(RuleClosed) {
			t.Modes[m].Closed = nil
		}
		if !has(RuleHold) {
			t.Modes[m].Gap.Max = NoLimit
		}
	}
}

// unbound makes all zones large enough for everything: nothing takes room.
func unbound(q *Problem) {
	for c := range q.Chains {
		for j := range q.Chains[c].Tasks {
			for m := range q.Chains[c].Tasks[j].Modes {
				q.Chains[c].Tasks[j].Modes[m].Area = 0
			}
		}
	}
}

// eternal makes every zone of every fire a zone of the oven: always ready. A
// mode with several places becomes a mode for each.
func eternal(q *Problem) {
	base := make([]int, len(q.Fires))
	q.Ovens = slices.Clone(q.Ovens)
	for f := range q.Fires {
		base[f] = len(q.Ovens)
		q.Ovens = append(q.Ovens, q.Fires[f].Zones...)
	}
	q.Fires, q.Change, q.ChangeCosts = nil, nil, nil
	for c := range q.Chains {
		origin := []int{0} // the mode that each mode of the task before was
		for j := range q.Chains[c].Tasks {
			t := &q.Chains[c].Tasks[j]
			var modes []Mode
			var now []int
			for m, mode := range t.Modes {
				minutes := make([]int, len(origin))
				for i, o := range origin {
					minutes[i] = mode.Minutes[o]
				}
				for _, pl := range mode.Places {
					one := mode
					one.Minutes = minutes
					if pl.Fire != OvenFire {
						pl = Place{OvenFire, base[pl.Fire] + pl.Zone}
					}
					one.Places = []Place{pl}
					modes = append(modes, one)
					now = append(now, m)
				}
			}
			t.Modes, origin = modes, now
		}
	}
}
