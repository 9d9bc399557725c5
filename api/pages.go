package api

import (
	"bytes"
	"container/list"
	"context"
	"encoding/json"
	"sync"

	"example.com/cookday/schedule"
)

// pages keeps answers that do not change: each is of one revision of one plan. What was
// not asked for the longest goes first.
type pages struct {
	mu    sync.Mutex
	all   int // bytes
	left  int
	kept  map[pageKey]*list.Element
	order *list.List // of *page, the last asked first
}

// pageKey names an answer; shown is the id that it names the plan by.
type pageKey struct {
	id, shown string
	number    int
	format    string
}

type page struct {
	key   pageKey
	value any
	size  int
}

func newPages(bytes int) *pages {
	return &pages{all: bytes, left: bytes, kept: map[pageKey]*list.Element{}, order: list.New()}
}

// size is how many bytes are kept.
func (p *pages) size() int {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.all - p.left
}

func (p *pages) get(key pageKey) any {
	p.mu.Lock()
	defer p.mu.Unlock()
	e := p.kept[key]
	if e == nil {
		return nil
	}
	p.order.MoveToFront(e)
	return e.Value.(*page).value
}

func (p *pages) put(key pageKey, value any, size int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.kept[key] != nil {
		return
	}
	p.kept[key] = p.order.PushFront(&page{key, value, size})
	for p.left -= size; p.left < 0 && p.order.Len() > 0; {
		p.drop(p.order.Back())
	}
}

func (p *pages) drop(e *list.Element) {
	old := p.order.Remove(e).(*page)
	delete(p.kept, old.key)
	p.left += old.size
}

// forget drops what is kept of a plan that is gone.
func (p *pages) forget(id string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	for key, e := range p.kept {
		if key.id == id {
			p.drop(e)
		}
	}
}

// revisionOf reads a revision, the newest one if it is that.
func (s *Service) revisionOf(ctx context.Context, r Record, number int) (Revision, error) {
	if number == r.Newest {
		return s.cfg.Store.Newest(ctx, r.ID)
	}
	return s.cfg.Store.Revision(ctx, r.ID, number)
}

// page is a plan in a format, kept ready. A feed shows its own id and never the owner's.
func (s *Service) page(ctx context.Context, r Record, number int, shown string, f format) (*content, error) {
	key := pageKey{r.ID, shown, number, f.name}
	if k, ok := s.pages.get(key).(*content); ok {
		return k, nil
	}
	kept, err := s.revisionOf(ctx, r, number)
	if err != nil {
		return nil, err
	}
	k, err := rendered(kept, shown, nil, f)
	if err == nil && kept.Number == number {
		s.pages.put(key, k, k.size())
	}
	return k, err
}

// rendered is a kept plan in a format; p is its value if the caller has it.
func rendered(kept Revision, shown string, p *schedule.Plan, f format) (*content, error) {
	if f.render == nil {
		return newContent(f.contentType, kept.Number, kept.JSON), nil
	}
	if p == nil {
		p = new(schedule.Plan)
		if err := json.Unmarshal(kept.JSON, p); err != nil {
			return nil, err
		}
	}
	seen := *p
	seen.ID = shown
	var b bytes.Buffer
	if err := f.render(&b, seen); err != nil {
		return nil, err
	}
	return newContent(f.contentType, kept.Number, b.Bytes()), nil
}

// agendaOf is the newest agenda of a plan.
func (s *Service) agendaOf(ctx context.Context, r Record) (*agenda, error) {
	key := pageKey{r.ID, "", r.Newest, "agenda"}
	if a, ok := s.pages.get(key).(*agenda); ok {
		return a, nil
	}
	kept, err := s.cfg.Store.Newest(ctx, r.ID)
	if err != nil {
		return nil, err
	}
	a, err := readAgenda(kept)
	if err == nil && kept.Number == r.Newest {
		s.pages.put(key, a, len(kept.JSON)/2)
	}
	return a, err
}
