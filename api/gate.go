package api

import (
	"context"
	"errors"
	"sync/atomic"
	"time"
)

var errBusy = errors.New("the service is busy; try again soon")

// gate lets a fixed number of calls compute at once and a fixed number wait.
type gate struct {
	places   chan struct{}
	waiting  atomic.Int64
	queue    int64
	patience time.Duration
}

func newGate(places, queue int, patience time.Duration) *gate {
	return &gate{places: make(chan struct{}, places), queue: int64(queue), patience: patience}
}

// enter takes a place, or fails with errBusy. Whoever got in calls leave.
func (g *gate) enter(ctx context.Context) error {
	select {
	case g.places <- struct{}{}:
		return nil
	default:
	}
	if g.waiting.Add(1) > g.queue {
		g.waiting.Add(-1)
		return errBusy
	}
	defer g.waiting.Add(-1)
	timer := time.NewTimer(g.patience)
	defer timer.Stop()
	select {
	case g.places <- struct{}{}:
		return nil
	case <-timer.C:
		return errBusy
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (g *gate) leave() { <-g.places }

// stripes serialise work on one plan: two ids seldom share a lock.
type stripes [64]chan struct{}

func newStripes() *stripes {
	var s stripes
	for i := range s {
		s[i] = make(chan struct{}, 1)
	}
	return &s
}

// lock waits for the plan's turn; the caller calls the result.
func (s *stripes) lock(ctx context.Context, id string) (unlock func(), err error) {
	sum := uint32(2166136261) // FNV-1a
	for i := range len(id) {
		sum = (sum ^ uint32(id[i])) * 16777619
	}
	c := s[sum%uint32(len(s))]
	select {
	case c <- struct{}{}:
		return func() { <-c }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}
