package api

import (
	"context"
	"slices"
	"sync"
	"time"
)

// mapStore is the least a store must do; the real ones cannot be imported here.
type mapStore struct {
	Outbox    // none: the service itself pushes nothing
	mu        sync.Mutex
	records   map[string]Record
	revisions map[string][]Revision
	readings  map[string][]Reading
	order     []string
	broken    error
	changes   int64
}

func newMapStore() *mapStore {
	return &mapStore{records: map[string]Record{}, revisions: map[string][]Revision{}, readings: map[string][]Reading{}}
}

func (m *mapStore) Create(_ context.Context, r Record, first Revision) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.broken != nil {
		return m.broken
	}
	r.Made, r.Changed = first.At, first.At
	m.records[r.ID], m.revisions[r.ID], m.order = r, []Revision{first}, append(m.order, r.ID)
	return nil
}

// Plan knows plans too that a test put straight into revisions.
func (m *mapStore) Plan(_ context.Context, id string) (Record, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.broken != nil {
		return Record{}, m.broken
	}
	list := m.revisions[id]
	if list == nil {
		return Record{}, ErrNotFound
	}
	r := m.records[id]
	r.ID, r.Newest = id, list[len(list)-1].Number
	return r, nil
}

func (m *mapStore) where(ctx context.Context, is func(Record) bool) (Record, error) {
	m.mu.Lock()
	id := ""
	for _, r := range m.records {
		if is(r) {
			id = r.ID
		}
	}
	m.mu.Unlock()
	return m.Plan(ctx, id)
}

func (m *mapStore) ByFeed(ctx context.Context, feed string) (Record, error) {
	return m.where(ctx, func(r Record) bool { return r.Feed == feed })
}

func (m *mapStore) ByKey(ctx context.Context, key string) (Record, error) {
	return m.where(ctx, func(r Record) bool { return r.Key == key })
}

func (m *mapStore) List(ctx context.Context, before string, most int) ([]Record, error) {
	var list []Record
	found := before == ""
	m.mu.Lock()
	order := slices.Clone(m.order)
	m.mu.Unlock()
	for _, id := range slices.Backward(order) {
		if r, err := m.Plan(ctx, id); err == nil && found && len(list) < most {
			list = append(list, r)
		}
		found = found || id == before
	}
	return list, nil
}

func (m *mapStore) Newest(ctx context.Context, id string) (Revision, error) {
	r, err := m.Plan(ctx, id)
	if err != nil {
		return Revision{}, err
	}
	return m.Revision(ctx, id, r.Newest)
}

func (m *mapStore) Revision(ctx context.Context, id string, n int) (Revision, error) {
	list, err := m.History(ctx, id, n-1, 1)
	if err != nil || len(list) == 0 {
		return Revision{}, ErrNotFound
	}
	return list[0], nil
}

func (m *mapStore) History(_ context.Context, id string, after, most int) ([]Revision, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.broken != nil {
		return nil, m.broken
	}
	if m.revisions[id] == nil {
		return nil, ErrNotFound
	}
	var list []Revision
	for _, r := range m.revisions[id] {
		if r.Number > after && len(list) < most {
			list = append(list, r)
		}
	}
	return list, nil
}

func (m *mapStore) Readings(_ context.Context, id string) ([]Reading, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.revisions[id] == nil {
		return nil, ErrNotFound
	}
	return slices.Clone(m.readings[id]), nil
}

func (m *mapStore) Append(_ context.Context, id string, readings [][]byte, next Revision, facts Facts) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	list := m.revisions[id]
	if m.broken != nil {
		return m.broken
	}
	if next.Number != list[len(list)-1].Number+1 {
		return ErrConflict
	}
	r := m.records[id]
	r.Facts, r.Changed = facts, next.At
	m.records[id], m.revisions[id] = r, append(list, next)
	for _, text := range readings {
		m.readings[id] = append(m.readings[id], Reading{next.Number, text})
	}
	m.changes++
	return nil
}

func (m *mapStore) SetFeed(_ context.Context, id, feed string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.revisions[id] == nil {
		return ErrNotFound
	}
	r := m.records[id]
	r.Feed = feed
	m.records[id] = r
	return nil
}

func (m *mapStore) Expire(_ context.Context, before time.Time) (gone []string, err error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	for id, r := range m.records {
		if r.Changed.Before(before) && r.Serve.Before(before) {
			gone = append(gone, id)
			delete(m.records, id)
			delete(m.revisions, id)
		}
	}
	return gone, nil
}

func (m *mapStore) Delete(_ context.Context, id string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	delete(m.revisions, id)
	delete(m.records, id)
	return nil
}

func (m *mapStore) Ready(context.Context) error { return m.broken }

func (m *mapStore) Changes(context.Context) (int64, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.changes, nil
}

func (m *mapStore) Close() error { return nil }
