package schedule

import "context"

// What the tests outside of the package need of its inside.

// MakeCheaply is [Make] without remedies, with so many nodes for the solver.
func MakeCheaply(ctx context.Context, r Request, nodes int) (Plan, error) {
	return makePlan(ctx, r, effort{budget: nodes})
}
