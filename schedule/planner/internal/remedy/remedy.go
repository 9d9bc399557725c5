package remedy

import (
	"context"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
)

// Bounds of the search for remedies, in plans made: of the whole day, and of the
// dishes of a clash alone, which are asked first because that is cheap.
const (
	mostRemedies = 6 // a plan names; more is no help
	mostWholes   = 20
	mostJoined   = 3    // changes in one remedy
	mostDoses    = 2    // doses of one kind of change that mend a clash, and not the day
	remedyBudget = 1000 // nodes of each plan: a remedy that is hard to find is a poor one
)

// WithRemedies says of a day that cannot be had which dishes clash over what, and
// what would mend it, least painful first; of a tight one what would ease it. The
// list may be empty. The request has its defaults.
func WithRemedies(ctx context.Context, r schedule.Request, p schedule.Plan, e ahead.Effort) (schedule.Plan, error) {
	m := &mender{prober: prober{ctx: ctx, effort: e, left: mostProbes}, plan: p, wholes: mostWholes, joined: mostJoined, mended: map[string]string{}}
	var err error
	if p.Feasible {
		p.Remedies, err = m.ease(r)
		return p, err
	}
	if err = m.diagnose(r, &p); err != nil {
		return schedule.Plan{}, err
	}
	m.plan = p
	if p.Remedies, err = m.remedies(r); err == nil && len(p.Remedies) == 0 {
		p.Findings = append(p.Findings, m.noRemedy())
	}
	return p, err
}

// noRemedy says that nothing helps, and whether all that could was tried.
func (m *mender) noRemedy() schedule.Finding {
	f := schedule.NewFinding(schedule.CodeNoRemedy, "", "None of the changes that were tried makes this day work. Fewer dishes, smaller pieces, another day or a second grill are what is left.")
	if m.left <= 0 || m.effort.Allowance.Empty() {
		f.Text = "No change was found that makes this day work, and not all could be tried: the menu is long for one grill. Ask again with a dish less, smaller pieces or more time."
	}
	return f
}

// mender plans changed requests until its tries are used up.
type mender struct {
	prober
	plan     schedule.Plan
	troubles []assemble.Trouble
	wholes   int
	joined   int               // changes allowed in one remedy
	mended   map[string]string // by clash: the change that mended it last
}

// diagnose writes the smallest clashes into the plan. A day that has too many
// loads, or of which nothing is proven, is in trouble as a whole.
func (m *mender) diagnose(r schedule.Request, p *schedule.Plan) error {
	if plans.CookedAhead(r) {
		restate(p, r)
	}
	if !slices.ContainsFunc(p.Findings, isClash) {
		m.troubles = []assemble.Trouble{{Dishes: plans.IDsOf(r), Unproven: true}}
		return nil
	}
	m.troubles = m.clashes(r, *p)
	var found []schedule.Finding
	for i := range m.troubles {
		if i > 0 && m.effort.Allowance.Empty() {
			m.troubles = m.troubles[:i]
			break // why the others clash cannot be worked out any more
		}
		f, err := m.explain(r, &m.troubles[i], p.Findings)
		if err != nil {
			return err
		}
		found = append(found, f)
	}
	p.Findings = append(found, slices.DeleteFunc(slices.Clone(p.Findings), isClash)...)
	return m.err
}

// restate makes an infeasible plan of one day of two that of the request for both.
func restate(p *schedule.Plan, r schedule.Request) {
	plain := plans.CopyRequest(r)
	for i := range plain.Dishes {
		plain.Dishes[i].Ready = ""
	}
	loc, err := plain.Location()
	if err != nil {
		return
	}
	resolved, err := day.Resolve(day.Sound{Request: plain, Loc: loc}, day.Options{})
	if err != nil {
		return
	}
	d := assemble.New(&arrange.Arranger{Day: resolved})
	p.Dishes, p.ServeAt, p.Request, p.Name = d.Menu(), d.End, r, r.Name
	p.Cautions = d.Cautions(p, nil)
	p.Provenance.RequestHash = plans.Hash(r)
	p.ID = plans.ID(r, p.Provenance.RequestHash)
}

// remedies tries the changes that may mend the first clash, each on the dishes of
// that clash alone and then, with what mends the other clashes, on the whole day.
func (m *mender) remedies(r schedule.Request) ([]schedule.Remedy, error) {
	if len(m.troubles) == 0 {
		return []schedule.Remedy{}, m.err
	}
	out, all := m.tried(r, m.changesFor(r, m.troubles[0]))
	if (len(out) == 0 || !all) && len(out) < mostRemedies && m.err == nil {
		out = append(out, m.lastResort(r)...)
	}
	return m.settled(ranked(out)), m.err
}

// tried are the changes that mend the day, and whether all were tried: of a kind of
// change the smallest dose that will do; none where two doses have failed.
func (m *mender) tried(r schedule.Request, all []change) ([]priced, bool) {
	var out []priced
	failed := map[string]int{}
	for _, c := range all {
		if len(out) > mostRemedies || m.left <= 0 || m.wholes <= 0 || m.effort.Allowance.Below(resortFloor) || m.err != nil {
			return out, false
		}
		if failed[c.dose()] >= mostDoses || !m.mends(r, c, m.troubles[0]) {
			continue
		}
		rem, ok := m.complete(r, c)
		if failed[c.dose()]++; ok {
			out, failed[c.dose()] = append(out, rem), mostDoses
		}
	}
	return out, true
}

// lone says whether the first clash is all there is on the menu,
// under rules that all stand in the way.
func (m *mender) lone(r schedule.Request) bool {
	t := m.troubles[0]
	return len(t.Dishes) == len(r.Dishes) && len(t.Idle) == 0
}

// with is a request with changes that were made for it, one after another.
func (m *mender) with(r schedule.Request, changes ...change) schedule.Request {
	for _, c := range changes {
		changed, err := r.With(c.edits...)
		if err != nil { // the edits are ours
			m.err = err
			return r
		}
		r = changed
	}
	return r
}

// mends says whether a change lets the dishes of a clash be had by themselves, at
// least without the rules that the clash does not need: these may be a trouble of
// their own, for a further change to mend.
func (m *mender) mends(r schedule.Request, c change, t assemble.Trouble) bool {
	now := part(m.with(r, c), r, t)
	if len(now.Dishes) == 0 {
		return true // nothing of the clash is left
	}
	v := m.of(now)
	if v == cannot && len(t.Idle) > 0 {
		v = m.of(liftAll(now, t.Idle))
	}
	return v == can
}

// part is what a changed request has of the dishes of a clash and of dishes that
// the change has added.
func part(changed, r schedule.Request, t assemble.Trouble) schedule.Request {
	old := plans.IDsOf(r)
	return plans.Only(changed, func(id string) bool { return slices.Contains(t.Dishes, id) || !slices.Contains(old, id) })
}

// inTrouble names the dishes of the findings that make a day infeasible.
func inTrouble(p schedule.Plan) []string {
	var ids []string
	for _, f := range p.Findings {
		if f.Severity == schedule.Danger {
			ids = append(ids, f.Dishes...)
		}
	}
	return ids
}

// codeOf is the finding that makes the day infeasible.
func codeOf(p schedule.Plan) string {
	for _, f := range p.Findings {
		if f.Severity == schedule.Danger {
			return f.Code
		}
	}
	return ""
}
