package assemble

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	instantpkg "example.com/cookday/schedule/internal/instant"
	arrangepkg "example.com/cookday/schedule/planner/internal/arrange"
	daypkg "example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// infeasible is the plan of a day that cannot be done: why, and no steps.
func DayInfeasible(d *daypkg.Day, a arrangepkg.Arrangement) schedule.Plan {
	p := d.BlankPlan()
	p.Solution = SolutionOf(a.Solution)
	switch {
	case max(a.Least, len(a.Batches)) > arrangepkg.MostBatches:
		d.Find(schedule.Finding{Code: "too-many-batches", Severity: schedule.Danger, Text: fmt.Sprintf(
			"The menu makes %d loads of the grate and a day holds %d at the most: cook less, or smaller pieces at once.", max(a.Least, len(a.Batches)), arrangepkg.MostBatches)})
	case a.Solution.Status == sequence.Unknown:
		d.Find(schedule.Finding{Code: "no-plan-found", Severity: schedule.Danger,
			Text: "No plan was found within the budget of the search, and none was ruled out. A shorter menu or looser times would help."})
	case a.Solution.Clash != nil:
		d.Find(dayClash(d, a))
	}
	for _, b := range a.Batches {
		switch {
		case b.Number > 1:
		case len(b.Ways) == 0:
			d.Find(d.NeverArrives(b.It))
		case len(b.First) == 0 && len(a.Problem.Chains) > 0:
			verb := "does"
			if b.It.Dish.Count > 1 {
				verb = "do"
			}
			d.Find(schedule.Finding{Code: schedule.CodeNoRoom, Severity: schedule.Danger, Path: b.It.Path("weight"), Dishes: []string{b.It.Dish.ID}, Text: fmt.Sprintf(
				"%s %s not fit on the grate in any layout that cooks it.", b.It.Dish.Name, verb)})
		}
	}
	p.Dishes = d.Menu()
	p.Findings = instantpkg.NonNil(d.Findings)
	p.Cautions = DayCautions(d, &p, nil)
	return p
}

// clash says which dishes clash over what.
func dayClash(d *daypkg.Day, a arrangepkg.Arrangement) schedule.Finding {
	t := Trouble{Unproven: !a.Solution.Clash.Minimal}
	for _, i := range a.Solution.Clash.Chains {
		if id := a.Batches[i].It.Dish.ID; !slices.Contains(t.Dishes, id) {
			t.Dishes = append(t.Dishes, id)
		}
	}
	for _, r := range a.Solution.Clash.Rules {
		t.add(arrangepkg.RuleWord(r))
	}
	return t.Finding(d.Req)
}

// trouble is a set of dishes that cannot be had together under some rules, and
// can without any one of them. Unproven says that the last was not shown.
type Trouble struct {
	Dishes   []string // ids
	Rules    []string
	Idle     []string // rules of the request without which it is as impossible
	Unproven bool
	Vague    bool // it is not known which of the rules it needs
}

func (t *Trouble) add(rule string) {
	if !slices.Contains(t.Rules, rule) {
		t.Rules = append(t.Rules, rule)
	}
}
