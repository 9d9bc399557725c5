package main

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// tellMetrics answers GET /metrics at an address of its own until the context ends. It asks
// for no token: whoever may reach that address may look. It gives the address that it got.
func (l *listenFlags) tellMetrics(ctx context.Context, log *slog.Logger, metrics http.Handler) (string, error) {
	local, err := loopback(l.metrics)
	switch {
	case err != nil:
		return "", usage("--metrics: %q is not host:port, such as 127.0.0.1:8019", l.metrics)
	case !local && !l.allowRemote:
		return "", usage("--metrics: %s can be reached from other machines; say --allow-remote if that is meant", l.metrics)
	}
	listener, err := (&net.ListenConfig{}).Listen(ctx, "tcp", l.metrics)
	if err != nil {
		return "", usage("--metrics: %s", err)
	}
	routes := http.NewServeMux()
	routes.Handle("GET /metrics", metrics)
	server := &http.Server{Handler: routes, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second, WriteTimeout: 30 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 16 << 10}
	context.AfterFunc(ctx, func() { _ = server.Close() })
	go func() {
		if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) && log != nil {
			log.Error("metrics are told no more", slog.String("error", err.Error()))
		}
	}()
	return listener.Addr().String(), nil
}
