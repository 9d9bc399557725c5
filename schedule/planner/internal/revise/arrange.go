package revise

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// remainder is the solved rest of the day.
type remainder struct {
	a     arrange.Arrangement // the whole day: what is past, what cooks, what waits
	all   []*arrange.Placed
	bound []*liveBatch // of each placed

	stacked bool // every piece has its grate where there are several
}

// arrangeLeft solves the rest of the day.
func (v *Revision) arrangeLeft(ctx context.Context) (remainder, error) {
	asked := v.day
	if err := v.tooLong(); err != nil {
		return remainder{}, err
	}
	for _, t := range v.attempts() {
		v.attempt = t
		if err := v.serveLater(asked, t.later); err != nil {
			return remainder{}, err
		}
		if !v.now.Before(v.day.End) && v.unserved() || !t.forced && v.tooLateToRest() {
			continue
		}
		l, ok, err := v.try(ctx)
		if err != nil || ok {
			return l, err
		}
	}
	if l, ok, err := v.withoutWaiting(ctx, asked); err != nil || ok {
		return l, err
	}
	return remainder{}, &schedule.InputError{Faults: []schedule.Fault{{Sentence: "what is left of this day cannot be arranged, even if it is served eight hours later; make a new plan for the dishes that are not on yet"}}}
}

// tooLong refuses to go on with a meal that was to be eaten more than a day ago, of which
// something never came off the fire or never went on, for all that the log says: no fire burns
// for so long, and what lay without heat since is another day's caution.
func (v *Revision) tooLong() error {
	if v.now.Sub(v.asking.End).Minutes() <= longestWait || !v.unserved() {
		return nil
	}
	var names []string
	for _, a := range v.batches {
		if name := a.batch.It.Dish.Name; a.where != off && !a.condemned && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return &schedule.InputError{Faults: []schedule.Fault{{Path: "log", Sentence: fmt.Sprintf(
		"dinner was to be at %s, more than a day ago, and nothing says that it was eaten: %s. Log what was done (off, boxed, served, cancelled), or move the meal (serve at), or make a new plan; do not eat what lay without heat since", v.clock(v.asking.End), say.Listed(names, "and"))}}}
}

// try solves what is left; where pieces cannot be parted among grates one above another,
// what is not on yet goes on the lowest.
func (v *Revision) try(ctx context.Context) (l remainder, ok bool, err error) {
	for {
		s, p, order, err := v.solve(ctx)
		if err != nil || s.Status != sequence.Optimal && s.Status != sequence.Feasible {
			return remainder{}, false, err
		}
		if l, err = v.join(ctx, s, p, order); err != nil || l.stacked || v.hearth.Levels <= 1 {
			return l, true, err
		}
		v.hearth.Levels = 1
	}
}

// counted is the way of a batch at the chance that the try counts with.
func (v *Revision) counted(a *liveBatch, w day.Way) day.Way {
	if v.attempt.halfway && (a.where == cooking || v.attempt.all) {
		w.First.Planned, w.Second.Planned, w.Slack = w.First.Expected, w.Second.Expected, 0
		w.InOven.Planned = w.InOven.Expected
	}
	return w
}

// unserved says whether something that may be served is still waiting or cooking.
func (v *Revision) unserved() bool {
	for _, a := range v.batches {
		if a.where != off && !a.condemned {
			return true
		}
	}
	return false
}

// serveLater moves all serving instants of the day but those of what has been served.
func (v *Revision) serveLater(asked *assemble.Assembler, byMinutes int) error {
	if byMinutes == 0 {
		return nil
	}
	by := time.Duration(byMinutes) * time.Minute
	r := plans.CopyRequest(asked.Req)
	at := day.ClockOf(asked.Clock(nil).Add(by))
	if r.Serve.Date != *at.Date {
		r = r.Dated()
	}
	r.Serve.Date, r.Serve.Time = *at.Date, at.Time
	for i := range r.Dishes {
		if s := r.Dishes[i].Serve; s != nil && (asked.Clock(s).After(v.now) || v.awaited(r.Dishes[i].ID)) {
			at := day.ClockOf(asked.Clock(s).Add(by))
			r.Dishes[i].Serve = &at
		}
	}
	if err := v.resolve(r); err != nil {
		return err
	}
	v.rebind()
	return nil
}

// awaited says whether some of a dish is not off the fire yet.
func (v *Revision) awaited(id string) bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.batch.It.Dish.ID == id && a.where != off })
}

// rebind gives the batches the items of the day as it is now.
func (v *Revision) rebind() {
	for _, a := range v.batches {
		for i := range v.day.Items {
			if v.day.Items[i].Dish.ID == a.batch.It.Dish.ID {
				b := *a.batch
				b.It = &v.day.Items[i]
				a.batch = &b
			}
		}
	}
}

// solve states and solves what is left. The order says which batch a chain is.
func (v *Revision) solve(ctx context.Context) (sequence.Solution, sequence.Problem, []*liveBatch, error) {
	var order []*liveBatch
	var open []*arrange.Batch
	for _, a := range v.batches {
		if a.where == waiting {
			b := *a.batch
			b.Ways = append([]day.Way(nil), b.Ways...)
			for i := range b.Ways {
				b.Ways[i] = v.counted(a, b.Ways[i])
			}
			a.open = &b
			order, open = append(order, a), append(open, a.open)
		}
	}
	now := v.day.Minute(v.now)
	p, err := v.stated.Problem(ctx, v.day.Arranger, v.hearth, open)
	if err != nil {
		return sequence.Solution{}, p, order, err
	}
	if slices.ContainsFunc(open, func(b *arrange.Batch) bool { return len(b.First) == 0 }) { // it has no place on these fires
		return sequence.Solution{Status: sequence.Infeasible}, p, order, nil
	}
	p.NoClash, p.Earliest = true, min(v.day.Earliest, now)
	p.Quiet = nil
	for _, q := range v.day.Quiet {
		if q.From <= now {
			p.Quiet = append(p.Quiet, sequence.Span{From: q.From, To: min(q.To, now+1)})
		}
	}
	if v.phases > 0 {
		for i := range p.Fires { // it burns already
			p.Fires[i].LightClosed = nil
		}
	}
	ready := v.readyAt()
	for i := range p.Chains {
		for m := range p.Chains[i].Tasks[0].Modes {
			mode := &p.Chains[i].Tasks[0].Modes[m]
			mode.Closed = append(mode.Closed[:len(mode.Closed):len(mode.Closed)], sequence.Span{From: min(now, ready) + 1, To: forever})
		}
	}
	if len(p.Ovens) == 0 { // an oven that the request does not have, and the cook found
		p.Ovens = []int{forever}
	}
	for _, a := range v.batches {
		if a.where == cooking {
			order = append(order, a)
			p.Chains = append(p.Chains, v.liveChain(a, now))
		}
	}
	v.squeeze(&p, len(open))
	if v.phases > 0 {
		p.Chains = append(p.Chains, v.burning(ready))
		earliest := ready
		for _, a := range order {
			if a.where == cooking {
				earliest = max(earliest, v.day.Minute(a.on.at))
			}
		}
		p.Earliest = max(p.Earliest, earliest+p.Fires[v.fireNow()].Setup+arrange.HandsLight)
	}
	if len(p.Chains) == 0 {
		return sequence.Solution{Status: sequence.Optimal, Light: -1}, p, order, nil
	}
	s, err := v.day.Search(ctx, &p)
	return s, p, order, err
}

// forever is earlier than any instant of a day.
const forever = 1 << 20

func allBut(u int) []sequence.Span {
	return []sequence.Span{{From: -forever, To: u}, {From: u + 1, To: forever}}
}
