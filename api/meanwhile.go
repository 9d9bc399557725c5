package api

import (
	"context"
	"errors"
	"log/slog"
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// Food that nobody looks at does not stand still. While a day is under way its plan is
// followed by the clock too: with the fire out and no word from the cook, two hours later
// the sheet, the streams and what is pushed must say that the food is to be thrown away,
// and not when to take it off. A plan gets another revision for it only if there is a
// danger that was not told yet.
const (
	glanceTime  = time.Minute    // between two looks, at least; half of one processor's time, at most
	glanceAhead = 48 * time.Hour // before the meal a log may begin
	glanceAfter = 12 * time.Hour // after the meal food may still stand there
	glancePage  = 200            // plans listed at a time
)

// meanwhile follows the plans that are under way up to now.
func (s *Service) meanwhile(ctx context.Context) {
	for before := ""; ; {
		list, err := s.cfg.Store.List(ctx, before, glancePage)
		if err != nil {
			return // readyz says so
		}
		for _, r := range list {
			before = r.ID
			if !s.underWay(r) {
				continue
			}
			began := time.Now()
			s.glance(ctx, r)
			select {
			case <-ctx.Done():
				return
			case <-time.After(time.Since(began)): // leave as much as was taken
			}
		}
		if len(list) < glancePage {
			return
		}
	}
}

// underWay says whether a plan may have a log that goes on; trials have no clock.
func (s *Service) underWay(r Record) bool {
	left := r.Serve.Sub(s.now())
	return !r.Trial && r.Newest > 0 && left < glanceAhead && left > -glanceAfter
}

// glance follows one plan, and keeps what came of it if it is worse than was told.
func (s *Service) glance(ctx context.Context, r Record) {
	any := func(int) error { return nil }
	changed := false
	_, _, err := s.change(ctx, any, r.ID, func(ctx context.Context, st *state) (*draft, error) {
		log := standing(st.log)
		if len(log) == 0 {
			return nil, nil
		}
		p, err := s.revised(ctx, st.plan, log, s.now(), st.record.Facts)
		if changed = err == nil && worse(&st.plan, &p); !changed {
			return nil, err
		}
		return &draft{plan: p, facts: st.record.Facts}, nil
	})
	switch {
	case err == nil && changed:
		s.bell.ring(r.ID)
	case err != nil && ctx.Err() == nil && !errors.Is(err, ErrNotFound) && !errors.Is(err, errBusy):
		s.cfg.Log.Error("a plan is not followed", slog.String("topic", TopicOf(r.ID)), slog.String("error", cleanLine(err.Error())))
	}
}

// worse says whether a revision tells of a danger that was not told yet. Times that creep
// because nobody logs are left alone: the cook who wrapped without a word must not find
// dinner moved.
func worse(before, after *schedule.Plan) bool {
	known := dangers(before)
	return slices.ContainsFunc(dangers(after), func(d string) bool { return !slices.Contains(known, d) })
}

// dangers name the findings that are grave; their texts count minutes.
func dangers(p *schedule.Plan) (list []string) {
	for _, f := range p.Findings {
		if f.Severity == schedule.Danger {
			list = append(list, f.Code+" "+f.Path)
		}
	}
	return list
}
