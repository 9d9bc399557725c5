package schedule

import (
	"context"
	"fmt"
	"slices"
	"time"
)

// Revise is a plan while the day goes on: the first plan, a log of readings and
// events, and the time now give the plan as it stands. What lies before now is
// fixed, the rest is arranged again; Changes compares with the first plan,
// Findings say what the readings show, Remedies what could be done and by how
// much it moves the take-off (their edits are entries of a log).
//
// The answer depends on the first request, the whole log and now, and on nothing
// else: entries handed in one by one or all at once give the same plan. Faults
// of the log are an *[InputError]; so is a plan that cannot be done.
func Revise(ctx context.Context, p Plan, log []Entry, now time.Time) (Plan, error) {
	v, err := newRevision(ctx, p, log, now)
	if err != nil {
		return Plan{}, err
	}
	return v.revised(ctx)
}

// revision is one day at one instant.
type revision struct {
	asked   Request // as first planned
	ahead   *Ahead  // what is cooked the day before, as first planned; nil for nothing
	base    *day
	first   Plan   // its phases and steps, moved along with serving
	planned []Step // its steps as first planned
	firstA  arrangement
	placed  []*placed // as first planned

	log    []Entry
	now    time.Time
	asking *day // with what the log changed
	day    *day // the same, or served later if that cannot be met
	grate  grateHistory
	afoot  []*afoot
	called []*afoot // called off: what was done with them stays

	hearth hearth
	phases int // phases begun by now
	moved  bool
	left   left
	try    try // by which the rest of the day could be arranged
}

func newRevision(ctx context.Context, p Plan, log []Entry, now time.Time) (*revision, error) {
	v := &revision{asked: p.Request, ahead: p.Ahead}
	if p.Asked != nil {
		v.asked = *p.Asked
	}
	if err := v.plan(ctx, p.ID); err != nil {
		return nil, err
	}
	v.now = now.In(v.base.loc).Truncate(time.Minute)
	if err := v.take(joinLogs(p.Log, log), now); err != nil {
		return nil, err
	}
	v.planned = slices.Clone(v.first.Steps)
	v.followMoves()
	return v, v.look(ctx)
}

// plan makes the first plan again, as far as a revision needs it.
func (v *revision) plan(ctx context.Context, id string) error {
	r := v.asked.withDefaults()
	loc, err := r.Location()
	if err != nil {
		loc = nil // validation says it
	}
	if faults := r.validateIn(loc); len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d, faults := resolveIn(r, loc)
	if len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d.effort = effort{memo: newMemo(), purse: &purse{fullPurse}}
	a, err := d.arrange(ctx)
	if err != nil {
		return err
	}
	if len(a.solution.Chains) == 0 {
		return &InputError{Faults: []Fault{{Sentence: "this plan cannot be done, so there is nothing to revise; take one of its remedies first"}}}
	}
	if v.placed, err = d.place(ctx, a); err != nil {
		return err
	}
	d.rekindle(&a, v.placed, 0, ever)
	v.base, v.firstA, v.hearth = d, a, a.hearth
	v.first = d.blankPlan()
	v.first.ID, v.first.Feasible = id, true
	v.first.Phases = d.phases(a, v.placed)
	v.first.Steps = d.steps(&v.first, a, v.placed)
	v.first.Cautions = d.cautions(&v.first, v.placed)
	d.findings = nil
	return nil
}

// revised arranges what is left and writes the plan.
func (v *revision) revised(ctx context.Context) (Plan, error) {
	left, err := v.arrangeLeft(ctx)
	if err != nil {
		return Plan{}, err
	}
	v.left = left
	p, err := v.write(ctx, left)
	if err != nil {
		return Plan{}, err
	}
	if p.Remedies, err = v.advice(ctx, &p, left); err != nil {
		return Plan{}, err
	}
	p.Changes = v.changes(&p)
	if v.ahead == nil {
		return p, nil
	}
	return v.withAhead(ctx, p)
}

// clock is an instant as a text of the plan says it.
func (v *revision) clock(t time.Time) string {
	t = t.In(v.base.loc)
	if t.YearDay() != v.now.YearDay() {
		return t.Format("Mon 15:04")
	}
	return t.Format("15:04")
}

func (v *revision) span(minutes float64) string {
	if minutes < 0 {
		minutes = -minutes
	}
	return v.base.about(minutes)
}

func earlierLater(minutes float64) string {
	if minutes < 0 {
		return "earlier"
	}
	return "later"
}

// moves says "1 h 50 min earlier".
func (v *revision) moves(minutes float64) string {
	return fmt.Sprintf("%s %s", v.span(minutes), earlierLater(minutes))
}
