package schedule

import (
	"context"
	"fmt"
	"strings"
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
	asked  Request // as first planned
	base   *day
	first  Plan // its phases and steps
	firstA arrangement
	placed []*placed // as first planned

	log    []Entry
	now    time.Time
	asking *day // with what the log changed
	day    *day // the same, or served later if that cannot be met
	grate  grateHistory
	afoot  []*afoot

	hearth hearth
	phases int // phases begun by now
	moved  bool
	left   left
	try    try // by which the rest of the day could be arranged
}

func newRevision(ctx context.Context, p Plan, log []Entry, now time.Time) (*revision, error) {
	v := &revision{asked: p.Request}
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
	v.look()
	return v, nil
}

// plan makes the first plan again, as far as a revision needs it.
func (v *revision) plan(ctx context.Context, id string) error {
	r := v.asked.withDefaults()
	if faults := r.validate(); len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d, faults := resolve(r)
	if len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d.effort = effort{memo: memo{}}
	a, err := d.arrange(ctx)
	if err != nil {
		return err
	}
	if len(a.solution.Chains) == 0 {
		return &InputError{Faults: []Fault{{Sentence: "this plan cannot be done, so there is nothing to revise; take one of its remedies first"}}}
	}
	v.base, v.firstA, v.hearth = d, a, a.hearth
	v.placed = d.place(a)
	v.first = d.blankPlan()
	v.first.ID = id
	v.first.Phases = d.phases(a, v.placed)
	v.first.Steps = d.steps(&v.first, a, v.placed)
	v.first.Cautions = d.cautions(&v.first, v.placed)
	d.findings = nil
	return nil
}

// take checks the log and makes the day that it changed.
func (v *revision) take(log []Entry, now time.Time) error {
	faults := &faultList{}
	known := map[string]string{}
	for _, x := range v.base.req.Dishes {
		known[x.ID], known[strings.ToLower(x.Name)] = x.ID, x.ID
	}
	for i := range log {
		e := &log[i]
		path := itemPath("log", i)
		kind, ok := logKinds[e.Kind]
		if !ok {
			faults.addLine(path+".kind", e.Line, "%s is not known; there are %s", quoted(e.Kind), listed(kindNames(), "and"))
			continue
		}
		if e.Kind == LogDishAdded && e.Dish != "" {
			known[e.Dish] = e.Dish
		}
		if strings.EqualFold(e.Dish, "grill") {
			e.Dish = ""
		}
		if e.Dish != "" || kind.dish {
			id, ok := known[e.Dish]
			if !ok {
				id, ok = known[strings.ToLower(e.Dish)]
			}
			if !ok {
				faults.addLine(path+".dish", e.Line, "%s is no dish of this plan", quoted(e.Dish))
			}
			e.Dish = id
		}
		if e.At.After(now) {
			faults.addLine(path+".time", e.Line, "%s is after now, %s", instantIn(e.At, v.base.loc), instantIn(now, v.base.loc))
		}
		if e.C < coldestReadingC || e.C > hottestReadingC || e.C != e.C {
			faults.addLine(path+".temp_c", e.Line, "%v is no temperature of a cook day", e.C)
		}
		e.At = e.At.In(v.base.loc)
	}
	if err := faults.err(); err != nil {
		return err
	}
	v.log = joinLogs(nil, log)
	return v.amend()
}

func instantIn(t time.Time, loc *time.Location) string { return t.In(loc).Format("2006-01-02 15:04") }

// amend applies what the log says of the menu and of serving.
func (v *revision) amend() error {
	r := v.base.req
	r.Dishes = append([]Dish(nil), r.Dishes...)
	for i, e := range v.log {
		fault := func(sentence string) error {
			return &InputError{Faults: []Fault{{Path: itemPath("log", i) + ".value", Sentence: sentence}}}
		}
		switch e.Kind {
		case LogServingMoved:
			t, err := time.Parse(time.RFC3339, e.Value)
			if err != nil {
				return fault(quoted(e.Value) + " is no instant such as 2027-07-03T20:00:00-05:00")
			}
			moveServing(&r, e.Dish, clockOf(t.In(v.base.loc)))
			v.moved = true
		case LogDishAdded:
			dish, err := parseDish(e.Value)
			if err != nil {
				return fault(err.Error())
			}
			if e.Dish != "" {
				dish.ID = e.Dish
			}
			if !onMenu(r, dish.ID) {
				r.Dishes = append(r.Dishes, dish)
			}
		case LogDishCancelled:
			r.Dishes = withoutDish(r.Dishes, e.Dish)
		}
	}
	err := v.resolve(r)
	v.asking = v.day
	return err
}

func (v *revision) resolve(r Request) error {
	r = r.withDefaults()
	if faults := r.validate(); len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d, faults := resolve(r)
	if len(faults) > 0 {
		return &InputError{Faults: faults}
	}
	d.effort = v.base.effort
	v.day = d
	return nil
}

func moveServing(r *Request, id string, to Clock) {
	if id == "" {
		r.Serve.Date, r.Serve.Time = *to.Date, to.Time
		return
	}
	for i := range r.Dishes {
		if r.Dishes[i].ID == id {
			r.Dishes[i].Serve = &to
		}
	}
}

func onMenu(r Request, id string) bool {
	for _, x := range r.Dishes {
		if x.ID == id && id != "" {
			return true
		}
	}
	return false
}

// withoutDish leaves the last dish in: a plan of nothing is none.
func withoutDish(all []Dish, id string) []Dish {
	var out []Dish
	for _, x := range all {
		if x.ID != id {
			out = append(out, x)
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}

// revised arranges what is left and writes the plan.
func (v *revision) revised(ctx context.Context) (Plan, error) {
	left, err := v.arrangeLeft(ctx)
	if err != nil {
		return Plan{}, err
	}
	v.left = left
	p := v.write(left)
	if p.Remedies, err = v.advice(ctx, &p, left); err != nil {
		return Plan{}, err
	}
	p.Changes = v.changes(&p)
	return p, nil
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
