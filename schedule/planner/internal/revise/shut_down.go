package revise

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// shutFor is how long a grill is told to be shut down after the last of its food left it, as
// the log says: longer than coals burn that nobody feeds (assumption).
const shutFor = 6 * time.Hour

// shutDown is when the log has the fire of a phase shut down: both vents shut, or the fire out, with nothing of it over it
// any more, before the next fire is made. Nothing else shows it: that its hour has passed shuts no vent.
func (v *Revision) shutDown(phase int) (time.Time, bool) {
	ended := phase < v.phases // what lies over a later fire keeps none of these
	if phase > v.phases || slices.ContainsFunc(v.batches, func(a *liveBatch) bool {
		return v.isOverFire(a) && (a.where == cooking && !ended || a.first == nil || a.first.Phases[0].First < phase)
	}) {
		return time.Time{}, false
	}
	last := v.now
	if ended {
		last = instant.Earlier(last, v.beginOf(phase).Add(-time.Nanosecond))
	}
	if _, _, s, is := ventsBy(v.log, last); is && !s.ended {
		return s.from, true
	}
	var out, lit time.Time
	for _, e := range v.log {
		switch {
		case e.At.After(last):
		case e.Kind == schedule.LogFireOut:
			out = e.At
		case e.Kind == schedule.LogLit:
			lit = e.At
		}
	}
	return out, lit.Before(out)
}

// beginOf is when phase k of the first plan, counted from 0, was made: as it was planned and moved, or as soon as something
// of it was on.
func (v *Revision) beginOf(k int) time.Time {
	from := v.first.Phases[k].SetupFrom.Add(v.lateOf(k))
	for _, a := range v.batches {
		if a.first != nil && a.on.logged && a.first.Phases[0].First >= k {
			from = instant.Earlier(from, a.on.at)
		}
	}
	return from
}

// fireLeft is when the last of the food left the fire, if that is so long ago that its vents
// are shut by now, or it burns for nobody.
func (v *Revision) fireLeft() (last time.Time, ok bool) {
	for _, a := range v.batches {
		switch {
		case v.isOverFire(a) || a.where == off && !a.off.logged && !a.oven.set:
			return last, false
		case a.oven.set:
			last = instant.Later(last, a.oven.at)
		default:
			last = instant.Later(last, a.off.at)
		}
	}
	return last, !last.IsZero() && v.now.Sub(last) > shutFor
}

// shutTold are the steps by which fires that are over were shut down, as the log tells: also of one that the rest of the day,
// as it is arranged now, makes into the next while it burns.
func (v *Revision) shutTold(p *schedule.Plan, l remainder) []schedule.Step {
	it := &assemble.Itinerary{D: v.day, Plan: p, A: l.a, Count: map[string]int{}}
	for k := range min(v.phases, len(p.Phases)) - 1 {
		if _, told := v.shutDown(k + 1); told {
			it.CloseDown(&p.Phases[k])
		}
	}
	return it.Steps
}
