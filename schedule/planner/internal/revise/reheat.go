package revise

import (
	"cmp"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/unit"
)

// reheatC is what brings back a hold that has fallen below its line, once, within the time that
// it may be there: 165 F (usda_danger_zone).
var reheatC = unit.FToC(165)

// reheatBy is by when a hold that was read below its line must be hot again, and since when it
// may have been below: from the earliest that it crossed the line, as such a piece cools. What
// cooled faster than that, or in an oven that failed, did so at any time since it was last
// known to be above.
func (v *Revision) reheatBy(a *liveBatch, p *arrange.Placed, cold safety.Sample) (by, since time.Time) {
	since = a.off.at
	if a.boxed.set {
		since = a.boxed.at
	}
	for _, e := range v.log {
		if e.Dish == a.batch.It.Dish.ID && e.Kind == schedule.LogOuter && e.C > safety.DangerHighC && e.At.After(since) && e.At.Sub(a.on.at).Minutes() < cold.Minute {
			since = e.At
		}
	}
	if p.Hold >= 0 && p.Options[p.Hold].Read && p.Options[p.Hold].Method != schedule.HoldOven {
		hot := a.off.at.Add(instant.Minutes(math.Max(p.Options[p.Hold].Hot, 0))).Truncate(time.Minute)
		if hot.Before(a.on.at.Add(instant.Minutes(cold.Minute))) {
			since = instant.Later(since, hot)
		}
	}
	return since.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC))), since
}

// reheated is the reading that shows that a hold which was read below its line was hot again in
// time; false where none does, or it has fallen again.
func (v *Revision) reheated(a *liveBatch, p *arrange.Placed, rule safety.HoldRule, samples []safety.Sample) (hot safety.Sample, ok bool) {
	var by time.Time
	for _, s := range samples {
		switch {
		case s.C < rule.LimitC && ok:
			return hot, false
		case s.C < rule.LimitC && by.IsZero():
			by, _ = v.reheatBy(a, p, s)
		case !by.IsZero() && !ok && s.C >= reheatC-sameC && !a.on.at.Add(instant.Minutes(s.Minute)).After(by):
			hot, ok = s, true
		}
	}
	return hot, ok
}

// withColdest are readings of a hold with those of the coldest place of all, in order.
func (v *Revision) withColdest(a *liveBatch, samples []safety.Sample) []safety.Sample {
	out := slices.Clone(samples)
	for _, e := range a.cores {
		if s := (safety.Sample{Minute: e.At.Sub(a.on.at).Minutes(), C: e.C}); e.Kind == schedule.LogColdest && !e.At.Before(a.off.at) && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b safety.Sample) int { return cmp.Compare(a.Minute, b.Minute) })
	return out
}
