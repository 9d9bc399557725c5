package api

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"net/http"
	"strconv"
	"time"

	"example.com/cookday/schedule"
)

// postPlan plans a day and keeps the plan. A day that cannot be done is kept too: its
// plan says why and what would help.
func (s *Service) postPlan(c *call) error {
	got, err := c.parameters("trial")
	if err != nil {
		return err
	}
	trial, err := yesNo(got, "trial")
	if err != nil {
		return err
	}
	r, data, err := s.request(c, "")
	if err != nil {
		return err
	}
	f, err := c.formatFor("", false, nil)
	if err != nil {
		return err
	}
	record := Record{Facts: Facts{Trial: trial}}
	if record.Key, record.Body, err = c.key(data); err != nil {
		return err
	}
	if record.Key == "" {
		return s.create(c, record, r, f)
	}
	unlock, err := s.locks.lock(c.r.Context(), "key "+record.Key) // the same call may come twice at once
	if err != nil {
		return err
	}
	defer unlock()
	known, err := s.cfg.Store.ByKey(c.r.Context(), record.Key)
	switch {
	case errors.Is(err, ErrNotFound):
		return s.create(c, record, r, f)
	case err != nil:
		return err
	case known.Body != record.Body:
		return problem("key-reused", "A plan was made with this Idempotency-Key and another body; take another key.")
	}
	return s.sendMade(c, known, f)
}

// longestKey is far more than a UUID.
const longestKey = 255

// key is the digest of the caller's idempotency key and of what must come with it.
func (c *call) key(data []byte) (key, body string, err error) {
	text := c.r.Header.Get("Idempotency-Key")
	if text == "" {
		return "", "", nil
	}
	if len(text) > longestKey {
		return "", "", queryFault("Idempotency-Key", "has at most "+strconv.Itoa(longestKey)+" characters")
	}
	digest := func(parts ...[]byte) string {
		h := sha256.New()
		for _, p := range parts {
			h.Write(p)
			h.Write([]byte{0})
		}
		return hex.EncodeToString(h.Sum(nil))
	}
	return digest([]byte(text)), digest(data, []byte(c.r.URL.RawQuery)), nil
}

// create makes a plan and keeps it.
func (s *Service) create(c *call, record Record, r schedule.Request, f format) error {
	ctx := c.r.Context()
	record.ID, record.Feed = s.cfg.NewID(), s.cfg.NewID()
	r.ID = record.ID
	if !record.Trial {
		record.NotBefore = s.now()
	}
	p, err := s.makePlan(ctx, r, record.NotBefore)
	if err != nil {
		return err
	}
	p.ID = record.ID
	record.Facts = factsOf(&p, record.Facts)
	kept, err := s.revision(&p, time.Time{})
	if err != nil {
		return err
	}
	if err := s.cfg.Store.Create(ctx, record, kept); err != nil {
		return err
	}
	defer s.bell.ring(record.ID)
	s.greet(c, record)
	return s.sendRevision(c, http.StatusCreated, kept, &p, f)
}

// now is the clock, as exact as it is kept.
func (s *Service) now() time.Time { return s.cfg.Clock().Truncate(time.Millisecond) }

// makePlan has a day planned, of which nothing starts before an instant.
func (s *Service) makePlan(ctx context.Context, r schedule.Request, notBefore time.Time) (p schedule.Plan, err error) {
	err = s.within(ctx, s.gates.of(r), func(ctx context.Context) (err error) {
		p, err = s.cfg.Planner.Make(ctx, r, notBefore)
		return err
	})
	var input *schedule.InputError
	if errors.As(err, &input) && !notBefore.IsZero() && input.Faults[0].Path == "serve" { // the request itself was found sound
		return p, problem("past", "No time is left: "+input.Faults[0].Sentence+". To plan it all the same, as a trial, say ?trial=true.")
	}
	return p, err
}

// greet says where a new plan is.
func (s *Service) greet(c *call, record Record) {
	c.header().Set(headerLocation, planPath(record.ID))
	if record.Feed != "" {
		c.header().Set(headerLink, "<"+feedPath(record.Feed)+`>; rel="alternate"; title="feed"`)
	}
}

// sendMade answers a call that was made before as it was answered then.
func (s *Service) sendMade(c *call, record Record, f format) error {
	kept, err := s.cfg.Store.Revision(c.r.Context(), record.ID, 0)
	if err != nil {
		return err
	}
	s.greet(c, record)
	return s.sendRevision(c, http.StatusCreated, kept, nil, f)
}

// sendRevision writes a plan that was just kept; p is its value if the caller has it.
func (s *Service) sendRevision(c *call, status int, kept Revision, p *schedule.Plan, f format) error {
	id := ""
	if p != nil {
		id = p.ID
	} else {
		a, err := readAgenda(kept)
		if err != nil {
			return err
		}
		id = a.ID
	}
	k, err := rendered(kept, id, p, f)
	if err != nil {
		return err
	}
	s.pages.put(pageKey{id, id, kept.Number, f.name}, k, k.size())
	return c.sendPage(status, k)
}

// sendPage writes a plan in a format.
func (c *call) sendPage(status int, k *content) error {
	c.header().Add(headerVary, headerAccept)
	c.header().Set(headerPolicy, "default-src 'none'; style-src 'unsafe-inline'; img-src data:")
	return c.send(status, k)
}

// getPlan answers with the newest revision, or the one asked for, in the format asked
// for by suffix or Accept.
func (s *Service) getPlan(c *call) error { return s.getPage(c, false, "revision", "table", "picture") }

// getFeed is getPlan for those who may only read.
func (s *Service) getFeed(c *call) error { return s.getPage(c, true, "picture") }

func (s *Service) getPage(c *call, feed bool, names ...string) error {
	id, suffix, err := c.plan()
	if err != nil {
		return err
	}
	got, err := c.parameters(names...)
	if err != nil {
		return err
	}
	f, err := c.formatFor(suffix, feed, got)
	if err != nil {
		return err
	}
	record, err := s.record(c.r.Context(), id, feed)
	if err != nil {
		return err
	}
	number := record.Newest
	if _, old := got["revision"]; f.suffix == suffixSheet && !old {
		return s.getSheet(c, record, id, feed)
	}
	if text, ok := got["revision"]; ok {
		n, err := strconv.ParseUint(text, 10, 31)
		if err != nil {
			return queryFault("revision", "is the number of a revision, from 0")
		}
		number = int(n)
	}
	k, err := s.page(c.r.Context(), record, number, id, f)
	if err != nil {
		return err
	}
	return c.sendPage(http.StatusOK, k)
}

// deletePlan removes a plan for good.
func (s *Service) deletePlan(c *call) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	if _, err := c.parameters(); err != nil {
		return err
	}
	ctx := c.r.Context()
	unlock, err := s.locks.lock(ctx, id)
	if err != nil {
		return err
	}
	defer unlock()
	record, err := s.cfg.Store.Plan(ctx, id)
	if err != nil {
		return err
	}
	if err := requireMatch(c.r, record.Newest); err != nil {
		return err
	}
	if err := s.cfg.Store.Delete(ctx, id); err != nil {
		return err
	}
	s.gone(id)
	return c.nothing()
}

// gone tells the streams of a plan, and forgets what is kept ready.
func (s *Service) gone(id string) {
	s.pages.forget(id)
	s.scores.doubt(id)
	s.bell.ring(id)
}
