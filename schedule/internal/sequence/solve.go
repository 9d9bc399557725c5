package sequence

import "context"

// Solve finds the plan of least cost, or as good a one as the budget allows, or
// proves that there is none. The error is ctx.Err() or a *ProblemError.
func Solve(ctx context.Context, p *Problem) (Solution, error) {
	if err := check(p); err != nil {
		return Solution{}, err
	}
	return Solution{Status: Unknown, Stopped: "search not written yet"}, ctx.Err()
}
