package arrange

import (
	daypkg "example.com/cookday/schedule/planner/internal/day"
)

// chosenHold is how a batch waits, its open stand settled; false if it does not.
func DayChosenHold(d *daypkg.Day, p *Placed) (daypkg.HoldOption, bool) {
	if p.Hold < 0 {
		return daypkg.HoldOption{}, false
	}
	return DayVented(d, p, p.Options[p.Hold], p.LongestWait()), true
}

// longestWait is how long it may have to stay hot: done early, served late, or
// eaten after a journey.
func (p *Placed) LongestWait() float64 { return p.EarlyGap() + p.It.TravelMinutes() }
