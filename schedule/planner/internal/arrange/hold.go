package arrange

import (
	"math"

	"example.com/cookday/schedule/planner/internal/day"
)

// longestHold is the longest any way of waiting lasts, less the travel; 0 if
// the dish has no hold.
func (d *Arranger) longestHold(b *Batch, w day.Way) float64 {
	longest := 0.0
	for _, o := range d.HoldOptions(b.It, w, b.Count) {
		longest = math.Max(longest, o.Minutes)
	}
	return math.Max(longest-b.It.TravelMinutes(), 0)
}

// setHold gives a batch its ways of waiting, and picks one that lasts so many minutes.
func (d *Arranger) SetHold(p *Placed, needed float64) {
	p.Options = d.HoldOptions(p.It, p.Way, p.Count)
	p.Hold, p.holdLong = chooseHold(p.Options, needed)
}

// chooseHold picks the gentlest way that lasts the minutes needed, else the
// longest; ok says whether it lasts.
func chooseHold(options []day.HoldOption, needed float64) (chosen int, ok bool) {
	chosen = -1
	for i, o := range options {
		if o.Minutes >= needed {
			return i, true
		}
		if chosen < 0 || o.Minutes > options[chosen].Minutes {
			chosen = i
		}
	}
	return chosen, false
}
