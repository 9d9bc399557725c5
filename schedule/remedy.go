package schedule

import (
	"context"
	"slices"
	"sort"
)

// mostRemedies is how many remedies a plan names; more is no help.
const mostRemedies = 6

// remedies tries changes of an infeasible day and keeps those that make it a
// plan, least painful first. Where mending one clash shows another, changes are
// joined. The list may be empty.
func remedies(ctx context.Context, r Request, p Plan, e effort) ([]Remedy, error) {
	e.budget = remedyBudget
	m := mender{ctx: ctx, effort: e, left: mostTries, enough: map[string]bool{}}
	if p.Feasible {
		return m.ease(r.withDefaults(), p)
	}
	out := []Remedy{}
	r = r.withDefaults()
	for _, c := range changesFor(r, p) {
		if len(out) == mostRemedies || m.enough[c.dose()] {
			continue
		}
		rem, ok, err := m.try(r, p, c, mostJoined)
		if err != nil {
			return nil, err
		}
		if ok {
			rem.For = codeOf(p)
			out = append(out, rem)
			m.enough[c.dose()] = len(rem.Edits) == len(c.edits) || m.enough[c.dose()]
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return len(out[i].Edits) < len(out[j].Edits) })
	return out, nil
}

const (
	mostTries    = 16   // plans made in search of remedies
	mostJoined   = 2    // changes in one remedy
	remedyBudget = 1000 // nodes of each: a remedy that is hard to find is a poor one
)

// mender plans changed requests until its tries or its purse are used up.
type mender struct {
	ctx    context.Context
	effort effort // of each try
	left   int
	enough map[string]bool // kinds of change that were enough by themselves
}

// try plans r with a change, and with more changes if another clash shows.
func (m *mender) try(r Request, before Plan, c change, depth int) (Remedy, bool, error) {
	if m.left--; m.left < 0 || m.effort.purse.empty() {
		return Remedy{}, false, nil
	}
	changed := copyRequest(r)
	c.apply(&changed)
	e := m.effort
	e.noClash = depth <= 1
	p, err := makePlan(m.ctx, changed, e)
	if _, bad := err.(*InputError); bad {
		return Remedy{}, false, nil // the change itself is not allowed
	}
	if err != nil {
		return Remedy{}, false, err
	}
	if p.Feasible {
		return Remedy{
			Code: c.code, Text: c.text, Price: c.price, Edits: c.edits, LightAt: p.LightAt, ServeAt: p.tableAt(),
			Chance: p.Chance.All, Cost: p.Solution.Objective,
		}, true, nil
	}
	if depth <= 1 || slices.Equal(inTrouble(p), inTrouble(before)) {
		return Remedy{}, false, nil
	}
	for _, next := range changesFor(changed.withDefaults(), p) {
		if m.enough[next.dose()] {
			continue
		}
		rem, ok, err := m.try(changed, p, next, depth-1)
		if ok || err != nil {
			rem.Text, rem.Price = c.text+" "+rem.Text, c.price+"; "+rem.Price
			rem.Edits = append(slices.Clone(c.edits), rem.Edits...)
			rem.Code = c.code
			return rem, ok, err
		}
	}
	return Remedy{}, false, nil
}

// ease looks for what would give a tight but feasible day more slack: a place to
// hold what may be done long before it is eaten.
func (m *mender) ease(r Request, p Plan) ([]Remedy, error) {
	out := []Remedy{}
	if r.Oven != nil || countFindings(p, codeHoldShort) == 0 {
		return out, nil
	}
	c := ovenChange()
	changed := copyRequest(r)
	c.apply(&changed)
	e := m.effort
	e.noClash = true
	eased, err := makePlan(m.ctx, changed, e)
	if err != nil || !eased.Feasible || countFindings(eased, codeHoldShort) >= countFindings(p, codeHoldShort) {
		return out, err
	}
	return append(out, Remedy{
		Code: c.code, For: codeHoldShort, Text: c.text, Price: c.price, Edits: c.edits, LightAt: eased.LightAt, ServeAt: eased.ServeAt,
		Chance: eased.Chance.All, Cost: eased.Solution.Objective,
	}), nil
}

// codeHoldShort is the finding of a dish that may be done too early to be held.
const codeHoldShort = "hold-short"

func countFindings(p Plan, code string) int {
	n := 0
	for _, f := range p.Findings {
		if f.Code == code {
			n++
		}
	}
	return n
}

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

// dose names a kind of change, whatever its size.
func (c change) dose() string { return c.code + c.edits[0].Path }

// copyRequest shares nothing that a change writes to.
func copyRequest(r Request) Request {
	r.Dishes = slices.Clone(r.Dishes)
	r.Quiet = slices.Clone(r.Quiet)
	return r
}
