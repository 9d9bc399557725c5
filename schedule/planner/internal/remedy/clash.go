package remedy

import (
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// lift is the request without a rule that a cook can let go of; false if it does
// not have it.
func lift(r schedule.Request, rule string) (schedule.Request, bool) {
	r = plans.CopyRequest(r)
	switch rule {
	case arrange.RuleQuiet:
		had := len(r.QuietHours()) > 0
		r.Quiet = []schedule.Quiet{} // nil would be the usual ones
		return r, had
	case arrange.RuleEarliest:
		had := assemble.HasEarliest(r)
		r.Earliest = nil
		for i := range r.Dishes {
			r.Dishes[i].Earliest = nil
		}
		return r, had
	}
	return r, false
}

// liftAll is the request without some rules.
func liftAll(r schedule.Request, rules []string) schedule.Request {
	for _, rule := range rules {
		r, _ = lift(r, rule)
	}
	return r
}

// clashes are smallest sets of dishes that cannot be had together: one, and others
// among the rest of the menu. The first guess is what the solver said of the day.
func (j *prober) clashes(r schedule.Request, p schedule.Plan) []assemble.Trouble {
	var all []assemble.Trouble
	guess := inTrouble(p)
	rest := r
	for len(all) < mostClashes && len(rest.Dishes) > 0 {
		if len(all) > 0 && j.within(rest, loneBudget) != cannot {
			break
		}
		t := j.smallest(rest, guess)
		if len(all) > 0 && t.Unproven {
			break // a second reason that may be none helps nobody
		}
		all, guess = append(all, t), nil
		rest = plans.Only(rest, func(id string) bool { return !slices.Contains(t.Dishes, id) })
	}
	return all
}

// smallest is a clash of an infeasible day (deletion filter). A dish that cannot be
// had even alone is the clash a cook understands best.
func (j *prober) smallest(r schedule.Request, guess []string) assemble.Trouble {
	t := assemble.Trouble{Dishes: plans.IDsOf(r)}
	if n := len(guess); n > 0 && n < len(t.Dishes) && j.of(plans.Keep(r, guess)) == cannot {
		t.Dishes = slices.Clone(guess)
	}
	if len(t.Dishes) > 2 {
		for _, id := range t.Dishes {
			if j.within(plans.Keep(r, []string{id}), loneBudget) == cannot {
				t.Dishes = []string{id}
				return t
			}
		}
	}
	for i := 0; i < len(t.Dishes) && len(t.Dishes) > 1; {
		fewer := slices.Delete(slices.Clone(t.Dishes), i, i+1)
		nodes := probeBudget
		if len(fewer) == 1 {
			nodes = loneBudget
		}
		switch j.within(plans.Keep(r, fewer), nodes) {
		case cannot:
			t.Dishes = fewer
			continue
		case unsure:
			t.Unproven = true
		}
		i++
	}
	return t
}

// explain is the finding of a clash: the rules that stand in its way are those of
// the solver, but for what a cook can let go of, which is tried.
func (j *prober) explain(r schedule.Request, t *assemble.Trouble, told []schedule.Finding) (schedule.Finding, error) {
	core := plans.Keep(r, t.Dishes)
	f, err := j.told(core, *t, told, false)
	if err != nil || f.Code != schedule.CodeClash {
		return f, err
	}
	var needed []string
	for _, rule := range []string{arrange.RuleQuiet, arrange.RuleEarliest} {
		lifted, has := lift(core, rule)
		if !has {
			continue
		}
		switch j.within(lifted, ruleBudget) {
		case cannot:
			core, t.Idle = lifted, append(t.Idle, rule)
			continue
		case unsure:
			t.Vague = true
		}
		needed = append(needed, rule)
	}
	if len(t.Idle) > 0 { // what the solver named may have been the idle rule's doing
		if f, err = j.told(core, *t, nil, false); err != nil || f.Code != schedule.CodeClash {
			return f, err
		}
	}
	kitchen, vague := j.kitchen(core, f.Rules)
	t.Rules, t.Vague = append(needed, kitchen...), t.Vague || vague
	return t.Finding(r), nil
}

// kitchen are the rules of the kitchen that a clash needs: without any one of them
// it would be none (deletion filter). Where that is not known, it is vague: those that
// the solver named, or, if it has named none, those that it mostly is.
func (j *prober) kitchen(core schedule.Request, told []string) (needed []string, vague bool) {
	if len(told) == 0 {
		told = []string{arrange.RuleFire, arrange.RuleRoom, arrange.RuleHold}
	}
	was, before := j.effort.Lifted, j.effort.Lifted
	defer func() { j.effort.Lifted = before }()
	for _, rule := range arrange.KitchenRules {
		if rule == arrange.RuleEarliest && assemble.HasEarliest(core) {
			continue
		}
		j.effort.Lifted = append(slices.Clone(was), rule)
		switch v := j.within(core, ruleBudget); {
		case v == cannot:
			was = j.effort.Lifted
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
func (j *prober) told(core schedule.Request, t assemble.Trouble, known []schedule.Finding, rules bool) (schedule.Finding, error) {
	if f, ok := findingFor(known, t.Dishes); ok && f.Code == schedule.CodeClash {
		return f, nil
	} // what has no room or no fire on a full day may have both alone
	e := j.effort
	e.Nodes, e.NoClash = 4*probeBudget, !rules
	p, err := ahead.Plan(j.ctx, core, e)
	if err != nil {
		return schedule.Finding{}, err
	}
	if f, ok := findingFor(p.Findings, t.Dishes); ok {
		return f, nil
	}
	return schedule.NewFinding(schedule.CodeClash, "", ""), nil
}

// findingFor is the finding that makes the day infeasible for just these dishes.
func findingFor(all []schedule.Finding, ids []string) (schedule.Finding, bool) {
	for _, f := range all {
		if isClash(f) && len(f.Dishes) == len(ids) && !slices.ContainsFunc(ids, func(id string) bool { return !slices.Contains(f.Dishes, id) }) {
			return f, true
		}
	}
	return schedule.Finding{}, false
}

// isClash says whether a finding is of dishes that cannot be had.
func isClash(f schedule.Finding) bool {
	return slices.Contains([]string{schedule.CodeClash, schedule.CodeNoRoom, schedule.CodeNeverArrives}, f.Code)
}
