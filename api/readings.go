package api

import (
	"context"
	"encoding/json"
	"errors"
	"net/http"
	"strings"
	"time"

	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
)

// postReadings adds readings and events to a plan's log and answers with the
// revision they lead to. What the log has already is not added again, so a call may
// be repeated after a broken connection.
func (s *Service) postReadings(c echo.Context) error {
	id, suffix, err := planAddress(c)
	if err != nil || suffix != "" {
		return ErrNotFound
	}
	got, err := parameters(c, "at")
	if err != nil {
		return err
	}
	now, err := s.instant(got, "at")
	if err != nil {
		return err
	}
	data, kind, err := body(c, typeJSON, typeCSV)
	if err != nil {
		return err
	}
	f, err := formatFor(c, "", nil)
	if err != nil {
		return err
	}
	ctx := c.Request().Context()
	unlock, err := s.plans.lock(ctx, id)
	if err != nil {
		return err
	}
	defer unlock()
	kept, p, err := s.addReadings(c.Request(), id, data, now)
	if kind == typeCSV {
		err = tableFaults(err)
	}
	if err != nil {
		return err
	}
	c.Response().Header().Set(echo.HeaderLocation, "/v1/plans/"+id)
	return s.sendPlan(c, http.StatusOK, kept, p, f)
}

// addReadings appends what is new and revises. The plan's turn is held by the caller.
// The plan is nil if nothing was new.
func (s *Service) addReadings(r *http.Request, id string, data []byte, now time.Time) (Revision, *schedule.Plan, error) {
	ctx := r.Context()
	newest, err := s.cfg.Store.Newest(ctx, id)
	if err != nil {
		return newest, nil, err
	}
	if err := requireMatch(r, newest.Number); err != nil {
		return newest, nil, err
	}
	var p schedule.Plan
	if err := json.Unmarshal(newest.JSON, &p); err != nil {
		return newest, nil, err
	}
	posted, err := s.cfg.Planner.ReadLog(data, p)
	if err != nil {
		return newest, nil, err
	}
	log, added, err := s.merged(ctx, id, posted)
	if err != nil || len(added) == 0 {
		return newest, nil, err
	}
	err = s.solve(ctx, func(ctx context.Context) (err error) {
		p, err = s.cfg.Planner.Revise(ctx, p, log, now)
		return err
	})
	if err != nil {
		return newest, nil, err
	}
	p.ID, p.Revision = id, newest.Number+1 // the store counts: a revision a posting
	kept, err := s.revision(p)
	if err != nil {
		return newest, nil, err
	}
	if err := s.cfg.Store.Append(ctx, id, added, kept); err != nil {
		return newest, nil, err
	}
	s.bell.ring(id)
	return kept, &p, nil
}

// merged is the log with the posted entries that it does not have yet, and those as
// they are kept.
func (s *Service) merged(ctx context.Context, id string, posted []schedule.Entry) (log []schedule.Entry, added [][]byte, err error) {
	old, err := s.cfg.Store.Readings(ctx, id)
	if err != nil {
		return nil, nil, err
	}
	known := make(map[string]bool, len(old)+len(posted))
	for _, text := range old {
		var e schedule.Entry
		if err := json.Unmarshal(text, &e); err != nil {
			return nil, nil, err
		}
		known[string(text)] = true
		log = append(log, e)
	}
	for _, e := range posted {
		text, err := json.Marshal(e)
		if err != nil {
			return nil, nil, err
		}
		if !known[string(text)] {
			known[string(text)] = true
			log, added = append(log, e), append(added, text)
		}
	}
	return log, added, nil
}

// tableFaults puts the place of a fault in a table into its sentence: a pointer is
// for JSON only.
func tableFaults(err error) error {
	var input *schedule.InputError
	if !errors.As(err, &input) {
		return err
	}
	for i, f := range input.Faults {
		if _, column, found := strings.Cut(f.Path, ": "); found {
			f.Path = column
		}
		input.Faults[i] = schedule.Fault{Sentence: f.String(), Line: f.Line}
	}
	return input
}
