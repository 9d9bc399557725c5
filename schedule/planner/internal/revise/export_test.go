package revise

import (
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
)

// What the tests outside of the package need of its inside.

// LateWorth is by how much a chance may miss what was asked before it is said.
const LateWorth = lateWorth

// SameTime is what an option does that moves no take-off.
const SameTime = sameTime

// Moves says how much earlier or later something is, in the units of a request.
func Moves(r schedule.Request, minutes float64) string {
	v := &Revision{base: &assemble.Assembler{Arranger: &arrange.Arranger{Day: &day.Day{Req: r}}}}
	return v.moves(minutes)
}
