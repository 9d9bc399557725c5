package revise

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/spread"
)

// noteServing says that the plan is for a later hour, or counts with less.
func (v *Revision) noteServing(l remainder, add func(schedule.Finding)) {
	if v.attempt.aside && !v.attempt.alone {
		add(schedule.NewFinding("stands-in-the-way", "", "What is on the grate is not done in time for the rest to follow. The plan for the rest assumes it makes room now: into the oven, or to the side."))
	}
	switch {
	case v.attempt.later > 0:
		add(v.servedLater(l))
	case v.attempt.halfway && !v.anyLate(l): // else each dish says it, with its figures
		add(schedule.NewFinding("less-sure", "", fmt.Sprintf(
			"The odds for %s are %s, and you asked for more. See the chance of each dish.", v.clock(v.day.End), percent(l.chance()))))
	}
}

// anyLate says whether a dish has a finding of its own that it may be late.
func (v *Revision) anyLate(l remainder) bool {
	for i, a := range l.bound {
		if a.where == cooking && !a.condemned && v.lateness(a, l.all[i]) != "" || a.where == waiting && v.waitsLate(l.all[i]) {
			return true
		}
	}
	return false
}

// waitsWorth is by how much the chance of what is not on yet may miss what was asked before
// it is said: it could be arranged otherwise.
const waitsWorth = 0.003

// waitsLate says whether what is not on yet has less than the asked chance.
func (v *Revision) waitsLate(p *arrange.Placed) bool {
	return p.Readiness().Chance() < v.day.Req.Confidence-waitsWorth
}

// servedLater sets the asked hour beside the one that the plan is for now.
func (v *Revision) servedLater(l remainder) schedule.Finding {
	asked := v.askedEnd()
	odds := []string{v.oddsAt(l, asked), v.oddsAt(l, v.day.End)}
	if sure, ok := v.sureHour(); ok {
		odds = append(odds, v.oddsAt(l, sure))
	}
	text := fmt.Sprintf("At %s. The plan is for %s now.", strings.Join(odds, "; at "), v.clock(v.day.End))
	if !asked.After(v.now) { // no odds of an hour that has passed
		text = fmt.Sprintf("%s has passed. Ready at about %s now: %s.", v.clock(asked), v.clock(v.day.End), percent(l.chance()))
	}
	a := v.latest(l)
	if a == nil {
		return schedule.NewFinding("served-later", "", text)
	}
	text += fmt.Sprintf(" %s: %sexpected ready at %s.", a.batch.It.Dish.Name, v.inStall(a), v.foretold(v.readyAfter(a, false)))
	return schedule.NewFinding("served-later", "", text, a.batch.It.Dish.ID)
}

// oddsAt says the chance of all dishes together at an hour: "6:00 PM: 40%".
func (v *Revision) oddsAt(l remainder, at time.Time) string {
	chance := l.chance()
	if earlier := v.day.End.Sub(at); earlier != 0 {
		chance = v.chanceAsOf(l, int(math.Round(earlier.Minutes())))
	}
	return v.clock(at) + ": " + percent(chance)
}

// asExpected says whether dinner moved, by what is expected and not by the asked chance.
func (v *Revision) asExpected() bool { return v.attempt.halfway && v.attempt.later > 0 }

// sureHour is the hour that has the asked chance, where the plan is for an earlier one on the same
// day that is as likely as not.
func (v *Revision) sureHour() (time.Time, bool) {
	if !v.asExpected() {
		return time.Time{}, false
	}
	sure := v.day.End.Add(time.Duration(v.delay(true)) * time.Minute)
	return sure, sure.After(v.day.End) && !v.day.InQuiet(sure)
}

// askedEnd is the last serving before the day was moved to meet what is left of it.
func (v *Revision) askedEnd() time.Time {
	return v.day.End.Add(-time.Duration(v.attempt.later) * time.Minute)
}

// latest is the piece on the fire that keeps the meal waiting; nil where it is what is
// not on yet.
func (v *Revision) latest(l remainder) *liveBatch {
	var worst *liveBatch
	for _, a := range l.bound {
		if a.where != cooking || a.condemned || a.outOfReach() || !v.readyAfter(a, false).After(v.serve(a).Add(-time.Duration(v.attempt.later)*time.Minute)) {
			continue
		}
		if worst == nil || v.readyAfter(a, true).Sub(v.serve(a)) > v.readyAfter(worst, true).Sub(v.serve(worst)) {
			worst = a
		}
	}
	return worst
}

// chanceAsOf is the chance of all dishes together if they were served so many minutes
// earlier than they are.
func (v *Revision) chanceAsOf(l remainder, earlier int) float64 {
	var rs []spread.Readiness
	for i, p := range l.all {
		if l.bound[i].where == off || !l.counts(l.bound[i]) {
			continue
		}
		it, b := *p.It, *p.Batch
		it.Serve, b.It = it.Serve+earlier, &it
		sooner := arrange.Placed{Batch: &b, Way: p.Way, On: p.On, Wrap: p.Wrap}
		rs = append(rs, sooner.Readiness())
	}
	if slices.ContainsFunc(rs, func(r spread.Readiness) bool { return r.Chance() <= 0 }) {
		return 0
	}
	return plans.Round3(spread.ChanceOfAll(rs) * l.fit())
}

// percent is a chance as a cook says it.
func percent(chance float64) string {
	switch {
	case chance < 0.01:
		return "less than 1%"
	case chance > 0.99:
		return "over 99%"
	}
	return fmt.Sprintf("%.0f%%", 100*chance)
}
