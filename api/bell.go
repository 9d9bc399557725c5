package api

import (
	"maps"
	"slices"
	"sync"
)

// bell tells the streams of a plan that it was revised or deleted.
type bell struct {
	mu        sync.Mutex
	listeners map[string]map[chan struct{}]bool
}

func newBell() *bell { return &bell{listeners: map[string]map[chan struct{}]bool{}} }

// listen gives a channel that gets a value after every ring; stop ends it.
func (b *bell) listen(id string) (heard <-chan struct{}, stop func()) {
	c := make(chan struct{}, 1)
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.listeners[id] == nil {
		b.listeners[id] = map[chan struct{}]bool{}
	}
	b.listeners[id][c] = true
	return c, func() {
		b.mu.Lock()
		defer b.mu.Unlock()
		delete(b.listeners[id], c)
		if len(b.listeners[id]) == 0 {
			delete(b.listeners, id)
		}
	}
}

// listened are the ids that somebody listens to.
func (b *bell) listened() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	ids := slices.Collect(maps.Keys(b.listeners))
	return slices.DeleteFunc(ids, func(id string) bool { return id == allPlans })
}

// allPlans is no id: who listens to it hears of every plan.
const allPlans = ""

// ring never waits: a listener that has not heard the last ring hears both as one.
func (b *bell) ring(id string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, who := range []string{id, allPlans} {
		for c := range b.listeners[who] {
			select {
			case c <- struct{}{}:
			default:
			}
		}
	}
}
