package revise

import (
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// rebuiltLasts is how long fresh coals need no more (common practice, no source).
const rebuiltLasts = 45 * time.Minute

// addAlways adds a fire beyond the number that a first plan is offered.
func addAlways(h *arrange.Hearth, g fire.Grill, f fire.Fire) {
	for _, o := range h.Fires {
		if o.Layout == f.Layout && math.Abs(o.LevelC-f.LevelC) < 1 {
			return
		}
	}
	fires, zones := h.Fires, h.Zones
	h.Fires = append(fires[:len(fires):len(fires)], f)
	h.Zones = append(zones[:len(zones):len(zones)], g.Zones(f))
}

// whileItBurns is the log without what was read of the grate while its fire was to be
// out, for a cold grate is no dead fire then; and without the lid where the plan has it off.
func (v *Revision) whileItBurns() []schedule.Entry {
	cold := func(e schedule.Entry) bool {
		if e.Kind == schedule.LogLidOpened || e.Kind == schedule.LogLidClosed {
			n := v.phaseAt(e.At)
			return n > 0 && v.first.Phases[n-1].LidOff
		}
		if e.Kind != schedule.LogGrate && e.Kind != schedule.LogGauge {
			return false
		}
		for k, ph := range v.first.Phases {
			if ph.Relit && e.At.After(v.first.Phases[k-1].To) && e.At.Before(ph.From) {
				return true
			}
		}
		return false
	}
	if !slices.ContainsFunc(v.log, cold) {
		return v.log
	}
	return slices.DeleteFunc(slices.Clone(v.log), cold)
}

// lights is the phase whose fire is lit at an instant: the one that is planned to be lit
// nearest to it; -1 where there is none.
func (v *Revision) lights(at time.Time) int {
	nearest := -1
	for k, ph := range v.first.Phases {
		if k > 0 && !ph.Relit {
			continue
		}
		if nearest < 0 || at.Sub(ph.SetupFrom).Abs() < at.Sub(v.first.Phases[nearest].SetupFrom).Abs() {
			nearest = k
		}
	}
	return nearest
}

// litEarly is by how much the first fire was lit earlier than planned: its coals are gray, and are
// poured, so much sooner.
func (v *Revision) litEarly() time.Duration {
	for _, e := range v.log {
		if v.onFireBy(e) {
			return 0
		}
		if e.Kind != schedule.LogLit || v.lights(e.At) != 0 {
			continue
		}
		if early := v.first.Phases[0].SetupFrom.Sub(e.At); early > 0 && early < 12*time.Hour {
			return early
		}
		return 0
	}
	return 0
}

// lateOf is by how much the fire of phase k was lit later than planned; below 0 where it was earlier.
func (v *Revision) lateOf(k int) time.Duration {
	if k == 0 {
		return v.litLate() - v.litEarly()
	}
	for _, at := range v.told(schedule.LogLit) {
		if v.first.Phases[k].Relit && v.lights(at) == k {
			return max(at.Sub(v.first.Phases[k].SetupFrom), v.first.Phases[k-1].To.Sub(v.first.Phases[k].SetupFrom))
		}
	}
	if late := v.lateOf(k - 1); !v.first.Phases[k].Relit && v.first.Phases[k-1].From.Add(late).After(v.first.Phases[k].SetupFrom) {
		return late // it is made of a fire that was not there yet
	}
	return 0
}

// begun finds the phases that have begun. A change of fire waits for food that
// must be off before it, if the log says that it is still on.
func (v *Revision) begun() {
	for k := range v.first.Phases {
		from := v.first.Phases[k].SetupFrom.Add(v.lateOf(k))
		if from.After(v.now) && !v.onIn(k) || v.loose && !v.onIn(k) && (k > 0 || len(v.told(schedule.LogLit)) == 0) {
			return
		}
		if k > 0 && !v.onIn(k) && (v.keeps(k-1) || v.allEatenBy(from)) {
			return
		}
		v.phases = k + 1
	}
}

// allEatenBy says whether all of the day was served by an instant: no fire is made after that.
func (v *Revision) allEatenBy(at time.Time) bool {
	return len(v.batches) > 0 && !slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return !a.served.set || a.served.at.After(at) })
}

// onIn says whether the log has put something on that belongs to phase k or later.
func (v *Revision) onIn(k int) bool {
	for _, a := range v.batches {
		if a.first != nil && a.on.logged && a.first.Phases[0].First >= k {
			return true
		}
	}
	return false
}

// keeps says whether something that cooks keeps the fire of phase k beyond its
// time: a piece that the log follows, and that is not off by it.
func (v *Revision) keeps(k int) bool {
	for _, a := range v.batches {
		if a.where != cooking || a.first == nil || a.first.Oven || len(a.cores)+len(a.stands) == 0 || a.isAside(v.first.Phases[k+1].SetupFrom) {
			continue
		}
		if last := a.first.Phases[a.first.Stages()-1].Last; last >= 0 && last <= k {
			return true
		}
	}
	return false
}

// isAside says whether the piece has been off the heat since an instant, and is.
func (a *liveBatch) isAside(since time.Time) bool {
	n := len(a.stands)
	return n > 0 && a.stands[n-1].open && !a.stands[n-1].from.After(since)
}

// fireNow is the fire that burns; before the first light, the one to be lit first.
func (v *Revision) fireNow() int {
	if len(v.firstA.Solution.Phases) == 0 {
		return 0
	}
	return v.firstA.Solution.Phases[max(v.phases-1, 0)].Fire
}

// plannedLevel is the level of the phase that was to burn at an instant.
func (v *Revision) plannedLevel(at time.Time) float64 {
	level := 0.0
	for i, ph := range v.first.Phases {
		if i == 0 || !ph.SetupFrom.After(at) {
			level = ph.LevelC
		}
	}
	return level
}

// readyAt is the minute at which the fire that burns, or is being made, is ready:
// now, or later if it is not yet.
func (v *Revision) readyAt() int {
	now := v.day.Minute(v.now)
	if v.phases == 0 {
		return now
	}
	from := v.first.Phases[v.phases-1].From.Add(v.lateOf(v.phases - 1))
	return max(min(now, v.day.Minute(from)), 0)
}

// burning is a chain that holds the fire that burns in its place until now.
func (v *Revision) burning(ready int) sequence.Chain {
	at := max(ready, 1)
	return sequence.Chain{Tasks: []sequence.Task{{
		StartHands: sequence.Unattended, EndHands: sequence.Unattended,
		Modes: []sequence.Mode{{
			Minutes: []int{1}, Places: []sequence.Place{{Fire: v.fireNow()}}, Closed: allBut(at), Gap: sequence.Gap{Max: sequence.NoLimit},
		}},
	}}}
}
