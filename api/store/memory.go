package store

import (
	"bytes"
	"context"
	"slices"
	"sync"
	"time"

	"example.com/cookday/api"
)

// Memory keeps plans until the process ends.
type Memory struct {
	mu    sync.RWMutex
	plans map[string]*memoryPlan
}

type memoryPlan struct {
	revisions []api.Revision
	readings  [][]byte
}

// NewMemory is an empty store.
func NewMemory() *Memory { return &Memory{plans: map[string]*memoryPlan{}} }

// Create keeps a new plan.
func (m *Memory) Create(ctx context.Context, id string, first api.Revision) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.plans[id] != nil {
		return api.ErrExists
	}
	m.plans[id] = &memoryPlan{revisions: []api.Revision{copied(first)}}
	return nil
}

// copied keeps the store's bytes apart from the caller's, and instants as exact as a file's.
func copied(r api.Revision) api.Revision {
	r.JSON = bytes.Clone(r.JSON)
	r.At = r.At.UTC().Truncate(time.Millisecond)
	return r
}

func (m *Memory) find(ctx context.Context, id string) (*memoryPlan, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	p := m.plans[id]
	if p == nil {
		return nil, api.ErrNotFound
	}
	return p, nil
}

// Newest returns the last revision.
func (m *Memory) Newest(ctx context.Context, id string) (api.Revision, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return api.Revision{}, err
	}
	return copied(p.revisions[len(p.revisions)-1]), nil
}

// Revision returns the one of that number.
func (m *Memory) Revision(ctx context.Context, id string, number int) (api.Revision, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return api.Revision{}, err
	}
	if number < 0 || number >= len(p.revisions) {
		return api.Revision{}, api.ErrNotFound
	}
	return copied(p.revisions[number]), nil
}

// History returns all revisions.
func (m *Memory) History(ctx context.Context, id string) ([]api.Revision, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return nil, err
	}
	list := slices.Clone(p.revisions)
	for i, r := range list {
		list[i] = copied(r)
	}
	return list, nil
}

// Readings returns the log.
func (m *Memory) Readings(ctx context.Context, id string) ([][]byte, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return nil, err
	}
	return clones(p.readings), nil
}

func clones(list [][]byte) [][]byte {
	out := make([][]byte, len(list))
	for i, b := range list {
		out[i] = bytes.Clone(b)
	}
	return out
}

// Append adds readings and their revision.
func (m *Memory) Append(ctx context.Context, id string, readings [][]byte, next api.Revision) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return err
	}
	if next.Number != len(p.revisions) {
		return api.ErrConflict
	}
	p.revisions = append(p.revisions, copied(next))
	p.readings = append(p.readings, clones(readings)...)
	return nil
}

// Delete forgets a plan.
func (m *Memory) Delete(ctx context.Context, id string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, err := m.find(ctx, id); err != nil {
		return err
	}
	delete(m.plans, id)
	return nil
}

// Ready always is.
func (m *Memory) Ready(ctx context.Context) error { return ctx.Err() }

// Close has nothing to do.
func (m *Memory) Close() error { return nil }
