package api

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"time"
)

const (
	streamWriteTime = 10 * time.Second       // a client that takes nothing for so long is dropped
	streamRetry     = 3 * time.Second        // how long a client should wait before it connects again
	shortestWait    = 100 * time.Millisecond // between two looks at the clock
	typeEvents      = "text/event-stream"
)

// RevisionNews tells the clients of a stream that the plan was revised.
type RevisionNews struct {
	Plan     string    `json:"plan"`
	Revision int       `json:"revision"`
	Feasible bool      `json:"feasible"`
	ServeAt  time.Time `json:"serve_at"`
	Changes  []string  `json:"changes"`
}

// getStream sends each step when it is due and each revision when it is made, as
// server-sent events. It goes on after Last-Event-ID; without one it begins now.
func (s *Service) getStream(c *call) error { return s.stream(c, false) }

// getFeedStream is getStream for those who may only read.
func (s *Service) getFeedStream(c *call) error { return s.stream(c, true) }

func (s *Service) stream(c *call, feed bool) error {
	id, err := c.planOnly()
	if err != nil {
		return err
	}
	got, err := c.parameters("last_event_id")
	if err != nil {
		return err
	}
	record, err := s.record(c.r.Context(), id, feed)
	if err != nil {
		return err
	}
	leave, ok := s.places.take(s.client(c.r))
	if !ok {
		return s.noPlace(c)
	}
	defer leave()
	rung, stop := s.bell.listen(record.ID) // before the first look, so that nothing falls between
	defer stop()
	score, close := s.scores.open(record)
	defer close()
	st := &stream{service: s, c: c, shown: id, feed: feed, rung: rung, score: score, control: http.NewResponseController(c.w)}
	last := c.r.Header.Get("Last-Event-ID")
	standsFor(&last, got["last_event_id"])
	if err := st.begin(c.r.Context(), last); err != nil || c.w.head {
		return err
	}
	st.run(c.r.Context())
	return nil
}

// noPlace sends a client away for a while. An event source of a browser gives up for good
// on any other status than 200, and comes back after "retry" if it is only let go.
func (s *Service) noPlace(c *call) error {
	if negotiate(c.accept(), []string{typeJSON, typeEvents}) != typeEvents {
		return problem("busy", "Too many event streams are open; try again soon.")
	}
	c.header().Set(headerCacheControl, "no-store")
	c.header().Set(headerRetryAfter, "30")
	return c.send(http.StatusOK, &content{kind: typeEvents, body: []byte("retry: 30000\n: too many streams are open\n\n")})
}

// stream is one client.
type stream struct {
	service *Service
	c       *call
	control *http.ResponseController
	shown   string // the id that it knows the plan by
	feed    bool
	rung    <-chan struct{}
	score   *score
	chapter *chapter // where the client is
	place   int      // the last event of it that was sent
	doubts  int      // of the score, that were looked into
}

func (st *stream) at() eventID { return eventID{st.chapter.Revision, st.place} }

// begin finds the client's place and sends the head and the state of the plan.
func (st *stream) begin(ctx context.Context, last string) error {
	var newest *chapter
	err := st.service.within(ctx, st.service.gates.reading, func(ctx context.Context) (err error) {
		if newest, err = st.score.look(ctx); err != nil {
			return err
		}
		return st.find(ctx, newest, last)
	})
	if err != nil {
		return err
	}
	h := st.c.header()
	h.Set(headerContentType, typeEvents)
	h.Set(headerCacheControl, "no-store")
	h.Set("X-Accel-Buffering", "no") // a proxy must not collect events
	st.c.w.WriteHeader(http.StatusOK)
	if err := st.write(fmt.Appendf(nil, "retry: %d\n", streamRetry.Milliseconds())); err != nil {
		return err
	}
	d := newest.agenda.due(st.service.cfg.Clock(), usualLook)
	d.Plan = st.shown
	for i := range d.Due {
		d.Due[i].Plan = st.shown
	}
	return st.send("plan", st.at(), d)
}

func (st *stream) find(ctx context.Context, newest *chapter, last string) (err error) {
	if last == "" {
		st.chapter, st.place = newest, newest.placeAt(st.service.cfg.Clock())
		return nil
	}
	id, err := parseEventID(last)
	if err != nil {
		return queryFault("Last-Event-ID", err.Error())
	}
	if st.chapter, err = st.score.find(ctx, id, newest); errors.Is(err, errNeverGiven) {
		return queryFault("Last-Event-ID", err.Error())
	}
	st.place = id.place
	return err
}

// run sends events until the client leaves, the plan is deleted or the service ends.
func (st *stream) run(ctx context.Context) {
	for {
		wait, err := st.sendDue(ctx)
		if err != nil {
			return
		}
		timer := time.NewTimer(wait)
		select {
		case <-ctx.Done():
		case <-st.service.closing.Done():
		case <-st.rung:
			err = st.look(ctx)
		case <-timer.C:
			if wait == st.service.cfg.Heartbeat {
				err = st.write([]byte(": still here\n\n"))
			}
		}
		timer.Stop()
		if errors.Is(err, ErrNotFound) {
			st.send("deleted", st.at(), struct {
				Plan string `json:"plan"`
			}{st.shown}) // the last word, whether it arrives or not
		}
		if err != nil || ctx.Err() != nil || st.service.closing.Err() != nil {
			return
		}
	}
}

// look sees whether there is more, and whether the client may still read it. What this
// process revised itself the score knows: a thousand streams need not ask the store.
func (st *stream) look(ctx context.Context) error {
	if st.score.ahead(st.chapter, &st.doubts) {
		return nil
	}
	if st.feed {
		if _, err := st.service.cfg.Store.ByFeed(ctx, st.shown); err != nil {
			return err
		}
	}
	_, err := st.score.look(ctx)
	return err
}

// sendDue sends what is due and says how long nothing will be.
func (st *stream) sendDue(ctx context.Context) (time.Duration, error) {
	now := st.service.cfg.Clock()
	for {
		next, err := st.score.after(ctx, st.chapter)
		if err != nil {
			return 0, err
		}
		by := now
		if next != nil {
			by = next.kept
		}
		due, wake := st.chapter.due(st.place, by)
		for _, e := range due {
			if err := st.sendEvent(e, now); err != nil {
				return 0, err
			}
			st.place = e.id.place
		}
		if next == nil {
			return st.until(wake, now), nil
		}
		st.chapter, st.place = next, -1
	}
}

// until is how long to wait for an instant, zero for none: until the next sign of life
// at most.
func (st *stream) until(wake, now time.Time) time.Duration {
	wait := st.service.cfg.Heartbeat
	if until := wake.Sub(now); !wake.IsZero() && until < wait {
		return max(until, min(shortestWait, wait))
	}
	return wait
}

func (st *stream) sendEvent(e event, now time.Time) error {
	a := st.chapter.agenda
	if e.id.place == 0 {
		return st.send("revision", e.id, RevisionNews{st.shown, a.Revision, a.Feasible, a.ServeAt, a.changeTexts()})
	}
	r := a.reminder(e.step, now)
	r.Plan = st.shown
	return st.send("step", e.id, r)
}

// send writes one event; its data is one line of JSON.
func (st *stream) send(kind string, id eventID, v any) error {
	data, err := json.Marshal(v)
	if err != nil {
		return err
	}
	return st.write(fmt.Appendf(nil, "event: %s\nid: %s\ndata: %s\n\n", kind, id, data))
}

func (st *stream) write(text []byte) error {
	// A recorder in a test has no deadline; a real connection always takes one.
	if err := st.control.SetWriteDeadline(time.Now().Add(streamWriteTime)); err != nil && !errors.Is(err, http.ErrNotSupported) {
		return err
	}
	if _, err := st.c.w.Write(text); err != nil {
		return err
	}
	return st.control.Flush()
}
