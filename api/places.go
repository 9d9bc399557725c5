package api

import "sync"

// places are those of event streams, a share of them for each client: one that opens
// streams without end must leave some to the others.
type places struct {
	mu              sync.Mutex
	all, left, each int
	taken           map[string]int // by client
}

func newPlaces(all, each int) *places {
	return &places{all: all, left: all, each: each, taken: map[string]int{}}
}

// open counts the places that are taken.
func (p *places) open() int {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.all - p.left
}

// take gives a place, which leave gives back; false if there is none for this client.
func (p *places) take(client string) (leave func(), ok bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.left == 0 || p.taken[client] >= p.each {
		return nil, false
	}
	p.left--
	p.taken[client]++
	return func() {
		p.mu.Lock()
		defer p.mu.Unlock()
		p.left++
		if p.taken[client]--; p.taken[client] == 0 {
			delete(p.taken, client)
		}
	}, true
}
