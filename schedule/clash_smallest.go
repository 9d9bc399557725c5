package schedule

import (
	"context"
	"slices"
)

// Budgets of asking whether parts of a day can be had: how many parts, and the
// nodes of each. Both are far beyond what most days need.
const (
	mostProbes  = 90
	probeBudget = 1500
	ruleBudget  = 6000 // of a clash without one of its rules: there are few
	loneBudget  = 4000 // of one dish by itself: to know that it is too much spares all further probes
	mostClashes = 3    // clashes told, of dishes that have nothing in common
)

// judge asks whether days can be had. It plans requests as [Make] does, so that
// what it finds of a part of the menu is what a cook would find who asked for that
// part alone: with fires and loads of its own.
type judge struct {
	ctx    context.Context
	effort effort // of the plan that is judged: its simulated cooks and its purse
	left   int    // probes it may still make
	err    error
}

// verdict is what a judge says of a day.
type verdict int

const (
	unsure verdict = iota // the budget was too small
	can
	cannot
	faulty // the request has faults
)

func (j *judge) of(r Request) verdict { return j.within(r, probeBudget) }

// within is of with a budget of its own.
func (j *judge) within(r Request, nodes int) verdict {
	if j.left--; j.left < 0 || j.err != nil || j.effort.purse.empty() {
		return unsure
	}
	e := j.effort
	e.budget, e.noClash, e.probe = nodes, true, true
	p, err := makePlan(j.ctx, r, e)
	_, bad := err.(*InputError)
	switch {
	case bad:
		return faulty
	case err != nil:
		j.err = err
		return unsure
	case p.Feasible:
		return can
	case p.Solution.Proven:
		return cannot
	}
	return unsure
}

// clashes are smallest sets of dishes that cannot be had together: one, and others
// among the rest of the menu. The first guess is what the solver said of the day.
func (j *judge) clashes(r Request, p Plan) []trouble {
	var all []trouble
	guess := inTrouble(p)
	rest := r
	for len(all) < mostClashes && len(rest.Dishes) > 0 {
		if len(all) > 0 && j.within(rest, loneBudget) != cannot {
			break
		}
		t := j.smallest(rest, guess)
		if len(all) > 0 && t.unproven {
			break // a second reason that may be none helps nobody
		}
		all, guess = append(all, t), nil
		rest = only(rest, func(id string) bool { return !slices.Contains(t.dishes, id) })
	}
	return all
}

// smallest is a clash of an infeasible day (deletion filter). A dish that cannot be
// had even alone is the clash a cook understands best.
func (j *judge) smallest(r Request, guess []string) trouble {
	t := trouble{dishes: idsOf(r)}
	if n := len(guess); n > 0 && n < len(t.dishes) && j.of(keep(r, guess)) == cannot {
		t.dishes = slices.Clone(guess)
	}
	if len(t.dishes) > 2 {
		for _, id := range t.dishes {
			if j.within(keep(r, []string{id}), loneBudget) == cannot {
				t.dishes = []string{id}
				return t
			}
		}
	}
	for i := 0; i < len(t.dishes) && len(t.dishes) > 1; {
		fewer := slices.Delete(slices.Clone(t.dishes), i, i+1)
		nodes := probeBudget
		if len(fewer) == 1 {
			nodes = loneBudget
		}
		switch j.within(keep(r, fewer), nodes) {
		case cannot:
			t.dishes = fewer
			continue
		case unsure:
			t.unproven = true
		}
		i++
	}
	return t
}

// explain is the finding of a clash: the rules that stand in its way are those of
// the solver, but for what a cook can let go of, which is tried.
func (j *judge) explain(r Request, t *trouble, told []Finding) (Finding, error) {
	core := keep(r, t.dishes)
	f, err := j.told(core, *t, told, false)
	if err != nil || f.Code != codeClash {
		return f, err
	}
	var needed []string
	for _, rule := range []string{ruleQuiet, ruleEarliest} {
		lifted, has := lift(core, rule)
		if !has {
			continue
		}
		switch j.within(lifted, ruleBudget) {
		case cannot:
			core, t.idle = lifted, append(t.idle, rule)
			continue
		case unsure:
			t.vague = true
		}
		needed = append(needed, rule)
	}
	if len(t.idle) > 0 { // what the solver named may have been the idle rule's doing
		if f, err = j.told(core, *t, nil, false); err != nil || f.Code != codeClash {
			return f, err
		}
	}
	kitchen, vague := j.kitchen(core, f.Rules)
	t.rules, t.vague = append(needed, kitchen...), t.vague || vague
	return t.finding(r), nil
}

// kitchen are the rules of the kitchen that a clash needs: without any one of them
// it would be none (deletion filter). Where that is not known, it is vague: those that
// the solver named, or, if it has named none, those that it mostly is.
func (j *judge) kitchen(core Request, told []string) (needed []string, vague bool) {
	if len(told) == 0 {
		told = []string{ruleFire, ruleRoom, ruleHold}
	}
	was, before := j.effort.lifted, j.effort.lifted
	defer func() { j.effort.lifted = before }()
	for _, rule := range kitchenRules {
		if rule == ruleEarliest && hasEarliest(core) {
			continue
		}
		j.effort.lifted = append(slices.Clone(was), rule)
		switch v := j.within(core, ruleBudget); {
		case v == cannot:
			was = j.effort.lifted
		case v == can:
			needed = append(needed, rule)
		default:
			vague = true
			if slices.Contains(told, rule) {
				needed = append(needed, rule)
			}
		}
	}
	return needed, vague
}

// told is what the solver says of a clash, unless the plan has said it; with rules it
// says over what, as far as it sees that quickly.
func (j *judge) told(core Request, t trouble, known []Finding, rules bool) (Finding, error) {
	if f, ok := findingFor(known, t.dishes); ok && f.Code == codeClash {
		return f, nil
	} // what has no room or no fire on a full day may have both alone
	e := j.effort
	e.budget, e.noClash = 4*probeBudget, !rules
	p, err := makePlan(j.ctx, core, e)
	if err != nil {
		return Finding{}, err
	}
	if f, ok := findingFor(p.Findings, t.dishes); ok {
		return f, nil
	}
	return Finding{Code: codeClash}, nil
}

// findingFor is the finding that makes the day infeasible for just these dishes.
func findingFor(all []Finding, ids []string) (Finding, bool) {
	for _, f := range all {
		if isClash(f) && len(f.Dishes) == len(ids) && !slices.ContainsFunc(ids, func(id string) bool { return !slices.Contains(f.Dishes, id) }) {
			return f, true
		}
	}
	return Finding{}, false
}

// isClash says whether a finding is of dishes that cannot be had.
func isClash(f Finding) bool {
	return slices.Contains([]string{codeClash, codeNoRoom, codeNeverArrives}, f.Code)
}
