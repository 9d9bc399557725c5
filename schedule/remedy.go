package schedule

import (
	"context"
	"slices"
	"sort"
)

// Bounds of the search for remedies, in plans made: of the whole day, and of the
// dishes of a clash alone, which are asked first because that is cheap.
const (
	mostRemedies = 6 // a plan names; more is no help
	mostWholes   = 14
	mostJoined   = 3    // changes in one remedy
	remedyBudget = 1000 // nodes of each plan: a remedy that is hard to find is a poor one
	lastResort   = 40   // probes, and whole days, for the last resort
	lastWholes   = 6
)

// withRemedies says of a day that cannot be had which dishes clash over what, and
// what would mend it, least painful first; of a tight one what would ease it. The
// list may be empty. The request has its defaults.
func withRemedies(ctx context.Context, r Request, p Plan, e effort) (Plan, error) {
	m := &mender{judge: judge{ctx: ctx, effort: e, left: mostProbes}, plan: p, wholes: mostWholes, joined: mostJoined, mended: map[string]string{}}
	var err error
	if p.Feasible {
		p.Remedies, err = m.ease(r)
		return p, err
	}
	if err = m.diagnose(r, &p); err != nil {
		return Plan{}, err
	}
	m.plan = p
	p.Remedies, err = m.remedies(r)
	return p, err
}

// mender plans changed requests until its tries are used up.
type mender struct {
	judge
	plan     Plan
	troubles []trouble
	wholes   int
	joined   int               // changes allowed in one remedy
	resort   bool              // nothing better was found: only less of the menu is left
	mended   map[string]string // by clash: the change that mended it last
}

// diagnose writes the smallest clashes into the plan. A day that has too many
// loads, or of which nothing is proven, is in trouble as a whole.
func (m *mender) diagnose(r Request, p *Plan) error {
	if cookedAhead(r) {
		p.isOf(r)
	}
	if !slices.ContainsFunc(p.Findings, isClash) {
		m.troubles = []trouble{{dishes: idsOf(r), unproven: true}}
		return nil
	}
	m.troubles = m.clashes(r, *p)
	var found []Finding
	for i := range m.troubles {
		f, err := m.explain(r, &m.troubles[i], p.Findings)
		if err != nil {
			return err
		}
		found = append(found, f)
	}
	p.Findings = append(found, slices.DeleteFunc(slices.Clone(p.Findings), isClash)...)
	return m.err
}

// isOf makes an infeasible plan of one day of two that of the request for both.
func (p *Plan) isOf(r Request) {
	plain := copyRequest(r)
	for i := range plain.Dishes {
		plain.Dishes[i].Ready = ""
	}
	d, faults := resolve(plain)
	if len(faults) > 0 {
		return
	}
	p.Dishes, p.ServeAt, p.Request, p.Name = d.menu(), d.end, r, r.Name
	p.Cautions = d.cautions(p, nil)
	p.Provenance.RequestHash = hash(r)
	p.ID = planID(r, p.Provenance.RequestHash)
}

// remedies tries the changes that may mend the first clash, each on the dishes of
// that clash alone and then, with what mends the other clashes, on the whole day.
func (m *mender) remedies(r Request) ([]Remedy, error) {
	if len(m.troubles) == 0 {
		return []Remedy{}, m.err
	}
	var out []priced
	enough := map[string]bool{} // kinds of change of which a smaller dose will do
	try := func(c change) {
		if rem, ok := m.complete(r, c); ok {
			enough[c.dose()] = true
			out = append(out, rem)
		}
	}
	for _, c := range m.changesFor(r, m.troubles[0]) {
		if len(out) > mostRemedies || m.left <= 0 || m.wholes <= 0 || m.err != nil {
			break
		}
		if !enough[c.dose()] && m.mends(r, c, m.troubles[0]) {
			try(c)
		}
	}
	if len(out) == 0 && m.err == nil {
		m.resort, m.joined = true, mostJoined+1
		m.left, m.wholes = lastResort, lastWholes
		for _, c := range m.changesFor(r, m.troubles[0]) {
			if len(out) == 0 && m.mends(r, c, m.troubles[0]) {
				try(c)
			}
		}
	}
	return ranked(out), m.err
}

// lone says whether the first clash is all there is on the menu.
func (m *mender) lone(r Request) bool { return len(m.troubles[0].dishes) == len(r.Dishes) && !m.resort }

// mends says whether a change lets the dishes of a clash be had by themselves.
func (m *mender) mends(r Request, c change, t trouble) bool {
	changed := copyRequest(r)
	c.apply(&changed)
	return m.of(part(changed, r, t)) == can
}

// part is what a changed request has of the dishes of a clash and of dishes that
// the change has added.
func part(changed, r Request, t trouble) Request {
	old := idsOf(r)
	return only(changed, func(id string) bool { return slices.Contains(t.dishes, id) || !slices.Contains(old, id) })
}

// complete plans the day with a change, and with more changes as long as another
// clash shows.
func (m *mender) complete(r Request, first change) (priced, bool) {
	used := []change{first}
	now := copyRequest(r)
	first.apply(&now)
	for m.err == nil {
		t, clash := m.still(r, now)
		if !clash {
			p, err := m.whole(now)
			if _, bad := err.(*InputError); err != nil && !bad {
				m.err = err
			}
			if err != nil {
				return priced{}, false
			}
			if p.Feasible {
				return m.remedy(p, used), true
			}
			if len(used) == m.joined || m.wholes <= 0 || !p.Solution.Proven || m.lone(r) {
				return priced{}, false
			}
			t = m.smallest(now, nil)
			if f, err := m.told(keep(now, t.dishes), t, nil); err == nil {
				t.rules = f.Rules
			}
			m.troubles = append(m.troubles, t)
		}
		if len(used) == m.joined {
			return priced{}, false
		}
		next, ok := m.next(now, t, used)
		if !ok {
			return priced{}, false
		}
		used = append(used, next)
		next.apply(&now)
	}
	return priced{}, false
}

// still is a known clash, but for the first, that a changed request still has.
func (m *mender) still(r, now Request) (trouble, bool) {
	for _, t := range m.troubles[1:] {
		if p := part(now, r, t); len(p.Dishes) > 0 && len(p.Dishes) < len(now.Dishes) && m.of(p) == cannot {
			return t, true
		}
	}
	return trouble{}, false
}

// whole plans a changed day.
func (m *mender) whole(r Request) (Plan, error) {
	m.wholes--
	e := m.effort
	e.budget, e.noClash = remedyBudget, true
	return makePlan(m.ctx, r, e)
}

// next is the least painful change that mends a further clash: first the one that
// did so before.
func (m *mender) next(now Request, t trouble, used []change) (change, bool) {
	all := m.changesFor(now, t)
	if known := m.mended[t.key()]; known != "" {
		sort.SliceStable(all, func(i, j int) bool { return all[i].text == known && all[j].text != known })
	}
	for _, c := range all {
		if slices.ContainsFunc(used, func(u change) bool { return u.dose() == c.dose() }) {
			continue
		}
		changed := copyRequest(now)
		c.apply(&changed)
		if m.of(part(changed, now, t)) == can {
			m.mended[t.key()] = c.text
			return c, true
		}
		if m.left <= 0 {
			break
		}
	}
	return change{}, false
}

func (t trouble) key() string { return listed(t.dishes, "and") }

// codeHoldShort is the finding of a dish that may be done too early to be held.
const codeHoldShort = "hold-short"

// inTrouble names the dishes of the findings that make a day infeasible.
func inTrouble(p Plan) []string {
	var ids []string
	for _, f := range p.Findings {
		if f.Severity == Danger {
			ids = append(ids, f.Dishes...)
		}
	}
	return ids
}

// codeOf is the finding that makes the day infeasible.
func codeOf(p Plan) string {
	for _, f := range p.Findings {
		if f.Severity == Danger {
			return f.Code
		}
	}
	return ""
}
