package store

import (
	"context"
	"errors"
	"slices"
	"time"

	"example.com/cookday/api"
)

// outbox is that of [Memory], which guards it.
type outbox struct {
	ways  []string
	marks []*memoryMark
	dead  []api.DeadLetter // the newest last
}

type memoryMark struct {
	api.Mark
	due   bool // whatever Next says
	owner string
	until time.Time
}

func (o *outbox) mark(way, topic string) *memoryMark {
	i := slices.IndexFunc(o.marks, func(m *memoryMark) bool { return m.Way == way && m.Topic == topic })
	if i < 0 {
		return nil
	}
	return o.marks[i]
}

func (o *outbox) addMark(way, id string, from time.Time) {
	m := o.mark(way, api.TopicOf(id))
	if m == nil {
		m = &memoryMark{}
		o.marks = append(o.marks, m)
	}
	m.Mark = api.Mark{Way: way, Topic: api.TopicOf(id), Plan: id, Place: -1, From: millisecond(from), Changes: m.Changes + 1}
	m.due = true
}

// changed makes the marks of a plan due.
func (o *outbox) changed(id string, gone bool) {
	for _, m := range o.marks {
		if m.Plan == id {
			m.due, m.Changes = true, m.Changes+1
			if gone {
				m.Plan = ""
			}
		}
	}
}

// OpenWay makes a way known, and gives a mark to the plans that are still to be served.
func (m *Memory) OpenWay(ctx context.Context, way string, from time.Time) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if slices.Contains(m.ways, way) {
		return ctx.Err()
	}
	m.ways = append(m.ways, way)
	for _, p := range m.order {
		if p.record.Serve.After(from) {
			m.addMark(way, p.record.ID, from)
		}
	}
	return ctx.Err()
}

// TakeMarks leases marks that are due.
func (m *Memory) TakeMarks(ctx context.Context, way string, l api.Lease, most int) (list []api.Mark, err error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	var due []*memoryMark
	for _, k := range m.marks {
		waits := k.Retry.After(l.Now) && !k.Retry.After(l.Now.Add(longestRetry))
		leased := k.until.After(l.Now) && !k.until.After(l.Until)
		if k.Way == way && (k.due || !k.Next.IsZero() && !k.Next.After(l.Now)) && !waits && !leased {
			due = append(due, k)
		}
	}
	slices.SortStableFunc(due, func(a, b *memoryMark) int { return a.Next.Compare(b.Next) })
	for _, k := range due[:min(most, len(due))] {
		k.owner, k.until = l.Owner, l.Until
		list = append(list, k.Mark)
	}
	return list, ctx.Err()
}

// PutMark keeps a mark that is leased.
func (m *Memory) PutMark(ctx context.Context, put api.Mark, l api.Lease, dead ...api.DeadLetter) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	k := m.mark(put.Way, put.Topic)
	if k == nil || k.owner != l.Owner {
		return errors.Join(ctx.Err(), api.ErrConflict)
	}
	k.due = k.Changes != put.Changes
	put.Changes, put.Plan, put.From = k.Changes, k.Plan, k.From
	put.Next, put.Retry, put.Since = millisecond(put.Next), millisecond(put.Retry), millisecond(put.Since)
	k.Mark, k.until = put, l.Until
	for _, d := range dead {
		d.Due, d.Buried = millisecond(d.Due), millisecond(d.Buried)
		m.dead = append(m.dead, d)
	}
	if n := len(m.dead) - api.MostDead; n > 0 {
		m.dead = m.dead[n:]
	}
	return ctx.Err()
}

// DropMark forgets a mark of a plan that is gone.
func (m *Memory) DropMark(ctx context.Context, way, topic string) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	if k := m.mark(way, topic); k == nil || k.Plan != "" {
		return errors.Join(ctx.Err(), api.ErrNotFound)
	}
	m.marks = slices.DeleteFunc(m.marks, func(k *memoryMark) bool { return k.Way == way && k.Topic == topic })
	return ctx.Err()
}

// DeadLetters lists what was given up.
func (m *Memory) DeadLetters(ctx context.Context, most int) (list []api.DeadLetter, err error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	for _, d := range slices.Backward(m.dead) {
		if len(list) < most {
			list = append(list, d)
		}
	}
	return list, ctx.Err()
}

// Waiting counts what was tried in vain and is tried again.
func (m *Memory) Waiting(ctx context.Context) (map[string]int, error) {
	m.mu.RLock()
	defer m.mu.RUnlock()
	counts := map[string]int{}
	for _, k := range m.marks {
		if k.Tries > 0 {
			counts[k.Way]++
		}
	}
	return counts, ctx.Err()
}
