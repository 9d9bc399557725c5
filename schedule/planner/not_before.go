package planner

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/rickb777/date"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/ahead"
	"example.com/cookday/schedule/planner/internal/day"
)

// NotBefore lets nothing start before an instant, which the caller's clock may give: a
// plan that begins this morning is of no use this afternoon. The request stays as it was
// asked, and so does the id of its plan. A day whose last meal is served by then is an
// [*schedule.InputError].
func NotBefore(now time.Time) Option { return func(o *options) { o.notBefore = now } }

// bound is a request that may not begin before an instant.
type bound struct {
	asked   schedule.Request // with its defaults
	planned schedule.Request // what is planned in its place
	from    time.Time        // zero if the asked request begins later by itself
}

// boundBy is the request under the options. Faults of the request itself are left for
// the planner to tell.
func boundBy(r schedule.Request, now time.Time) (bound, error) {
	b := bound{asked: r, planned: r}
	if now.IsZero() {
		return b, nil
	}
	full := r.WithDefaults()
	loc, err := full.Location()
	if err != nil || len(full.Validate()) > 0 {
		return b, nil
	}
	last := day.ClockIn(full, nil, loc)
	for _, dish := range full.Dishes {
		if at := day.ClockIn(full, dish.Serve, loc); at.After(last) {
			last = at
		}
	}
	if !now.Before(last) {
		return b, &schedule.InputError{Faults: []schedule.Fault{{Path: "serve", Sentence: "the meal at " + said(last) + " is past, it is " + said(now.In(loc)) + "; give a time to come"}}}
	}
	from := plain(now.In(loc))
	if !from.Before(last) { // less than a minute is left: nothing can be done in one
		from = last.Add(-time.Minute)
	}
	if last.Sub(from) > schedule.Horizon || full.Earliest != nil && !day.ClockIn(full, full.Earliest, loc).Before(from) {
		return b, nil
	}
	c := day.ClockOf(from)
	b.from, b.planned = from, full
	b.planned.Earliest = &c
	b.planned.ID = plans.ID(full, plans.Hash(full)) // steps take their ids from it
	return b, nil
}

func said(t time.Time) string { return t.Format("2006-01-02 15:04") }

// plain is the next whole minute that its clock alone tells: in the hour that comes
// twice when clocks go back, the end of that hour.
func plain(t time.Time) time.Time {
	at := t.Truncate(time.Minute)
	if at.Before(t) {
		at = at.Add(time.Minute)
	}
	for twice(at) {
		at = at.Add(time.Minute)
	}
	return at
}

// twice says whether another instant has the same clock: clocks go back by an hour, on
// one island by half of one.
func twice(t time.Time) bool {
	for _, by := range []time.Duration{-time.Hour, -time.Hour / 2, time.Hour / 2, time.Hour} {
		if said(t.Add(by)) == said(t) {
			return true
		}
	}
	return false
}

// undo puts the request that was asked back into a plan of the other one.
func (b bound) undo(p schedule.Plan) schedule.Plan {
	if b.from.IsZero() {
		return p
	}
	p.Request.Earliest, p.Request.ID = b.asked.Earliest, b.asked.ID
	p.Provenance.RequestHash = plans.Hash(p.Request)
	for _, r := range []*schedule.Request{p.Asked, aheadOf(p.Ahead)} {
		if r != nil {
			r.Earliest, r.ID = b.asked.Earliest, b.asked.ID
		}
	}
	p.Findings = slices.Clone(p.Findings)
	for i, f := range p.Findings {
		if f.Path == "earliest" && b.asked.Earliest == nil {
			p.Findings[i].Path = ""
		}
	}
	return p
}

func aheadOf(a *schedule.Ahead) *schedule.Request {
	if a == nil {
		return nil
	}
	return &a.Request
}

// inTime leaves out the remedies that would have begun before the instant. Where none
// is left of a day that cannot be had, the same meal a day or two later is tried.
func (b bound) inTime(ctx context.Context, p schedule.Plan, e ahead.Effort) (schedule.Plan, error) {
	if b.from.IsZero() {
		return p, nil
	}
	p.Remedies = slices.DeleteFunc(slices.Clone(p.Remedies), b.tooLate)
	if p.Feasible || len(p.Remedies) > 0 {
		return p, nil
	}
	for days := 1; days <= mostDaysLater; days++ {
		r, ok, err := b.another(ctx, p, days, e)
		if err != nil {
			return p, err
		}
		if ok {
			p.Remedies = append(p.Remedies, r)
			return p, nil
		}
	}
	if !slices.ContainsFunc(p.Findings, func(f schedule.Finding) bool { return f.Code == schedule.CodeNoRemedy }) {
		p.Findings = append(p.Findings, schedule.NewFinding(schedule.CodeNoRemedy, "", "Nothing was found that begins now and makes this day work."))
	}
	return p, nil
}

// mostDaysLater is how far a meal is moved: plans begin two days ahead at most.
const mostDaysLater = 2

// another is the same meal so many days later as a remedy.
func (b bound) another(ctx context.Context, p schedule.Plan, days int, e ahead.Effort) (schedule.Remedy, bool, error) {
	serve := b.planned.Serve
	serve.Date = serve.Date.Add(date.PeriodOfDays(days))
	r := b.planned
	r.Serve = serve
	q, err := ahead.Plan(ctx, r, e)
	var input *schedule.InputError
	if errors.As(err, &input) { // other clocks of the request have dates of their own
		return schedule.Remedy{}, false, nil
	}
	if err != nil || !q.Feasible {
		return schedule.Remedy{}, false, err
	}
	m := schedule.Remedy{
		Code: "later", Text: fmt.Sprintf("Serve on %s at %s.", q.ServeAt.Format("Monday"), say.TimeOfDay(q.Request.Units, serve.Time)), Price: "a day later",
		Edits: []schedule.Edit{schedule.NewEdit("serve", serve)}, LightAt: q.LightAt, ServeAt: q.ServeAt, Chance: q.Chance.All, Cost: q.Solution.Objective,
	}
	if days > 1 {
		m.Price = fmt.Sprintf("%d days later", days)
	}
	if len(p.Findings) > 0 {
		m.For = p.Findings[0].Code
	}
	return m, true, nil
}

// tooLate says whether a remedy would have begun before the instant.
func (b bound) tooLate(r schedule.Remedy) bool {
	if r.LightAt != nil && r.LightAt.Before(b.from) {
		return true
	}
	for _, e := range r.Edits {
		var c schedule.Clock
		if e.Path != "earliest" && !strings.HasSuffix(e.Path, ".earliest") || json.Unmarshal([]byte(e.Value), &c) != nil {
			continue
		}
		if day.ClockIn(b.planned, &c, b.from.Location()).Before(b.from) {
			return true
		}
	}
	return false
}

// fault says a fault of the field that the cook never wrote in other words.
func (b bound) fault(err error) error {
	var input *schedule.InputError
	if b.from.IsZero() || !errors.As(err, &input) {
		return err
	}
	faults := slices.Clone(input.Faults)
	for i, f := range faults {
		if f.Path == "earliest" {
			faults[i] = schedule.Fault{Path: "serve", Sentence: "it is " + said(b.from) + ", too late for what is to be ready the day before; leave ready out, or give another day"}
		}
	}
	return &schedule.InputError{Faults: faults}
}
