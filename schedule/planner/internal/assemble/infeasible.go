package assemble

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// Infeasible is the plan of a day that cannot be done: why, and no steps.
func (d *Assembler) Infeasible(a arrange.Arrangement) schedule.Plan {
	p := d.BlankPlan()
	p.Solution = SolutionOf(a.Solution)
	switch {
	case max(a.Least, len(a.Batches)) > arrange.MostBatches:
		d.find("too-many-batches", "", nil, fmt.Sprintf(
			"The menu fills the grate %d times, and a day holds %d at most: cook less, or smaller pieces.", max(a.Least, len(a.Batches)), arrange.MostBatches))
	case a.Solution.Status == sequence.Unknown:
		d.find("no-plan-found", "", nil,
			"No plan was found within the budget of the search, and none was ruled out. A shorter menu or looser times would help.")
	case a.Solution.Clash != nil:
		d.findings.Add(d.clash(a))
	}
	for _, b := range a.Batches {
		switch {
		case b.Number > 1:
		case len(b.Ways) == 0:
			d.findings.Add(d.NeverArrives(b.It))
		case len(b.First) == 0 && len(a.Problem.Chains) > 0:
			d.find(schedule.CodeNoRoom, b.It.Path("weight"), b.It, fmt.Sprintf(
				"%s: no room on the grate in any layout that cooks it.", b.It.Dish.Name))
		}
	}
	p.Dishes = d.Menu()
	p.Findings = strict.NonNil([]schedule.Finding(d.findings))
	p.Cautions = d.Cautions(&p, nil)
	return p
}

// clash says which dishes clash over what.
func (d *Assembler) clash(a arrange.Arrangement) schedule.Finding {
	t := Trouble{Unproven: !a.Solution.Clash.Minimal}
	for _, i := range a.Solution.Clash.Chains {
		if id := a.Batches[i].It.Dish.ID; !slices.Contains(t.Dishes, id) {
			t.Dishes = append(t.Dishes, id)
		}
	}
	for _, r := range a.Solution.Clash.Rules {
		t.add(arrange.RuleWord(r))
	}
	return t.Finding(d.Req)
}
