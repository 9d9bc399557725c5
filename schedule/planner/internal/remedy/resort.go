package remedy

import (
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// Bounds of the last resort: probes, whole days, and nodes of an allowance of its own, so
// that there is an answer even where the reasons of the clash have cost everything.
const (
	resortProbes    = 200
	resortWholes    = 4
	resortAllowance = arrange.FullAllowance / 6 // for each part of the search
	resortSaved     = resortAllowance / 2       // of it, for the plan that the changes lead to
	resortFloor     = arrange.FullAllowance / 8 // of the allowance for the other remedies: what is below it goes to the last resort
	resortTries     = 12                        // changes tried for each dish that has no place beside others
	resortBudget    = 4 * probeBudget           // of the plan that it leads to: more than showed that there is one
	fitBudget       = probeBudget / 4           // of a probe: what is hard to fit in does not fit
	handful         = 4                         // dishes taken at once onto a menu that is growing
)

// resort is a menu on the way to one that can be had: what has been changed so far,
// and the dishes that are known to go together.
type resort struct {
	now  schedule.Request
	kept []string
	used []change
}

// lastResort is what a cook does with a menu that is too much: the oven helps, a dish
// that is too much by itself becomes less, and the dishes that can then be had together
// are kept, in the order of the menu. Each of the others is fitted in with a change of
// its own, or else cooked somewhere else. The second answer only sends away.
func (m *mender) lastResort(r schedule.Request) []priced {
	m.left, m.wholes = resortProbes, resortWholes
	m.effort.Allowance = arrange.NewAllowance(resortAllowance)
	plain := m.together(resort{now: r})
	m.effort.Allowance = arrange.NewAllowance(resortAllowance)
	eased := resort{now: plans.CopyRequest(r)}
	if r.Oven == nil {
		m.use(&eased, ovenChange(r))
	}
	for _, dish := range r.Dishes {
		if c, ok := m.alone(eased.now, dish.ID); ok {
			m.use(&eased, c)
		}
	}
	if len(eased.used) > 0 {
		eased = m.together(eased)
	} else {
		eased = plain
	}
	var out []priced
	for _, s := range []struct {
		resort
		fit bool
	}{{eased, true}, {plain, false}} {
		m.effort.Allowance = arrange.NewAllowance(resortAllowance)
		if rem, ok := m.withTheRest(s.resort, s.fit); ok {
			out = append(out, rem)
		}
	}
	return out
}

// use changes the menu; a dish that is sent away needs no change before.
func (m *mender) use(s *resort, c change) {
	s.used = append(withoutFutile(s.used, c), c)
	s.now = m.with(s.now, c)
}

// alone is the least painful change that makes less of a dish which is too much by
// itself. Serving it in parts is tried later, beside the others.
func (m *mender) alone(now schedule.Request, id string) (change, bool) {
	if m.of(plans.Keep(now, []string{id})) != cannot {
		return change{}, false
	}
	c, ok := m.fitting(now, id, nil)
	return c, ok && !c.adds()
}

// together keeps dishes that can be had together, each as the menu names them.
func (m *mender) together(s resort) resort {
	s.kept = nil
	for few := range slices.Chunk(plans.IDsOf(s.now), handful) {
		m.take(&s, few)
	}
	return s
}

// take keeps what it can of a few dishes: all at once, or else each half.
func (m *mender) take(s *resort, few []string) {
	more := slices.Concat(s.kept, few)
	if m.of(plans.Keep(s.now, more)) == can {
		s.kept = more
	} else if n := len(few); n > 1 {
		m.take(s, few[:n/2])
		m.take(s, few[n/2:])
	}
}

// withTheRest changes the dishes that are not kept, one after another, and plans what
// that comes to.
func (m *mender) withTheRest(s resort, fit bool) (priced, bool) {
	s.now, s.kept, s.used = plans.CopyRequest(s.now), slices.Clone(s.kept), slices.Clone(s.used)
	for _, id := range plans.IDsOf(s.now) {
		if slices.Contains(s.kept, id) {
			continue
		}
		c, ok := change{}, false
		if fit {
			c, ok = m.fitting(s.now, id, s.kept)
		}
		if !ok {
			c, ok = sendAway(s.now, id)
		}
		if !ok {
			return priced{}, false
		}
		before := plans.IDsOf(s.now)
		m.use(&s, c)
		for _, now := range plans.IDsOf(s.now) { // a sitting is a dish more
			if now == id || !slices.Contains(before, now) {
				s.kept = append(s.kept, now)
			}
		}
	}
	if len(s.now.Dishes) == 0 || len(s.used) == 0 {
		return priced{}, false
	}
	p, ok := m.whole(s.now, resortBudget)
	if !ok || !p.Feasible {
		return priced{}, false
	}
	return m.remedy(s.now, p, s.used), true
}

// sendAway cooks a dish somewhere else than in the oven, where others may be held.
func sendAway(now schedule.Request, id string) (change, bool) {
	away := dishChanges(now, slices.Index(plans.IDsOf(now), id), assemble.Trouble{Dishes: []string{id}})
	k := slices.IndexFunc(away, func(c change) bool { return c.code == codeElsewhere && !c.bakes })
	if k < 0 {
		return change{}, false
	}
	return away[k], true
}

// fitting is the least painful change of a dish with which it can be had beside those
// that are kept.
func (m *mender) fitting(now schedule.Request, id string, kept []string) (change, bool) {
	before := plans.IDsOf(now)
	all := fewDoses(dishChanges(now, slices.Index(before, id), assemble.Trouble{Dishes: append(slices.Clone(kept), id)}))
	slices.SortStableFunc(all, func(a, b change) int { return a.pain - b.pain })
	for k, c := range all {
		if m.effort.Allowance.Below(resortSaved) || k == resortTries && len(kept) > 0 {
			break
		}
		with := plans.Only(m.with(now, c), func(o string) bool {
			return slices.Contains(kept, o) || o == id || !slices.Contains(before, o)
		})
		if m.within(with, fitBudget) == can {
			return c, true
		}
	}
	return change{}, false
}

// fewDoses leaves the smallest, a middling and the largest dose of each kind of change,
// and what sends the dish away out.
func fewDoses(all []change) []change {
	count, seen := map[string]int{}, map[string]int{}
	for _, c := range all {
		count[c.dose()]++
	}
	return slices.DeleteFunc(slices.Clone(all), func(c change) bool {
		k, n := seen[c.dose()], count[c.dose()]
		seen[c.dose()]++
		return c.code == codeElsewhere || k != 0 && k != n/2 && k != n-1
	})
}
