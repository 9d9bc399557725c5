package schedule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule/internal/sequence"
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
			d.find(Finding{Code: "no-room", Severity: Danger, Path: b.it.path("weight"), Dishes: []string{b.it.dish.ID}, Text: fmt.Sprintf(
				"%s does not fit on the grate in any layout that cooks it.", b.it.dish.Name)})
		}
	}
	for _, it := range d.items {
		p.Dishes = append(p.Dishes, DishPlan{
			ID: it.dish.ID, Name: it.dish.Name, Cut: it.cut.Name, Count: it.dish.Count, ServeAt: d.at(float64(it.serve)),
			TargetC: it.targetC, Doneness: it.doneness, MinimumC: it.verdict.Minimum.CoreC, Batches: []Batch{},
		})
	}
	p.Findings = nonNil(d.findings)
	p.Cautions = d.cautions(&p, nil)
	return p
}

// clash says which dishes clash over what.
func (d *day) clash(a arrangement) Finding {
	c := a.solution.Clash
	f := Finding{Code: "clash", Severity: Danger}
	var names []string
	for _, i := range c.Chains {
		b := a.batches[i]
		if !slices.Contains(f.Dishes, b.it.dish.ID) {
			f.Dishes = append(f.Dishes, b.it.dish.ID)
			names = append(names, b.it.dish.Name)
		}
	}
	var rules []string
	for _, r := range c.Rules {
		rules = append(rules, ruleText(r))
	}
	verb := "cannot be had"
	if len(names) > 1 {
		verb = "cannot be had together"
	}
	f.Text = fmt.Sprintf("%s %s", listed(names, "and"), verb)
	f.Text += "."
	if len(rules) > 0 {
		f.Text += " What stands in the way: " + strings.Join(rules, "; ") + "."
	}
	return f
}

// ruleText says a rule of the solver as a cook would.
func ruleText(r sequence.Rule) string {
	switch r {
	case sequence.RuleQuiet:
		return "nobody tends anything in quiet hours"
	case sequence.RuleClosed:
		return "nothing comes due while nobody is up, and the fire lasts the night"
	case sequence.RuleHands:
		return "one pair of hands"
	case sequence.RuleEarliest:
		return "nothing starts before the earliest instant"
	case sequence.RuleHold:
		return "finished food waits no longer than it can be held"
	case sequence.RuleCapacity:
		return "the room on the grate"
	}
	return "one fire at a time, and the time it takes to change it"
}

// neverArrives is the finding of a dish that no fire on offer brings to its target.
func (d *day) neverArrives(it *item) Finding {
	return Finding{Code: "never-arrives", Severity: Danger, Path: it.path("level"), Dishes: []string{it.dish.ID}, Text: fmt.Sprintf(
		"%s will not get to %s on any fire that it may cook on: the air is too cool for that, and the meat stops short of it. Use a hotter grate or a lower target.",
		it.dish.Name, d.core(it.targetC))}
}
