package metrics

import (
	"context"
	"errors"
	"time"

	"example.com/cookday/api"
)

// Store has the calls of a store measured that services make all the time.
func (m *Metrics) Store(s api.Store) api.Store {
	w := &watched{Store: s, m: m}
	if h, ok := s.(api.Hearer); ok {
		return &watchedHearer{w, h}
	}
	return w
}

type watched struct {
	api.Store
	m *Metrics
}

// watchedHearer is one that hears of other processes.
type watchedHearer struct {
	*watched
	api.Hearer
}

// done notes how a call went that began at an instant.
func (w *watched) done(operation string, began time.Time, err *error) {
	w.m.store.WithLabelValues(operation).Observe(time.Since(began).Seconds())
	kind := "other"
	switch {
	case *err == nil, errors.Is(*err, api.ErrNotFound), errors.Is(*err, api.ErrConflict), errors.Is(*err, api.ErrExists), errors.Is(*err, context.Canceled):
		return // an answer, and nobody waits for another
	case errors.Is(*err, api.ErrAway):
		kind = "away"
	case errors.Is(*err, api.ErrFull):
		kind = "full"
	case errors.Is(*err, api.ErrReadOnly):
		kind = "read-only"
	}
	w.m.faults.WithLabelValues(operation, kind).Inc()
}

func (w *watched) Create(ctx context.Context, r api.Record, first api.Revision) (err error) {
	defer w.done("create", time.Now(), &err)
	return w.Store.Create(ctx, r, first)
}

func (w *watched) Plan(ctx context.Context, id string) (r api.Record, err error) {
	defer w.done("plan", time.Now(), &err)
	return w.Store.Plan(ctx, id)
}

func (w *watched) ByFeed(ctx context.Context, feed string) (r api.Record, err error) {
	defer w.done("feed", time.Now(), &err)
	return w.Store.ByFeed(ctx, feed)
}

func (w *watched) List(ctx context.Context, before string, most int) (list []api.Record, err error) {
	defer w.done("list", time.Now(), &err)
	return w.Store.List(ctx, before, most)
}

func (w *watched) Newest(ctx context.Context, id string) (r api.Revision, err error) {
	defer w.done("newest", time.Now(), &err)
	return w.Store.Newest(ctx, id)
}

func (w *watched) History(ctx context.Context, id string, after, most int) (list []api.Revision, err error) {
	defer w.done("history", time.Now(), &err)
	return w.Store.History(ctx, id, after, most)
}

func (w *watched) Readings(ctx context.Context, id string) (list []api.Reading, err error) {
	defer w.done("readings", time.Now(), &err)
	return w.Store.Readings(ctx, id)
}

func (w *watched) Append(ctx context.Context, id string, readings [][]byte, next api.Revision, f api.Facts) (err error) {
	defer w.done("append", time.Now(), &err)
	return w.Store.Append(ctx, id, readings, next, f)
}

func (w *watched) Delete(ctx context.Context, id string) (err error) {
	defer w.done("delete", time.Now(), &err)
	return w.Store.Delete(ctx, id)
}

func (w *watched) TakeMarks(ctx context.Context, way string, l api.Lease, most int) (list []api.Mark, err error) {
	defer w.done("take", time.Now(), &err)
	return w.Store.TakeMarks(ctx, way, l, most)
}

func (w *watched) PutMark(ctx context.Context, m api.Mark, l api.Lease, letters ...api.DeadLetter) (err error) {
	defer w.done("put", time.Now(), &err)
	return w.Store.PutMark(ctx, m, l, letters...)
}

func (w *watched) Ready(ctx context.Context) (err error) {
	defer w.done("ready", time.Now(), &err)
	return w.Store.Ready(ctx)
}
