package arrange

import (
	"context"
	"slices"

	"example.com/cookday/schedule/planner/internal/sequence"
)

// Stated is the problem that was stated last: a day that is tried in several ways states it once.
type Stated struct {
	d       *Arranger
	h       Hearth
	batches []Batch
	p       sequence.Problem
}

// Problem is [Arranger.Problem], for the caller to change.
func (s *Stated) Problem(ctx context.Context, d *Arranger, h Hearth, batches []*Batch) (sequence.Problem, error) {
	if !s.is(d, h, batches) {
		p, err := d.Problem(ctx, h, batches)
		if err != nil {
			return p, err
		}
		*s = Stated{d: d, h: h, p: p}
		for _, b := range batches {
			s.batches = append(s.batches, *b)
		}
	}
	for i, b := range batches {
		b.First, b.second = s.batches[i].First, s.batches[i].second
	}
	p := s.p
	p.Fires, p.Chains = slices.Clone(p.Fires), slices.Clone(p.Chains)
	for i := range p.Chains {
		tasks := slices.Clone(p.Chains[i].Tasks)
		for k := range tasks {
			tasks[k].Modes = slices.Clone(tasks[k].Modes)
		}
		p.Chains[i].Tasks = tasks
	}
	return p, nil
}

// is says whether this is what was stated.
func (s *Stated) is(d *Arranger, h Hearth, batches []*Batch) bool {
	sameFires := len(h.Fires) == len(s.h.Fires) && (len(h.Fires) == 0 || &h.Fires[0] == &s.h.Fires[0])
	return d == s.d && sameFires && h.Levels == s.h.Levels && slices.EqualFunc(s.batches, batches, func(a Batch, b *Batch) bool {
		return a.It == b.It && a.Number == b.Number && a.MassKg == b.MassKg && a.Count == b.Count && a.group == b.group && slices.Equal(a.Ways, b.Ways)
	})
}
