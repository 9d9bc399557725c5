package plans

import (
	"time"

	"example.com/cookday/schedule"
)

// tableAt is when everything is on the table: the last serving, also of what was
// only warmed in the oven.
func TableAt(p schedule.Plan) time.Time {
	last := p.ServeAt
	for _, s := range p.Steps {
		if s.Kind == schedule.StepServe && s.At.After(last) {
			last = s.At
		}
	}
	return last
}
