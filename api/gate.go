package api

import (
	"context"
	"errors"
	"sync"
	"sync/atomic"
	"time"

	"example.com/cookday/schedule"
)

var errBusy = errors.New("the service is busy; try again soon")

// gate lets a fixed number of calls compute at once and a fixed number wait.
type gate struct {
	places   chan struct{}
	waiting  atomic.Int64
	queue    int64
	patience time.Duration
	refused  atomic.Int64
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
		return count(&g.refused, errBusy)
	}
	defer g.waiting.Add(-1)
	return count(&g.refused, waitFor(ctx, g.places, g.patience))
}

// waitFor puts a value into a channel that has no room yet, or gives up.
func waitFor(ctx context.Context, places chan struct{}, patience time.Duration) error {
	timer := time.NewTimer(patience)
	defer timer.Stop()
	select {
	case places <- struct{}{}:
		return nil
	case <-timer.C:
		return errBusy
	case <-ctx.Done():
		return ctx.Err()
	}
}

func (g *gate) leave() { <-g.places }

// gates keep apart what takes a millisecond and what takes seconds: a large party must
// not stand in the way of somebody's burgers.
type gates struct{ reading, bulk, forecast, light, heavy *gate }

func newGates(c Config) gates {
	return gates{
		reading:  newGate(c.Solves, c.Queue, c.Patience),
		forecast: newGate(c.Solves, c.Queue, c.Patience),
		light:    newGate(c.Solves, c.Queue, c.Patience),
		bulk:     newGate(max(c.Solves/2, 1), c.Queue, c.Patience),
		heavy:    newGate(max(c.Solves/2, 1), c.Queue, c.Patience),
	}
}

// smallBody is what a cook sends: a party of forty dishes, a few hundred readings.
const smallBody = 16 << 10

// ofBody is the gate in which a body is read.
func (g gates) ofBody(data []byte) *gate {
	if len(data) > smallBody {
		return g.bulk
	}
	return g.reading
}

// lightCost is the most that a light request costs: a party of four dishes (assumption;
// six dishes take ten times as long as three, see DEVELOPERS.md, "Speed").
const lightCost = 8

// of is the gate of a request, by its dishes, kinds and days.
func (g gates) of(r schedule.Request) *gate {
	kinds, cost := map[string]bool{}, 0
	for _, dish := range r.Dishes {
		if !kinds[dish.Cut] {
			kinds[dish.Cut] = true
			cost++
		}
		cost++
		if dish.Ready != "" {
			cost += 2 // another day is planned
		}
	}
	if cost > lightCost {
		return g.heavy
	}
	return g.light
}

// within runs work in a place of a gate, within the limits of the service.
func (s *Service) within(ctx context.Context, g *gate, work func(context.Context) error) error {
	if err := g.enter(ctx); err != nil {
		return err
	}
	defer g.leave()
	ctx, cancel := context.WithTimeout(ctx, s.cfg.SolveTime)
	defer cancel()
	return work(ctx)
}

// locks serialise work on one plan, and on nothing else.
type locks struct {
	mu       sync.Mutex
	held     map[string]*lock
	patience time.Duration
}

type lock struct {
	place chan struct{}
	users int // that hold it or wait
}

func newLocks(patience time.Duration) *locks {
	return &locks{held: map[string]*lock{}, patience: patience}
}

// lock waits for the plan's turn; the caller calls the result.
func (l *locks) lock(ctx context.Context, id string) (unlock func(), err error) {
	l.mu.Lock()
	k := l.held[id]
	if k == nil {
		k = &lock{place: make(chan struct{}, 1)}
		l.held[id] = k
	}
	k.users++
	l.mu.Unlock()
	if err := waitFor(ctx, k.place, l.patience); err != nil {
		l.forget(id, k)
		return nil, err
	}
	return func() { <-k.place; l.forget(id, k) }, nil
}

func (l *locks) forget(id string, k *lock) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if k.users--; k.users == 0 {
		delete(l.held, id)
	}
}
