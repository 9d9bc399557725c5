package store

import (
	"bytes"
	"context"
	"slices"
	"time"

	"example.com/cookday/api"
)

// Readings returns the log.
func (m *Memory) Readings(ctx context.Context, id string) ([]api.Reading, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return nil, err
	}
	out := make([]api.Reading, len(p.readings))
	for i, r := range p.readings {
		out[i] = api.Reading{Revision: r.Revision, JSON: bytes.Clone(r.JSON)}
	}
	return out, nil
}

// Append adds readings and the revision they led to.
func (m *Memory) Append(ctx context.Context, id string, readings [][]byte, next api.Revision, facts api.Facts) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return err
	}
	if next.Number != p.record.Newest+1 {
		return api.ErrConflict
	}
	if err := p.add(next, facts); err != nil {
		return err
	}
	for _, r := range readings {
		p.readings = append(p.readings, api.Reading{Revision: next.Number, JSON: bytes.Clone(r)})
	}
	m.changed(id, false)
	return nil
}

// SetFeed gives a plan another feed.
func (m *Memory) SetFeed(ctx context.Context, id, feed string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return err
	}
	for _, other := range m.order {
		if feed != "" && other != p && other.record.Feed == feed {
			return api.ErrExists
		}
	}
	p.record.Feed = feed
	return nil
}

// Expire removes old plans.
func (m *Memory) Expire(ctx context.Context, before time.Time) (gone []string, err error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	for id, p := range m.plans {
		if p.record.Changed.Before(before) && p.record.Serve.Before(before) {
			gone = append(gone, id)
		}
	}
	for _, id := range gone {
		m.remove(id)
	}
	return gone, ctx.Err()
}

func (m *Memory) remove(id string) {
	m.order = slices.DeleteFunc(m.order, func(p *memoryPlan) bool { return p.record.ID == id })
	delete(m.plans, id)
	m.changed(id, true)
}

// Delete forgets a plan.
func (m *Memory) Delete(ctx context.Context, id string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, err := m.find(ctx, id); err != nil {
		return err
	}
	m.remove(id)
	return nil
}

// Ready always is.
func (m *Memory) Ready(ctx context.Context) error { return ctx.Err() }

// Changes never come from elsewhere.
func (m *Memory) Changes(ctx context.Context) (int64, error) { return 0, ctx.Err() }

// Close has nothing to do.
func (m *Memory) Close() error { return nil }
