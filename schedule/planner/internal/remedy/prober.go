package remedy

import (
	"context"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/ahead"
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

// prober asks whether days can be had. It plans requests as planner.Make does, so that
// what it finds of a part of the menu is what a cook would find who asked for that
// part alone: with fires and loads of its own.
type prober struct {
	ctx    context.Context
	effort ahead.Effort // of the plan that is judged: its simulated cooks and its allowance
	left   int          // probes it may still make
	memory memory
	err    error
}

// verdict is what a prober says of a day.
type verdict int

const (
	unsure verdict = iota // the budget was too small
	can
	cannot
	faulty // the request has faults
)

func (j *prober) of(r schedule.Request) verdict { return j.within(r, probeBudget) }

// within is of with a budget of its own.
func (j *prober) within(r schedule.Request, nodes int) verdict {
	if j.left--; j.left < 0 || j.err != nil || j.effort.Allowance.Empty() {
		return unsure
	}
	q := question(r, j.effort.Lifted, nodes)
	v, ok := j.memory.recall(q)
	if !ok && j.err == nil {
		if v = j.ask(r, nodes); j.err == nil {
			j.memory.keep(q, v)
		}
	}
	return v
}

// ask plans a request far enough to know whether it can be had.
func (j *prober) ask(r schedule.Request, nodes int) verdict {
	e := j.effort
	e.Nodes, e.NoClash, e.FirstPlan = nodes, true, true
	p, err := ahead.Plan(j.ctx, r, e)
	_, bad := err.(*schedule.InputError)
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
