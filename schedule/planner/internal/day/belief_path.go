package day

import (
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/belief"
)

// endsAs sets where a cook on the grate ends: before the sear, when it has been
// tender-hot for long enough, or at its target.
func JourneyEndsAs(c *belief.Journey, w Way, kind cut.Cut) {
	switch {
	case w.Sear:
		c.TargetC = w.WrapC
	case w.tenderS > 0:
		c.TargetC, c.TenderS = kind.TenderAboveC, w.tenderS
	default:
		c.TargetC = w.PullC
	}
}
