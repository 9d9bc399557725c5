package api

import (
	"context"
	"encoding/json"
	"errors"
	"math"
	"net/http"
	"time"

	"example.com/cookday/schedule"
)

// state is a plan as a change finds it.
type state struct {
	record Record
	kept   Revision
	plan   schedule.Plan
	rows   int // of its log, withdrawals among them
	log    []logged
}

// draft is what a change leads to.
type draft struct {
	plan  schedule.Plan
	rows  [][]byte // for the log
	facts Facts
}

// mostTries is how often a change is made up anew when another process was faster.
const mostTries = 20

// change makes the next revision of a plan. The work gets the plan as it stands and
// gives what it leads to, nil for nothing new; it is done again if somebody else revised
// the plan meanwhile, unless the call was meant for one revision only.
//
// match says whether the change is meant for the newest revision.
func (s *Service) change(ctx context.Context, match func(newest int) error, id string, work func(ctx context.Context, st *state) (*draft, error)) (Revision, *schedule.Plan, error) {
	unlock, err := s.locks.lock(ctx, id)
	if err != nil {
		return Revision{}, nil, err
	}
	defer unlock()
	for try := 1; ; try++ {
		kept, p, err := s.changeOnce(ctx, match, id, work)
		if errors.Is(err, ErrConflict) && try < mostTries {
			continue // with If-Match the next try says that the plan is at another revision
		}
		return kept, p, err
	}
}

func (s *Service) changeOnce(ctx context.Context, match func(newest int) error, id string, work func(context.Context, *state) (*draft, error)) (Revision, *schedule.Plan, error) {
	st, err := s.stateOf(ctx, id)
	if err != nil {
		return Revision{}, nil, err
	}
	if err := match(st.kept.Number); err != nil {
		return Revision{}, nil, err
	}
	d, err := work(ctx, st)
	if err != nil || d == nil {
		return st.kept, nil, err
	}
	d.plan.ID, d.plan.Revision = id, st.kept.Number+1 // the store counts: a revision a change
	next, err := s.revision(&d.plan, st.kept.At)
	if err != nil {
		return Revision{}, nil, err
	}
	if err := s.cfg.Store.Append(ctx, id, d.rows, next, factsOf(&d.plan, d.facts)); err != nil {
		return Revision{}, nil, err
	}
	s.scores.revised(id, newAgenda(&d.plan, next.At))
	return next, &d.plan, nil
}

func (s *Service) stateOf(ctx context.Context, id string) (*state, error) {
	st := &state{}
	var err error
	if st.record, err = s.cfg.Store.Plan(ctx, id); err != nil {
		return nil, err
	}
	if st.kept, err = s.cfg.Store.Newest(ctx, id); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(st.kept.JSON, &st.plan); err != nil {
		return nil, err
	}
	rows, err := s.cfg.Store.Readings(ctx, id)
	if err != nil {
		return nil, err
	}
	st.rows = len(rows)
	st.log, err = logOf(rows)
	return st, err
}

// answerChange answers with the revision that a change has led to.
func (s *Service) answerChange(c *call, id string, f format, work func(context.Context, *state) (*draft, error)) error {
	kept, p, err := s.change(c.r.Context(), c.match, id, work)
	if err != nil {
		return err
	}
	defer s.bell.ring(id)
	c.header().Set(headerLocation, planPath(id))
	err = s.sendRevision(c, http.StatusOK, kept, p, f)
	c.flush() // those who listen must not keep the one who waits waiting
	return err
}

// revision makes a plan ready to be kept. Its instant is never before that of the
// revision before, whatever the clock does: streams go by their order.
func (s *Service) revision(p *schedule.Plan, before time.Time) (Revision, error) {
	roundCurves(p)
	text, err := encoded(p)
	at := s.now()
	if at.Before(before) {
		at = before
	}
	return Revision{Number: p.Revision, At: at, JSON: text}, err
}

// roundCurves gives curves to a thousandth of a degree: more digits say nothing, and
// they are most of what differs between two revisions.
func roundCurves(p *schedule.Plan) {
	round := func(all ...*float64) {
		for _, v := range all {
			*v = math.Round(*v*1000) / 1000
		}
	}
	for i := range p.Dishes {
		for j := range p.Dishes[i].Batches {
			for k := range p.Dishes[i].Batches[j].Curve {
				at := &p.Dishes[i].Batches[j].Curve[k]
				round(&at.CoreC, &at.LowC, &at.HighC)
			}
		}
		for j := range p.Dishes[i].Holds {
			for k := range p.Dishes[i].Holds[j].Course {
				at := &p.Dishes[i].Holds[j].Course[k]
				round(&at.CoreC, &at.OuterC, &at.LowC)
			}
		}
	}
}

// factsOf are the facts of a plan; what only the caller knows stays.
func factsOf(p *schedule.Plan, f Facts) Facts {
	f.Name, f.Feasible, f.Serve = p.Name, p.Feasible, p.ServeAt
	if p.Ahead != nil && p.Ahead.Plan == nil { // of the day before; the table is another day
		r := p.Ahead.Request
		if loc, err := r.Location(); err == nil {
			y, m, d := r.Serve.Date.Date()
			f.Serve = time.Date(y, m, d, r.Serve.Time.Hours(), r.Serve.Time.Minutes(), 0, 0, loc)
		}
	}
	return f
}

// askedOf is the request that a plan was made of.
func askedOf(p *schedule.Plan) schedule.Request {
	switch {
	case p.Ahead != nil:
		return p.Ahead.Request
	case p.Asked != nil:
		return *p.Asked
	}
	return p.Request
}
