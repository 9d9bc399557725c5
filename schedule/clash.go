package schedule

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule/internal/sequence"
)

// Codes of the findings that make a day infeasible for reasons of its dishes.
const (
	codeClash        = "clash"
	codeNoRoom       = "no-room"
	codeNeverArrives = "never-arrives"
)

// infeasible is the plan of a day that cannot be done: why, and no steps.
func (d *day) infeasible(a arrangement) Plan {
	p := d.blankPlan()
	p.Solution = solutionOf(a.solution)
	switch {
	case max(a.least, len(a.batches)) > mostBatches:
		d.find(Finding{Code: "too-many-batches", Severity: Danger, Text: fmt.Sprintf(
			"The menu makes %d loads of the grate and a day holds %d at the most: cook less, or smaller pieces at once.", max(a.least, len(a.batches)), mostBatches)})
	case a.solution.Status == sequence.Unknown:
		d.find(Finding{Code: "no-plan-found", Severity: Danger,
			Text: "No plan was found within the budget of the search, and none was ruled out. A shorter menu or looser times would help."})
	case a.solution.Clash != nil:
		d.find(d.clash(a))
	}
	for _, b := range a.batches {
		switch {
		case b.number > 1:
		case len(b.ways) == 0:
			d.find(d.neverArrives(b.it))
		case len(b.first) == 0 && len(a.problem.Chains) > 0:
			verb := "does"
			if b.it.dish.Count > 1 {
				verb = "do"
			}
			d.find(Finding{Code: codeNoRoom, Severity: Danger, Path: b.it.path("weight"), Dishes: []string{b.it.dish.ID}, Text: fmt.Sprintf(
				"%s %s not fit on the grate in any layout that cooks it.", b.it.dish.Name, verb)})
		}
	}
	p.Dishes = d.menu()
	p.Findings = nonNil(d.findings)
	p.Cautions = d.cautions(&p, nil)
	return p
}

// menu is what a plan says of its dishes before any of them is placed.
func (d *day) menu() []DishPlan {
	var all []DishPlan
	for _, it := range d.items {
		all = append(all, DishPlan{
			ID: it.dish.ID, Name: it.dish.Name, Cut: it.cut.Name, Count: it.dish.Count, ServeAt: d.at(float64(it.serve)),
			TargetC: it.targetC, Doneness: it.doneness, MinimumC: it.verdict.Minimum.CoreC, Batches: []Batch{},
		})
	}
	return all
}

// clash says which dishes clash over what.
func (d *day) clash(a arrangement) Finding {
	t := trouble{unproven: !a.solution.Clash.Minimal}
	for _, i := range a.solution.Clash.Chains {
		if id := a.batches[i].it.dish.ID; !slices.Contains(t.dishes, id) {
			t.dishes = append(t.dishes, id)
		}
	}
	for _, r := range a.solution.Clash.Rules {
		t.add(ruleWord(r))
	}
	return t.finding(d.req)
}

// trouble is a set of dishes that cannot be had together under some rules, and
// can without any one of them. Unproven says that the last was not shown.
type trouble struct {
	dishes   []string // ids
	rules    []string
	idle     []string // rules of the request without which it is as impossible
	unproven bool
	vague    bool // it is not known which of the rules it needs
}

func (t *trouble) add(rule string) {
	if !slices.Contains(t.rules, rule) {
		t.rules = append(t.rules, rule)
	}
}

// Words for the rules that a clash names.
const (
	ruleQuiet    = "quiet-hours"
	ruleEarliest = "earliest"
	ruleHands    = "hands"
	ruleHold     = "hold"
	ruleRoom     = "room"
	ruleFire     = "fire"
)

// ruleWord is the word for a rule of the solver. What may not come due in quiet
// hours, and a fire that must last them, are parts of one rule to a cook.
func ruleWord(r sequence.Rule) string {
	switch r {
	case sequence.RuleQuiet, sequence.RuleClosed:
		return ruleQuiet
	case sequence.RuleHands:
		return ruleHands
	case sequence.RuleEarliest:
		return ruleEarliest
	case sequence.RuleHold:
		return ruleHold
	case sequence.RuleCapacity:
		return ruleRoom
	}
	return ruleFire
}
