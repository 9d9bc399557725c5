package ahead

import (
	"context"

	"github.com/rickb777/date/clock"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// sleeper chooses how the night of one day is spent. A fire that burns unwatched is never
// chosen for its cost: what needs none comes first, unless the cook asks for one.
type sleeper struct {
	day    *day.Day
	effort Effort
	known  []schedule.Finding // of the day before anything is arranged
}

// Early are the hours at which the usual night may end, the latest first: cooks who
// start in the morning begin between 03:30 and 05:00 (common practice, no source).
func Early() []clock.Clock { return []clock.Clock{clock.New(4, 0, 0, 0), clock.New(3, 0, 0, 0)} }

// endingAt is the usual night with an end of its own.
func endingAt(to clock.Clock) []schedule.Quiet {
	hours := schedule.UsualQuiet()
	hours[0].To = to
	return hours
}

// said plans a day whose request says who sleeps when.
func (n *sleeper) said(ctx context.Context) (schedule.Plan, error) {
	d := n.asleep(n.day, false)
	a, err := d.Arrange(ctx)
	if err != nil || !had(a) || n.effort.FirstPlan {
		return n.answer(ctx, d, a, err)
	}
	p, err := d.Assemble(ctx, a)
	if err != nil || n.day.Req.Overnight && !d.Needless(&p) || len(d.Unwatched(p.Phases)) == 0 {
		return p, err
	}
	if q, ok, err := n.try(ctx, n.day, true); ok || err != nil {
		return q, err
	}
	return p, nil
}

// unsaid plans a day whose request says nothing of the night. A day that leaves the usual
// night alone by itself is the plan. Else the usual night is kept: nothing burns in it, it
// ends early, or the fire burns unwatched; and only if none of that works somebody is up.
func (n *sleeper) unsaid(ctx context.Context) (schedule.Plan, error) {
	usual := n.day.Asleep(schedule.UsualQuiet())
	awake := n.asleep(n.day.Asleep(nil), false)
	a, err := awake.Arrange(ctx)
	if err != nil || !had(a) || n.effort.FirstPlan {
		return n.answer(ctx, awake, a, err)
	}
	if !reachesInto(usual, a) {
		awake.Day = usual
		return awake.Assemble(ctx, a)
	}
	if !n.day.Req.Overnight {
		if p, ok, err := n.watched(ctx, usual); ok || err != nil {
			return p, err
		}
	}
	kept, ok, err := n.try(ctx, usual, false)
	if err == nil && !n.day.Req.Overnight {
		if p, early, err := n.early(ctx, (*sleeper).lessSure); err != nil || early && (!ok || p.Chance.All > kept.Chance.All-asSure) {
			return p, err
		}
	}
	if err != nil || ok && !(n.day.Req.Overnight && n.asleep(usual, false).Needless(&kept)) {
		return kept, err
	}
	if n.day.Req.Overnight {
		if p, ok, err := n.watched(ctx, usual); ok || err != nil {
			return p, err
		}
	}
	if ok {
		return kept, nil
	}
	return awake.Assemble(ctx, a)
}

// watched tries the ways that need no fire in the night.
func (n *sleeper) watched(ctx context.Context, usual *day.Day) (schedule.Plan, bool, error) {
	if p, ok, err := n.try(ctx, usual, true); ok || err != nil {
		return p, ok, err
	}
	return n.early(ctx, (*sleeper).upEarly)
}

// asSure is by how much a day that begins early may be less sure than one whose fire burns
// unwatched, and still be the plan (assumption).
const asSure = 0.05

// early tries days that begin before people are usually up, the latest first.
func (n *sleeper) early(ctx context.Context, up func(*sleeper, *day.Day) *assemble.Assembler) (schedule.Plan, bool, error) {
	for _, to := range Early() {
		if p, ok, err := n.tryOn(ctx, up(n, n.day.Asleep(endingAt(to)))); ok || err != nil {
			return p, ok, err
		}
	}
	return schedule.Plan{}, false, nil
}

// upEarly is a day that begins before people are usually up: nobody gets up at three to be
// less sure than was asked for.
func (n *sleeper) upEarly(asleep *day.Day) *assemble.Assembler {
	d := n.asleep(asleep, true)
	d.AsAsked = true
	return d
}

// lessSure is such a day that is less sure than was asked for, before a fire burns unwatched.
func (n *sleeper) lessSure(asleep *day.Day) *assemble.Assembler {
	d := n.asleep(asleep, true)
	d.Loose = true
	return d
}

// try plans a day with its quiet hours; false where it cannot be had so.
func (n *sleeper) try(ctx context.Context, asleep *day.Day, watched bool) (schedule.Plan, bool, error) {
	return n.tryOn(ctx, n.asleep(asleep, watched))
}

func (n *sleeper) tryOn(ctx context.Context, d *assemble.Assembler) (schedule.Plan, bool, error) {
	d.NoClash = true
	a, err := d.Arrange(ctx)
	if err != nil || !had(a) {
		return schedule.Plan{}, false, err
	}
	p, err := d.Assemble(ctx, a)
	return p, err == nil && p.Feasible && !(d.Watched && len(d.Unwatched(p.Phases)) > 0), err
}

func (n *sleeper) asleep(asleep *day.Day, watched bool) *assemble.Assembler {
	return assemble.New(&arrange.Arranger{Day: asleep, Effort: n.effort.Effort, Watched: watched}, n.known...)
}

// answer is the plan of an arrangement, for somebody who may ask only whether there is one.
func (n *sleeper) answer(ctx context.Context, d *assemble.Assembler, a arrange.Arrangement, err error) (schedule.Plan, error) {
	switch {
	case err != nil:
		return schedule.Plan{}, err
	case !had(a):
		return d.Infeasible(a), nil
	case n.effort.FirstPlan:
		return schedule.Plan{Feasible: true, Solution: assemble.SolutionOf(a.Solution)}, nil
	}
	return d.Assemble(ctx, a)
}

// Again arranges a day whose first plan spent the night in a way, as it was arranged then.
// A plan of an older edition does not say how: nobody slept unless the request said so.
func Again(ctx context.Context, d *day.Day, e arrange.Effort, night *schedule.Night) (*assemble.Assembler, arrange.Arrangement, error) {
	n := sleeper{day: d, effort: Effort{Effort: e}}
	calm := night != nil && (night.Way == schedule.NightDay || night.Way == schedule.NightOven)
	hours := Hours(d, night)
	if d.Req.Quiet == nil && calm {
		as := n.asleep(d.Asleep(nil), false)
		if a, err := as.Arrange(ctx); err != nil || !had(a) || !reachesInto(hours, a) {
			as.Day = hours
			return as, a, err
		}
		return n.again(ctx, hours, true)
	}
	if night != nil && night.Way == schedule.NightEarly {
		as := n.upEarly(hours)
		if a, err := as.Arrange(ctx); err != nil || had(a) {
			return as, a, err
		}
		as = n.lessSure(hours)
		a, err := as.Arrange(ctx)
		return as, a, err
	}
	as, a, err := n.again(ctx, hours, false)
	if err != nil || !had(a) || !calm || d.Req.Overnight || !reachesInto(hours, a) {
		return as, a, err
	}
	p, err := n.asleep(hours, false).Assemble(ctx, a)
	if err == nil && len(as.Unwatched(p.Phases)) > 0 {
		return n.again(ctx, hours, true)
	}
	return as, a, err
}

func (n *sleeper) again(ctx context.Context, hours *day.Day, watched bool) (*assemble.Assembler, arrange.Arrangement, error) {
	d := n.asleep(hours, watched)
	a, err := d.Arrange(ctx)
	return d, a, err
}

// Hours is a day with the quiet hours of its first plan.
func Hours(d *day.Day, night *schedule.Night) *day.Day {
	switch {
	case d.Req.Quiet != nil:
		return d
	case night != nil:
		return d.Asleep(night.Quiet)
	}
	return d.Asleep(nil)
}

// had says whether there is an arrangement.
func had(a arrange.Arrangement) bool {
	return a.Solution.Status != sequence.Infeasible && a.Solution.Status != sequence.Unknown
}

// reachesInto says whether what is arranged, from its first light to the last serving,
// touches quiet hours.
func reachesInto(asleep *day.Day, a arrange.Arrangement) bool {
	first := a.Solution.Light
	for _, chain := range a.Solution.Chains {
		for _, at := range chain {
			first = max(first, at.Start)
		}
	}
	for _, q := range asleep.Quiet {
		if q.From <= first {
			return true
		}
	}
	return false
}
