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
	order []*memoryPlan // as they were made
	outbox
}

type memoryPlan struct {
	record    api.Record
	revisions []packed
	newest    []byte // whole
	readings  []api.Reading
}

// packed is a revision as it is kept.
type packed struct {
	at      time.Time
	packing int
	data    []byte
}

// NewMemory is an empty store.
func NewMemory() *Memory { return &Memory{plans: map[string]*memoryPlan{}} }

// millisecond keeps instants as exact as a file does.
func millisecond(t time.Time) time.Time {
	if t.IsZero() {
		return t
	}
	return time.UnixMilli(t.UnixMilli()).UTC()
}

func exact(f api.Facts) api.Facts {
	f.Serve, f.NotBefore = millisecond(f.Serve), millisecond(f.NotBefore)
	return f
}

// Create keeps a new plan.
func (m *Memory) Create(ctx context.Context, r api.Record, first api.Revision) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, p := range m.order {
		if p.record.ID == r.ID || r.Feed != "" && p.record.Feed == r.Feed || r.Key != "" && p.record.Key == r.Key {
			return api.ErrExists
		}
	}
	r.Made, r.Facts = millisecond(first.At), exact(r.Facts)
	p := &memoryPlan{record: r}
	if err := p.add(first, r.Facts); err != nil {
		return err
	}
	m.plans[r.ID], m.order = p, append(m.order, p)
	for _, way := range m.ways {
		m.addMark(way, r.ID, time.Time{})
	}
	return nil
}

func (p *memoryPlan) add(r api.Revision, facts api.Facts) error {
	packing := packingOf(r.Number)
	if p.newest == nil {
		packing = packedAlone
	}
	var against []byte
	if packing == packedAgainst {
		against = p.newest
	}
	data, err := pack(r.JSON, against)
	if err != nil {
		return err
	}
	p.revisions = append(p.revisions, packed{millisecond(r.At), packing, data})
	p.newest = bytes.Clone(r.JSON)
	p.record.Newest, p.record.Changed, p.record.Facts = r.Number, millisecond(r.At), exact(facts)
	return nil
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

// Plan returns what is kept of a plan.
func (m *Memory) Plan(ctx context.Context, id string) (api.Record, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return api.Record{}, err
	}
	return p.record, nil
}

// ByFeed finds the plan of a feed.
func (m *Memory) ByFeed(ctx context.Context, feed string) (api.Record, error) {
	return m.recordWhere(ctx, func(r api.Record) bool { return feed != "" && r.Feed == feed })
}

// ByKey finds the plan that was made with a key.
func (m *Memory) ByKey(ctx context.Context, key string) (api.Record, error) {
	return m.recordWhere(ctx, func(r api.Record) bool { return key != "" && r.Key == key })
}

func (m *Memory) recordWhere(ctx context.Context, is func(api.Record) bool) (api.Record, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	if err := ctx.Err(); err != nil {
		return api.Record{}, err
	}
	for _, p := range m.order {
		if is(p.record) {
			return p.record, nil
		}
	}
	return api.Record{}, api.ErrNotFound
}

// List returns plans, the newest first.
func (m *Memory) List(ctx context.Context, before string, most int) ([]api.Record, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	list, found := []api.Record{}, before == ""
	for _, p := range slices.Backward(m.order) {
		if found && len(list) < most {
			list = append(list, p.record)
		}
		found = found || p.record.ID == before
	}
	return list, ctx.Err()
}

// Newest returns the last revision.
func (m *Memory) Newest(ctx context.Context, id string) (api.Revision, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return api.Revision{}, err
	}
	return api.Revision{Number: p.record.Newest, At: p.record.Changed, JSON: bytes.Clone(p.newest)}, nil
}

// Revision returns the one of that number.
func (m *Memory) Revision(ctx context.Context, id string, number int) (api.Revision, error) {
	if number < 0 {
		return api.Revision{}, api.ErrNotFound
	}
	return last(oneOf(m.History(ctx, id, number-1, 1)))
}

// History returns revisions after a number.
func (m *Memory) History(ctx context.Context, id string, after, most int) ([]api.Revision, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	p, err := m.find(ctx, id)
	if err != nil {
		return nil, err
	}
	list := []api.Revision{}
	var before []byte
	first := (after + 1) / packEvery * packEvery
	for n := first; n < len(p.revisions) && n <= after+most; n++ {
		r := p.revisions[n]
		text, err := unpack(r.data, r.packing, before)
		if err != nil {
			return nil, err
		}
		before = text
		if n > after {
			list = append(list, api.Revision{Number: n, At: r.at, JSON: text})
		}
	}
	return list, nil
}
