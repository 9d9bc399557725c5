package export

import (
	"time"

	"example.com/cookday/schedule"
)

// likely are the stages of a batch on an ordinary day, which is the day that the steps
// tell of. As planned a stage lasts as long as a slow one may.
func likely(b schedule.Batch) []schedule.Stage {
	out := make([]schedule.Stage, 0, len(b.Stages))
	var end time.Time // of the stage before
	for k, s := range b.Stages {
		if !end.IsZero() && s.Kind != schedule.StageSear { // a sear waits for its fire
			s.From = end
		}
		if at, ok := endOf(b, k); ok {
			s.To = at
		}
		if s.To.Before(s.From) {
			s.To = s.From
		}
		end = s.To
		if s.To.After(s.From) {
			out = append(out, s)
		}
	}
	return out
}

// endOf is when a stage of a batch is expected to end; false where that is as planned.
func endOf(b schedule.Batch, k int) (time.Time, bool) {
	kind := schedule.MilestoneTakeOff
	switch s := b.Stages[k]; {
	case s.Kind == schedule.StageRest:
		kind = schedule.MilestoneRested
	case !onFire(s):
		return s.To, false
	case k+1 < len(b.Stages) && b.Stages[k+1].Kind == schedule.StageWrapped:
		kind = schedule.MilestoneWrap
	case k+1 < len(b.Stages) && b.Stages[k+1].Kind == schedule.StageSear:
		return earlier(s.To, s.From.Add(time.Duration(s.Minutes.Expected*float64(time.Minute)))), true
	}
	m, ok := b.Milestone(kind)
	return m.Window.Expected, ok
}

func earlier(a, b time.Time) time.Time {
	if b.Before(a) {
		return b
	}
	return a
}
