package api

import (
	"bytes"
	"context"
	"net/http"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/export"
)

// getNow says in a few lines how the day stands: what to do now, what comes next, what to
// worry about. It follows the log up to this minute, for food that nobody looked at since
// does not stand still, and keeps nothing.
func (s *Service) getNow(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	got, err := c.parameters("at")
	if err != nil {
		return err
	}
	at, err := instantOf(got, "at")
	if err != nil {
		return err
	}
	ctx := c.r.Context()
	st, err := s.stateOf(ctx, id)
	if err != nil {
		return err
	}
	p, at, err := s.standsAt(ctx, st, at)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := export.Now(&b, p, export.Options{Now: at}); err != nil {
		return err
	}
	return c.send(http.StatusOK, &content{kind: "text/plain; charset=utf-8", body: b.Bytes()})
}

// standsAt is a plan as it stands at an instant; zero for the clock, or for a trial the
// instant from which its pages look.
func (s *Service) standsAt(ctx context.Context, st *state, at time.Time) (schedule.Plan, time.Time, error) {
	if at.IsZero() && st.record.Trial {
		at = seenAt(&st.plan, true, at)
	}
	at, err := s.seenFrom(at, st.record.Trial)
	if err != nil {
		return st.plan, at, err
	}
	if !st.plan.Feasible && len(st.log) == 0 {
		return st.plan, at, nil
	}
	log := standing(st.log)
	at = lookedAt(at, log)
	p, err := s.revised(ctx, st.plan, log, at, st.record.Facts)
	return p, at, err
}
