package remedy

import (
	"slices"
	"sort"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// complete plans the day with a change, and with more changes as long as another
// clash shows.
func (m *mender) complete(r schedule.Request, first change) (priced, bool) {
	return m.onward(r, m.with(r, first), []change{first})
}

// onward plans a changed day; where another clash shows, it tries a change that mends
// that one, and one of another kind where the first led nowhere.
func (m *mender) onward(r, now schedule.Request, used []change) (priced, bool) {
	t, clash := m.still(r, now)
	if !clash {
		p, ok := m.whole(now, remedyBudget)
		switch {
		case !ok:
			return priced{}, false
		case p.Feasible:
			return m.remedy(now, p, used), true
		case len(used) == m.joined || m.wholes <= 0 || !p.Solution.Proven || m.lone(r):
			return priced{}, false
		}
		t = m.another(now)
	}
	var vain []change
	for len(used) < m.joined && len(vain) < mostVain && m.err == nil {
		next, ok := m.next(now, t, slices.Concat(used, vain))
		if !ok {
			break
		}
		further := m.with(now, next)
		if rem, ok := m.onward(r, further, append(withoutFutile(used, next), next)); ok {
			m.mended[t.Key()] = next.key()
			return rem, true
		}
		vain = append(vain, next)
	}
	return priced{}, false
}

// mostVain is how many kinds of change are tried for a further clash.
const mostVain = 2

// another is a clash that shows once the known ones are mended.
func (m *mender) another(now schedule.Request) assemble.Trouble {
	t := m.smallest(now, nil)
	if f, err := m.told(plans.Keep(now, t.Dishes), t, nil, true); err == nil {
		t.Rules = f.Rules
	}
	m.troubles = append(m.troubles, t)
	return t
}

// still is a known clash, but for the first, that a changed request still has.
func (m *mender) still(r, now schedule.Request) (assemble.Trouble, bool) {
	for _, t := range m.troubles[1:] {
		if p := part(now, r, t); len(p.Dishes) > 0 && len(p.Dishes) < len(now.Dishes) && m.of(p) == cannot {
			return t, true
		}
	}
	return assemble.Trouble{}, false
}

// whole plans a changed day; false if the change is refused, or an error ends it all.
func (m *mender) whole(r schedule.Request, budget int) (schedule.Plan, bool) {
	e := m.effort
	e.Nodes = budget
	return m.made(r, e)
}

func (m *mender) made(r schedule.Request, e ahead.Effort) (schedule.Plan, bool) {
	m.wholes--
	e.NoClash = true
	p, err := ahead.Plan(m.ctx, r, e)
	if _, refused := err.(*schedule.InputError); err != nil && !refused {
		m.err = err
	}
	return p, err == nil
}

// next is the least painful change that mends a further clash and is of another kind
// than those used: first the one that did so before.
func (m *mender) next(now schedule.Request, t assemble.Trouble, used []change) (change, bool) {
	all := m.changesFor(now, t)
	if known := m.mended[t.Key()]; known != "" {
		sort.SliceStable(all, func(i, j int) bool { return all[i].key() == known && all[j].key() != known })
	}
	for _, c := range all {
		if slices.ContainsFunc(used, func(u change) bool {
			return u.dose() == c.dose() || u.against(c) || u.adds() && c.code == codeElsewhere && u.of == c.of
		}) {
			continue
		}
		if left := part(m.with(now, c), now, t); len(left.Dishes) == 0 || m.of(left) == can {
			return c, true
		}
		if m.left <= 0 {
			break
		}
	}
	return change{}, false
}

// withoutFutile are changes without those of a dish that is to be left out.
func withoutFutile(used []change, next change) []change {
	if next.code != codeElsewhere {
		return used
	}
	return slices.DeleteFunc(slices.Clone(used), func(c change) bool { return c.of == next.of })
}
