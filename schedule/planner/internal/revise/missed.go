package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
)

// asksFed is how long after its hour a feed is asked after.
const asksFed = 10 * time.Minute

// fedSince says whether a feed that was due at an instant is no more to be asked after: coals were logged about then or since, the
// grate was read in its band or above long after, people went to sleep over it, or nothing needs the fire. That its hour has passed
// feeds no fire. What is not asked after once is not later on either, but for what the log says: so none of it hangs on the hour alone.
func (v *Revision) fedSince(s schedule.Step) bool {
	if !v.fireNeeded() || v.burntOut(s.Phase) || v.sleptSince(s.At) || slices.ContainsFunc(v.fedAt(), func(at time.Time) bool { return at.After(s.At.Add(-fedAnyway)) }) {
		return true
	}
	return slices.ContainsFunc(v.grate.readings, func(g grateReading) bool {
		return !g.gauge && g.at.Sub(s.At) >= livesUnfed && g.c >= v.grate.levelAt(g.at, v.plannedLevel)-offLevelK
	})
}

// fireNeeded says whether something that may be served is on the fire, or to go on it, by what was done: what is to be carried
// into an oven by now may stay on the fire by the next reading.
func (v *Revision) fireNeeded() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return !a.condemned && v.isOverFire(a) })
}

// sleptSince says whether a night began since an instant: in the morning the grate is read first, and fed by that.
func (v *Revision) sleptSince(at time.Time) bool {
	return slices.ContainsFunc(v.day.QuietIntervals(), func(q schedule.Interval) bool { return q.From.After(at) && !q.From.After(v.now) })
}

// burntOut says whether a phase of the first plan is over, and nothing that was over it is still on: whatever goes on later does so
// over a fire made for it.
func (v *Revision) burntOut(phase int) bool {
	to := v.first.Phases[phase-1].To
	return !to.After(v.now) && !slices.ContainsFunc(v.batches, func(a *liveBatch) bool {
		return a.where == cooking && !v.isIndoors(a) && a.on.at.Before(to)
	})
}

// livesUnfed is how long after a feed was due a fire at its level tells that it had it (judgment).
const livesUnfed = time.Hour

// overdueFeeds makes feeds that are overdue no larger than what the rest of their fire burns, with the margin laid, less what is fed
// later: what was to be added hours ago was for those hours too.
func (v *Revision) overdueFeeds(p *schedule.Plan) {
	for k := range p.Phases {
		ph := &p.Phases[k]
		if ph.Burn == nil || !ph.To.After(v.now) || !ph.From.Before(v.now) {
			continue
		}
		fedKg := ph.Burn.LayKg
		for _, r := range ph.Burn.Refuels {
			fedKg += r.MassKg
		}
		perMinute, later := ph.Burn.MassKg*feedMargin/ph.To.Sub(ph.From).Minutes(), 0.0
		for j := len(ph.Burn.Refuels) - 1; j >= 0; j-- {
			r := &ph.Burn.Refuels[j]
			if r.Window.Expected.After(v.now) {
				later += r.MassKg
				continue
			}
			_, fed := v.fireFact(schedule.Step{ID: plans.StepID(p.ID, "", ph.Number, schedule.StepRefuel, j+1), Kind: schedule.StepRefuel})
			most := max(perMinute*ph.To.Sub(v.now).Minutes()-later, perMinute*livesUnfed.Minutes())
			most = max(most, ph.Burn.MassKg-(fedKg-r.MassKg)) // and the whole of it lasts, where food stays on longer
			if !fed && r.MassKg > most {
				fedKg -= r.MassKg - most
				r.Count, r.MassKg = int(math.Ceil(float64(r.Count)*most/r.MassKg)), most
			}
		}
	}
}

// feedMargin is by how much more is fed than is expected to burn, as it was laid (judgment).
const feedMargin = 1.3

// missedLook asks for a look at the fire where the last one was due, the log knows nothing of it, and the grate was read before and
// was not for long: what is on lies over a fire that nobody knows. The look that was missed stays where it was.
func (v *Revision) missedLook(steps []schedule.Step) []schedule.Step {
	if !v.anyCooking() || len(v.grate.readings) == 0 {
		return steps
	}
	if read := v.grate.readings[len(v.grate.readings)-1].at; v.now.Sub(read) < unreadFor || v.day.InQuiet(v.now) {
		return steps
	}
	missed := -1
	for i, s := range steps {
		if s.Kind == schedule.StepCheckFire && s.Done && s.Phase == v.phases && v.now.Sub(s.At) < unreadFor && (missed < 0 || s.At.After(steps[missed].At)) {
			missed = i
		}
	}
	if missed >= 0 {
		s := steps[missed]
		s.ID = plans.StepID(v.first.ID, "", 0, s.Kind, s.Phase) // one that the first plan knows nothing of
		s.Text = fmt.Sprintf("Read the grate and log it: nobody did since %s.", v.clock(v.grate.readings[len(v.grate.readings)-1].at))
		s.At, s.Window, s.Done = v.now, plans.FixedWindow(v.now), false
		steps = append(steps, s)
	}
	return steps
}

// unreadFor is how long nobody reads the grate of a fire before a missed look at it is asked for again (judgment).
const unreadFor = 2 * time.Hour
