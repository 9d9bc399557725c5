package arrange

import (
	"example.com/cookday/schedule/planner/internal/day"
)

// chosenHold is how a batch waits, its open stand settled; false if it does not.
func (d *Arranger) ChosenHold(p *Placed) (day.HoldOption, bool) {
	if p.Hold < 0 {
		return day.HoldOption{}, false
	}
	return d.Vented(p, p.Options[p.Hold], p.LongestWait()), true
}

// longestWait is how long it may have to stay hot: done early, served late, or
// eaten after a journey.
func (p *Placed) LongestWait() float64 { return p.EarlyGap() + p.It.TravelMinutes() }
