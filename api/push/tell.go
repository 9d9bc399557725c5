package push

import (
	"context"
	"errors"
	"log/slog"
	"time"

	"example.com/cookday/api"
)

// tell tells one plan until nothing is due or the way fails, and gives the mark back.
func (p *Pusher) tell(ctx context.Context, w Way, m api.Mark) error {
	if m.Plan == "" {
		return p.tellTheEnd(ctx, w, m)
	}
	f, err := p.known.take(ctx, w.Name(), m.Plan)
	if errors.Is(err, api.ErrNotFound) { // deleted meanwhile: the mark says so next time
		return p.give(ctx, m, atOnce())
	}
	if err != nil {
		return p.giveLater(ctx, m, err)
	}
	defer p.known.put(w.Name(), m.Plan, f)
	if f.Trial && !p.cfg.Trials {
		return p.give(ctx, m, time.Time{})
	}
	for {
		list, next, err := f.After(ctx, m.Revision, m.Place, p.now())
		if errors.Is(err, api.ErrNotFound) {
			return p.give(ctx, m, atOnce())
		}
		if err != nil {
			return p.giveLater(ctx, m, err)
		}
		if len(list) == 0 {
			return p.give(ctx, m, next)
		}
		for _, n := range list {
			if sent, err := p.tellOne(ctx, w, &m, n); err != nil || !sent {
				f.Behind = true
				return err
			}
		}
	}
}

// tellOne tells one event and keeps the mark; false if it is to be tried again later.
func (p *Pusher) tellOne(ctx context.Context, w Way, m *api.Mark, n api.Notice) (bool, error) {
	var dead []api.DeadLetter
	if !n.Due.Before(m.From) {
		err := w.Send(ctx, Message{Topic: m.Topic, ID: n.ID, Event: &n, At: n.Due})
		if ctx.Err() != nil && err != nil {
			return false, p.give(context.WithoutCancel(ctx), *m, atOnce()) // whoever comes next goes on here
		}
		if err != nil && !p.failed(w, m, err) {
			return false, p.put(ctx, *m, p.over())
		}
		if err != nil {
			dead = append(dead, api.DeadLetter{Way: m.Way, Topic: m.Topic, Event: n.ID, Due: n.Due, Buried: p.now(), Tries: m.Tries, Fault: m.Fault})
			p.cfg.Log.Warn("given up", slog.String("way", m.Way), slog.String("topic", m.Topic), slog.String("event", n.ID), slog.String("error", m.Fault))
		}
	}
	m.Revision, m.Place, m.Next = n.Revision, n.Place, atOnce()
	m.Tries, m.Since, m.Retry, m.Fault = 0, time.Time{}, time.Time{}, ""
	return true, p.put(context.WithoutCancel(ctx), *m, p.lease(), dead...)
}

// atOnce is when a mark is due that must not wait for any clock.
func atOnce() time.Time { return time.UnixMilli(0) }

// fewTries are made whatever the clock says: it may have jumped.
const fewTries = 20

// failed notes a failure on the mark, and says whether that was the last one.
func (p *Pusher) failed(w Way, m *api.Mark, err error) bool {
	now := p.now()
	if m.Tries == 0 || m.Since.After(now) {
		m.Since = now
	}
	wait := p.cfg.Longest
	if m.Tries < 16 {
		wait = min(p.cfg.Shortest<<m.Tries, p.cfg.Longest)
	}
	m.Tries++
	m.Fault, m.Next, m.Retry = briefly(err.Error()), atOnce(), now.Add(wait)
	if w.Refused(err) {
		return m.Tries >= p.cfg.Refusals
	}
	return m.Tries >= fewTries && now.Sub(m.Since) > p.cfg.Patience
}

// tellTheEnd tells that a plan is gone, once or for as long as others are.
func (p *Pusher) tellTheEnd(ctx context.Context, w Way, m api.Mark) error {
	err := w.Send(ctx, Message{Topic: m.Topic, ID: "end", At: p.now()})
	if err != nil && ctx.Err() != nil {
		return p.give(context.WithoutCancel(ctx), m, atOnce())
	}
	if err == nil || p.failed(w, &m, err) {
		return p.cfg.Store.DropMark(ctx, m.Way, m.Topic)
	}
	return p.put(ctx, m, p.over())
}

// over is a lease that ends as it is given back.
func (p *Pusher) over() api.Lease {
	now := p.now()
	return api.Lease{Owner: p.owner, Now: now, Until: now}
}

func (p *Pusher) put(ctx context.Context, m api.Mark, l api.Lease, dead ...api.DeadLetter) error {
	return p.cfg.Store.PutMark(ctx, m, l, dead...)
}

// give gives a mark back until an instant; zero until the plan changes.
func (p *Pusher) give(ctx context.Context, m api.Mark, next time.Time) error {
	m.Next = next
	return p.put(ctx, m, p.over())
}

// giveLater gives a mark back after a fault of the store.
func (p *Pusher) giveLater(ctx context.Context, m api.Mark, cause error) error {
	m.Next, m.Retry = atOnce(), p.now().Add(p.cfg.Shortest)
	return errors.Join(cause, p.put(context.WithoutCancel(ctx), m, p.over()))
}

// briefly keeps a foreign text short, for a list.
func briefly(text string) string {
	if r := []rune(text); len(r) > 200 {
		return string(r[:200]) + "..."
	}
	return text
}
