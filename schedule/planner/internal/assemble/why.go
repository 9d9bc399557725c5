package assemble

import (
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// whyStart says what holds the start of a stage where it is, for the cook: a stage that
// another follows at once is held by what holds that other.
func whyStart(a arrange.Arrangement, p *arrange.Placed, stage int) string {
	r, at := heldBy(p.Reasons, stage)
	text := reasonText(a, r)
	switch {
	case r.Kind == sequence.ZoneFull && r.Chain >= 0 && r.Chain < len(a.Batches) && a.Batches[r.Chain].It == p.It:
		return "after that its place on the grate belongs to the next batch"
	case at > stage && r.Kind == sequence.QuietHours:
		return "later would bring what follows into quiet hours"
	case at < stage:
		return "it follows the stage before at once: " + text
	}
	return text
}

// heldBy follows the start of a stage, over those of the same batch that are tied to
// it, to the reason that holds them all, and says at which stage that is.
func heldBy(reasons []sequence.Reason, stage int) (sequence.Reason, int) {
	for range reasons {
		r := reasons[stage]
		tied := r.Kind == sequence.NextTask || r.Kind == sequence.TaskBefore
		if !tied || r.Chain < 0 || r.Task < 0 || r.Task >= len(reasons) {
			break
		}
		stage = r.Task
	}
	return reasons[stage], stage
}

// reasonText is the constraint that holds a start, or the light, where it is.
func reasonText(a arrange.Arrangement, r sequence.Reason) string {
	other := "the fire"
	if r.Chain >= 0 && r.Chain < len(a.Batches) {
		other = a.Batches[r.Chain].It.Dish.Name
	}
	switch r.Kind {
	case sequence.ServeRest:
		return "any later and it would not be rested by serving"
	case sequence.NextTask:
		return "what follows cannot be any later"
	case sequence.TaskBefore:
		return "the stage before it cannot wait"
	case sequence.ZoneFull:
		return "afterwards its place on the grate belongs to " + other
	case sequence.FireNotReady:
		if r.Chain < 0 {
			return "any later and the fire after it would be late"
		}
		return "any later and the fire would not be ready for " + other
	case sequence.HandsBusy:
		return "afterwards your hands are busy with " + other
	case sequence.QuietHours:
		return "later would fall into quiet hours"
	case sequence.ClosedHours:
		return "later would bring its end, or its fire, into quiet hours"
	case sequence.FireIdle:
		return "later the fire, lit before then, would burn for nothing"
	case sequence.BatchOrder:
		return "batches go one after the other"
	}
	return "any later and dinner would be late"
}
