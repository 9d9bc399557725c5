package api

import (
	"context"
	"errors"
	"fmt"
	"sync"
)

// scores keep the newest chapter of each plan that streams follow, once for all of its
// streams. Older chapters live as long as a stream is behind them.
type scores struct {
	store Store
	mu    sync.Mutex
	plans map[string]*score
}

type score struct {
	store   Store
	id      string
	readers int // guarded by scores

	mu   sync.Mutex
	tail *chapter // nil until it was read

	feed   string // of the plan, when it was looked at last
	doubts int    // how often the plan was deleted, or its feed changed
}

func newScores(store Store) *scores { return &scores{store: store, plans: map[string]*score{}} }

// open gives the score of a plan; close lets go of it.
func (s *scores) open(r Record) (sc *score, close func()) {
	id := r.ID
	s.mu.Lock()
	defer s.mu.Unlock()
	sc = s.plans[id]
	if sc == nil {
		sc = &score{store: s.store, id: id, feed: r.Feed}
		s.plans[id] = sc
	}
	sc.readers++
	return sc, func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		if sc.readers--; sc.readers == 0 {
			delete(s.plans, id)
		}
	}
}

// revised tells the score of a plan its next revision, if anybody follows it: it need not
// be read again.
func (s *scores) revised(id string, a *agenda) {
	s.mu.Lock()
	sc := s.plans[id]
	s.mu.Unlock()
	if sc == nil {
		return
	}
	sc.mu.Lock()
	defer sc.mu.Unlock()
	if sc.tail != nil && sc.tail.Revision+1 == a.Revision {
		sc.extend(a)
	}
}

func (sc *score) extend(a *agenda) {
	next := sc.tail.then(a)
	sc.tail.next, sc.tail = next, next
}

// chaptersAtOnce is how many revisions are read at a time.
const chaptersAtOnce = 32

// look reads what revisions there are since the last look, and gives the newest chapter.
func (sc *score) look(ctx context.Context) (*chapter, error) {
	record, err := sc.store.Plan(ctx, sc.id)
	if err != nil {
		return nil, err
	}
	sc.mu.Lock()
	defer sc.mu.Unlock()
	for sc.tail == nil || sc.tail.Revision < record.Newest {
		after := -1
		if sc.tail != nil {
			after = sc.tail.Revision
		}
		list, err := sc.read(ctx, after, chaptersAtOnce)
		if err != nil {
			return nil, err
		}
		for _, a := range list {
			if sc.tail == nil {
				sc.tail = firstChapter(a)
			} else {
				sc.extend(a)
			}
		}
	}
	return sc.tail, nil
}

// read gives agendas after a number, one at least.
func (sc *score) read(ctx context.Context, after, most int) ([]*agenda, error) {
	history, err := sc.store.History(ctx, sc.id, after, most)
	if err == nil && len(history) == 0 {
		err = ErrNotFound
	}
	if err != nil {
		return nil, err
	}
	list := make([]*agenda, len(history))
	for i, r := range history {
		if list[i], err = readAgenda(r); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// ahead says whether a later chapter than that one is known, and nothing is in doubt that
// the asker has not looked into.
func (sc *score) ahead(ch *chapter, doubts *int) bool {
	sc.mu.Lock()
	defer sc.mu.Unlock()
	if *doubts != sc.doubts {
		*doubts = sc.doubts
		return false
	}
	return sc.tail.Revision > ch.Revision
}

// doubt makes all who follow a plan look whether it is there, and theirs to read.
func (s *scores) doubt(id string) {
	s.mu.Lock()
	sc := s.plans[id]
	s.mu.Unlock()
	if sc == nil {
		return
	}
	sc.mu.Lock()
	defer sc.mu.Unlock()
	sc.doubts++
}

// after is the chapter that follows one, nil for the newest.
func (sc *score) after(ctx context.Context, ch *chapter) (*chapter, error) {
	sc.mu.Lock()
	defer sc.mu.Unlock()
	switch {
	case ch.next != nil:
		return ch.next, nil
	case ch.Revision >= sc.tail.Revision:
		return nil, nil
	case ch.Revision+1 == sc.tail.Revision:
		ch.next = sc.tail
		return ch.next, nil
	}
	list, err := sc.read(ctx, ch.Revision, min(chaptersAtOnce, sc.tail.Revision-1-ch.Revision))
	if err != nil {
		return nil, err
	}
	last := ch
	for _, a := range list {
		last.next = last.then(a)
		last = last.next
	}
	return ch.next, nil
}

var errNeverGiven = errors.New("not an id that this stream has given")

// find is where a client is that has had an event.
func (sc *score) find(ctx context.Context, id eventID, newest *chapter) (*chapter, error) {
	never := fmt.Errorf("%q is %w", id, errNeverGiven)
	if id.revision > newest.Revision {
		return nil, never
	}
	ch := newest
	if id.revision < newest.Revision { // what was told before follows from the beginning
		first, err := sc.read(ctx, -1, 1)
		if err != nil {
			return nil, err
		}
		for ch = firstChapter(first[0]); ch.Revision < id.revision; {
			if ch, err = sc.after(ctx, ch); err != nil {
				return nil, err
			}
		}
	}
	if id.place >= len(ch.events) {
		return nil, never
	}
	return ch, nil
}

// catchUp looks whether somebody else changed a plan. A revision is read once for all who
// follow it; of anything else each is made to see for itself what it may still read.
func (s *scores) catchUp(ctx context.Context, id string) (news bool) {
	s.mu.Lock()
	sc := s.plans[id]
	s.mu.Unlock()
	if sc == nil {
		return false
	}
	record, err := s.store.Plan(ctx, id)
	gone := errors.Is(err, ErrNotFound)
	if err != nil && !gone {
		return false
	}
	sc.mu.Lock()
	revised := !gone && (sc.tail == nil || sc.tail.Revision != record.Newest)
	other := gone || sc.feed != record.Feed
	if sc.feed = record.Feed; other {
		sc.doubts++
	}
	sc.mu.Unlock()
	if revised {
		_, _ = sc.look(ctx) // where that fails each looks for itself
	}
	return revised || other
}
