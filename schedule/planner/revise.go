package planner

import (
	"context"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/revise"
)

// Revise is a plan while the day goes on: the first plan, a log of readings and
// events, and the time now give the plan as it stands. What lies before now is
// fixed, the rest is arranged again; Changes compares with the first plan,
// Findings say what the readings show, Remedies what could be done and by how
// much it moves the take-off (their edits are entries for the log).
//
// The answer depends on the first request, the whole log and now, and on nothing
// else: entries handed in one by one or all at once give the same plan. So p may be
// a revision itself: its Log and log are joined, what is in both counts once, and
// Changes still compares with the first plan. A plan that another edition of the
// model made is planned again with this one, which a finding says; one that was
// made with [NotBefore] wants that option here too, with the same instant.
//
// Faults of the log are an [*schedule.InputError]. A p that is infeasible can be
// followed too, for what cannot be had as asked may be on the fire all the same: then
// only what the log says was done.
func Revise(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, how ...Option) (schedule.Plan, error) {
	return reviseWith(ctx, p, log, now, optionsOf(how))
}

func reviseWith(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, o options) (schedule.Plan, error) {
	one := reviseOne
	if followsTwo(p) {
		one = reviseTwo
	}
	revised, err := one(ctx, p, log, now, o)
	return inOwnUnits(revised), err
}

// reviseOne follows a plan of one day, or the last of two.
func reviseOne(ctx context.Context, p schedule.Plan, log []schedule.Entry, now time.Time, o options) (schedule.Plan, error) {
	first := p.Request
	if p.Asked != nil {
		first = *p.Asked
	}
	if happened(first) { // planned as before its first entry
		log, o.notBefore = schedule.JoinLogs(first.Happened(), log), time.Time{}
	}
	b, err := boundBy(first, o.notBefore)
	if err != nil {
		return schedule.Plan{}, err
	}
	if !b.from.IsZero() { // the first plan is made again as it was made
		p.Request, p.Asked = b.planned, nil
	}
	v, err := revise.New(ctx, p, log, now, o.chill)
	if err != nil {
		return schedule.Plan{}, err
	}
	revised, err := v.Plan(ctx)
	if err != nil {
		return schedule.Plan{}, err
	}
	revised = b.undo(revised)
	if made := p.Provenance.Model; made != "" && made != revised.Provenance.Model {
		said := schedule.NewFinding("other-model", "provenance.model", "This plan was made by another edition of cookday, which worked times out differently. The times below are worked out anew: go by them, and by the thermometer.")
		revised.Findings = append([]schedule.Finding{said}, revised.Findings...)
	}
	if faults := o.judge(revised); len(faults) > 0 {
		if said := o.unsound(ctx, p, log, now, revised, faults); said.Code == schedule.OwnFault { // what is dangerous comes first
			revised.Findings = append(revised.Findings, said)
		} else {
			revised.Findings = append([]schedule.Finding{said}, revised.Findings...)
		}
	}
	return revised, nil
}
