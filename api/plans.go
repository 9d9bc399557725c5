package api

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"strconv"
	"time"

	"github.com/google/uuid"
	"github.com/labstack/echo/v4"

	"example.com/cookday/schedule"
)

// postPlan plans a day and keeps the plan. A day that cannot be done is kept too:
// its plan says why and what would help.
func (s *Service) postPlan(c echo.Context) error {
	if _, err := parameters(c); err != nil {
		return err
	}
	data, err := document(c)
	if err != nil {
		return err
	}
	r, err := schedule.Read(data)
	if err != nil {
		return err
	}
	if r.ID != "" {
		return &schedule.InputError{Faults: []schedule.Fault{{Path: "id", Sentence: "is given by the service; leave it out"}}}
	}
	f, err := formatFor(c, "", nil)
	if err != nil {
		return err
	}
	r.ID = s.cfg.NewID()
	var p schedule.Plan
	err = s.solve(c.Request().Context(), func(ctx context.Context) (err error) {
		p, err = s.cfg.Planner.Make(ctx, r)
		return err
	})
	if err != nil {
		return err
	}
	kept, err := s.revision(p)
	if err != nil {
		return err
	}
	if err := s.cfg.Store.Create(c.Request().Context(), p.ID, kept); err != nil {
		return err
	}
	c.Response().Header().Set(echo.HeaderLocation, "/v1/plans/"+p.ID)
	return s.sendPlan(c, http.StatusCreated, kept, &p, f)
}

// solve runs work that computes, within the limits of the service.
func (s *Service) solve(ctx context.Context, work func(context.Context) error) error {
	if err := s.gate.enter(ctx); err != nil {
		return err
	}
	defer s.gate.leave()
	ctx, cancel := context.WithTimeout(ctx, s.cfg.SolveTime)
	defer cancel()
	return work(ctx)
}

// revision makes a plan ready to be kept.
func (s *Service) revision(p schedule.Plan) (Revision, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(p)
	return Revision{Number: p.Revision, At: s.cfg.Clock().Truncate(time.Millisecond), JSON: b.Bytes()}, err
}

// getPlan answers with the newest revision, or the one asked for, in the format
// asked for by suffix or Accept.
func (s *Service) getPlan(c echo.Context) error {
	id, suffix, err := planAddress(c)
	if err != nil {
		return err
	}
	got, err := parameters(c, "revision", "table", "picture")
	if err != nil {
		return err
	}
	f, err := formatFor(c, suffix, got)
	if err != nil {
		return err
	}
	ctx := c.Request().Context()
	var kept Revision
	if text, ok := got["revision"]; ok {
		n, err := strconv.ParseUint(text, 10, 31)
		if err != nil {
			return queryFault("revision", "is the number of a revision, from 0")
		}
		kept, err = s.cfg.Store.Revision(ctx, id, int(n))
		if err != nil {
			return err
		}
	} else if kept, err = s.cfg.Store.Newest(ctx, id); err != nil {
		return err
	}
	return s.sendPlan(c, http.StatusOK, kept, nil, f)
}

// sendPlan writes a kept plan; p is its value if the caller has it.
func (s *Service) sendPlan(c echo.Context, status int, kept Revision, p *schedule.Plan, f format) error {
	body := kept.JSON
	if f.render != nil {
		if p == nil {
			p = new(schedule.Plan)
			if err := json.Unmarshal(kept.JSON, p); err != nil {
				return err
			}
		}
		var b bytes.Buffer
		if err := f.render(&b, *p); err != nil {
			return err
		}
		body = b.Bytes()
	}
	h := c.Response().Header()
	h.Add(echo.HeaderVary, "Accept")
	h.Set("ETag", entityTag(kept.Number, body))
	h.Set(echo.HeaderContentSecurityPolicy, "default-src 'none'; style-src 'unsafe-inline'; img-src data:")
	return send(c, status, f.contentType, body)
}

// deletePlan removes a plan for good.
func (s *Service) deletePlan(c echo.Context) error {
	id, suffix, err := planAddress(c)
	if err != nil {
		return err
	}
	if suffix != "" {
		return ErrNotFound
	}
	if _, err := parameters(c); err != nil {
		return err
	}
	ctx := c.Request().Context()
	unlock, err := s.plans.lock(ctx, id)
	if err != nil {
		return err
	}
	defer unlock()
	newest, err := s.cfg.Store.Newest(ctx, id)
	if err != nil {
		return err
	}
	if err := requireMatch(c.Request(), newest.Number); err != nil {
		return err
	}
	if err := s.cfg.Store.Delete(ctx, id); err != nil {
		return err
	}
	s.bell.ring(id)
	return c.NoContent(http.StatusNoContent)
}

// planAddress splits the last part of an address into the plan's id and a suffix.
func planAddress(c echo.Context) (id, suffix string, err error) {
	const length = 36 // of a UUID as text
	text := c.Param("id")
	if len(text) < length {
		return "", "", ErrNotFound
	}
	id, suffix = text[:length], text[length:]
	parsed, err := uuid.Parse(id)
	if err != nil || parsed.String() != id || suffix != "" && suffix[0] != '.' {
		return "", "", ErrNotFound
	}
	return id, suffix, nil
}
