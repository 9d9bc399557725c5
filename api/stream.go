package api

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"time"

	"github.com/labstack/echo/v4"
)

const (
	streamWriteTime = 10 * time.Second       // a client that takes nothing for so long is dropped
	streamRetry     = 3 * time.Second        // how long a client should wait before it connects again
	shortestWait    = 100 * time.Millisecond // between two looks at the clock
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
func (s *Service) getStream(c echo.Context) error {
	id, suffix, err := planAddress(c)
	if err != nil || suffix != "" {
		return ErrNotFound
	}
	got, err := parameters(c, "last_event_id")
	if err != nil {
		return err
	}
	if s.streams.Add(1) > int64(s.cfg.Streams) {
		s.streams.Add(-1)
		return errBusy
	}
	defer s.streams.Add(-1)
	rung, stop := s.bell.listen(id) // before the first look, so that nothing falls between
	defer stop()
	st := &stream{service: s, c: c, plan: id, rung: rung, control: http.NewResponseController(c.Response())}
	if err := st.look(c.Request().Context()); err != nil {
		return err
	}
	last := c.Request().Header.Get("Last-Event-ID")
	standsFor(&last, got["last_event_id"])
	if err := st.begin(last); err != nil {
		return err
	}
	st.run(c.Request().Context())
	return nil
}

// stream is one client.
type stream struct {
	service  *Service
	c        echo.Context
	control  *http.ResponseController
	plan     string
	rung     <-chan struct{}
	chapters []chapter
	reader   *reader
}

// look reads what revisions there are.
func (st *stream) look(ctx context.Context) error {
	store := st.service.cfg.Store
	newest, err := store.Newest(ctx, st.plan)
	if err != nil || newest.Number < len(st.chapters) {
		return err
	}
	history, err := store.History(ctx, st.plan)
	if err != nil {
		return err
	}
	agendas := make([]agenda, len(history))
	for i, r := range history {
		if agendas[i], err = readAgenda(r); err != nil {
			return err
		}
	}
	st.chapters = chapters(agendas)
	return nil
}

// begin finds the client's place and sends the head and the state of the plan.
func (st *stream) begin(last string) error {
	now := st.service.cfg.Clock()
	if last == "" {
		st.reader = fresh(st.chapters, now)
	} else {
		id, err := parseEventID(last)
		if err == nil {
			st.reader, err = resume(st.chapters, id)
		}
		if err != nil {
			return queryFault("Last-Event-ID", err.Error())
		}
	}
	h := st.c.Response().Header()
	h.Set(echo.HeaderContentType, "text/event-stream")
	h.Set(echo.HeaderCacheControl, "no-store")
	h.Set("X-Accel-Buffering", "no") // a proxy must not collect events
	st.c.Response().WriteHeader(http.StatusOK)
	newest := &st.chapters[len(st.chapters)-1].agenda
	if err := st.write(fmt.Appendf(nil, "retry: %d\n", streamRetry.Milliseconds())); err != nil {
		return err
	}
	return st.send("plan", st.reader.at, newest.due(now, usualLook))
}

// run sends events until the client leaves, the plan is deleted or the service ends.
func (st *stream) run(ctx context.Context) {
	for {
		wait, err := st.sendDue()
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
			if err = st.look(ctx); err == nil {
				err = st.write([]byte(": still here\n\n"))
			}
		}
		timer.Stop()
		if errors.Is(err, ErrNotFound) {
			st.send("deleted", st.reader.at, struct {
				Plan string `json:"plan"`
			}{st.plan}) // the last word, whether it arrives or not
		}
		if err != nil || ctx.Err() != nil || st.service.closing.Err() != nil {
			return
		}
	}
}

// sendDue sends what is due and says how long nothing will be.
func (st *stream) sendDue() (time.Duration, error) {
	now := st.service.cfg.Clock()
	due, wake := st.reader.next(st.chapters, now)
	for _, e := range due {
		a := &st.chapters[e.id.revision].agenda
		var err error
		if e.id.place == 0 {
			err = st.send("revision", e.id, RevisionNews{a.ID, a.Revision, a.Feasible, a.ServeAt, a.changeTexts()})
		} else {
			err = st.send("step", e.id, a.reminder(e.step, now))
		}
		if err != nil {
			return 0, err
		}
		st.reader.passed(e)
	}
	wait := st.service.cfg.Heartbeat
	if until := wake.Sub(now); !wake.IsZero() && until < wait {
		wait = max(until, min(shortestWait, wait))
	}
	return wait, nil
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
	if _, err := st.c.Response().Write(text); err != nil {
		return err
	}
	return st.control.Flush()
}
