package api

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// Time limits of the server. A call that computes waits for its reading, its plan's turn
// and its place, and works: 3 x Patience + SolveTime, which is less than writeTime;
// streams set their own.
const (
	headerTime = 5 * time.Second
	readTime   = 15 * time.Second // of the whole request: a mebibyte on a slow line
	writeTime  = 40 * time.Second // from the end of the header to the end of the answer
	idleTime   = 60 * time.Second
	graceTime  = 10 * time.Second // for calls under way when the service ends
	sweepTime  = time.Hour        // between two looks for plans that are old
)

// Serve answers on a listener until the context ends, then says for a while that it is
// not ready, and lets the calls under way finish. It returns nil after an end of that
// kind, and closes the listener.
func (s *Service) Serve(ctx context.Context, l net.Listener) error {
	server := &http.Server{
		Handler:           s.Handler(),
		ReadHeaderTimeout: headerTime,
		ReadTimeout:       readTime,
		WriteTimeout:      writeTime,
		IdleTimeout:       idleTime,
		MaxHeaderBytes:    maxHeaderBytes,
		ErrorLog:          slog.NewLogLogger(s.cfg.Log.Handler(), slog.LevelDebug),
	}
	working, rest := context.WithCancel(context.WithoutCancel(ctx))
	defer rest()
	go s.every(working, s.cfg.Look, s.watch())
	go s.hear(working)
	go s.every(working, sweepTime, s.sweep)
	go s.every(working, glanceTime, s.meanwhile)
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	s.CloseStreams()
	time.Sleep(s.cfg.Drain)
	grace, cancel := context.WithTimeout(context.WithoutCancel(ctx), graceTime)
	defer cancel()
	err := server.Shutdown(grace)
	if errors.Is(err, context.DeadlineExceeded) {
		err = server.Close() // what is left has had its time
	}
	<-ended
	return err
}

// every does something again and again, now first.
func (s *Service) every(ctx context.Context, pause time.Duration, do func(context.Context)) {
	ticker := time.NewTicker(pause)
	defer ticker.Stop()
	for {
		do(ctx)
		select {
		case <-ctx.Done():
			return
		case <-ticker.C:
		}
	}
}

// watch looks for what other processes wrote into the same store, and tells the streams.
func (s *Service) watch() func(context.Context) {
	var seen int64
	return func(ctx context.Context) {
		n, err := s.cfg.Store.Changes(ctx)
		if err != nil || n == seen {
			return
		}
		seen = n
		for _, id := range s.bell.listened() {
			s.heardOf(ctx, id)
		}
	}
}

// Hearer is a [Store] that is told what other processes write into it, as they do: the
// ids of plans, and "" when some may have been missed.
type Hearer interface{ Heard() <-chan string }

// hear listens for what other processes write.
func (s *Service) hear(ctx context.Context) {
	h, ok := s.cfg.Store.(Hearer)
	if !ok {
		return
	}
	for {
		select {
		case <-ctx.Done():
			return
		case id := <-h.Heard():
			ids := []string{id}
			if id == "" {
				ids = s.bell.listened()
			}
			for _, id := range ids {
				s.heardOf(ctx, id)
			}
			s.bell.ring(allPlans)
		}
	}
}

// heardOf tells those who follow a plan what somebody else did to it.
func (s *Service) heardOf(ctx context.Context, id string) {
	if s.scores.catchUp(ctx, id) {
		s.bell.ring(id)
	}
}

// sweep removes plans that were served and changed longer ago than they are kept.
func (s *Service) sweep(ctx context.Context) {
	if s.cfg.Keep == 0 {
		return
	}
	gone, err := s.cfg.Store.Expire(ctx, s.now().Add(-s.cfg.Keep))
	if err != nil {
		s.cfg.Log.Error("old plans stay", slog.String("error", cleanLine(err.Error())))
	}
	for _, id := range gone {
		s.gone(id)
	}
	if len(gone) > 0 {
		s.cfg.Log.Info("old plans removed", slog.Int("plans", len(gone)))
	}
}
