package api

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// Time limits of the server. A call that computes waits and works at most
// Patience + SolveTime, which is less than writeTime; streams set their own.
const (
	headerTime = 5 * time.Second
	readTime   = 15 * time.Second // of the whole request: a mebibyte on a slow line
	writeTime  = 40 * time.Second // from the end of the header to the end of the answer
	idleTime   = 60 * time.Second
	graceTime  = 10 * time.Second // for calls under way when the service ends
)

// Serve answers on a listener until the context ends, then lets the calls under way
// finish. It returns nil after an end of that kind, and closes the listener.
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
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	s.CloseStreams()
	grace, cancel := context.WithTimeout(context.WithoutCancel(ctx), graceTime)
	defer cancel()
	err := server.Shutdown(grace)
	if errors.Is(err, context.DeadlineExceeded) {
		err = server.Close() // what is left has had its time
	}
	<-ended
	return err
}
