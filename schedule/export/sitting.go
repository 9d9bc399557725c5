package export

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// guest is a batch on the grate in a phase.
type guest struct {
	dish   schedule.DishPlan
	batch  schedule.Batch
	letter string
	from   time.Time // on this fire
	to     time.Time
	flips  int
	direct bool
	zone   string
}

// shortest is how long a batch must lie on a fire to be drawn: a stay of a minute or
// two is one that ends as the fire changes.
const shortest = 5 * time.Minute

// onGrate lists the batches of a phase in the order in which they go on, lettered.
func (v *view) onGrate(f schedule.Phase) []guest {
	var all []guest
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			g := guest{dish: d, batch: b}
			for _, s := range b.Stages {
				if s.Phase == 0 || f.Number < s.Phase || f.Number > max(s.Phase, s.PhaseTo) {
					continue
				}
				if g.from.IsZero() {
					g.from, g.zone = later(s.From, f.From), clean(s.Zone)
				}
				g.to = s.To
				if s.To.After(f.To) {
					g.to = f.To
				}
				g.flips, g.direct = max(g.flips, s.Flips), g.direct || s.Direct
			}
			if g.to.Sub(g.from) >= shortest {
				all = append(all, g)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b guest) int { return a.from.Compare(b.from) })
	for i := range all {
		all[i].letter = string(rune('A' + i%26))
	}
	return all
}

// sitting is the batches of one picture and when they lie on the grate together.
type sitting struct {
	guests   []guest
	from, to time.Time
}

// sittings finds the batches of a phase that lie on the grate together: one sitting
// for each largest set of them, but those in whose pictures nothing would cover
// anything else are put together. An empty fire has one sitting.
func (v *view) sittings(f schedule.Phase) []sitting {
	var out []sitting
	for _, s := range v.together(v.onGrate(f)) {
		if n := len(out); n > 0 && !collide(out[n-1].guests, s.guests, f.Number) {
			out[n-1] = out[n-1].join(s)
			continue
		}
		out = append(out, s)
	}
	if len(out) == 0 {
		out = []sitting{{}}
	}
	if len(out) == 1 {
		out[0].from, out[0].to = f.From, f.To
	}
	return out
}

// together lists the largest sets of batches that share the grate for a while. Such a
// set begins when one of them goes on.
func (v *view) together(all []guest) []sitting {
	var out []sitting
	for _, newest := range all {
		s := sitting{from: newest.from, to: newest.to}
		for _, g := range all {
			if g.from.After(newest.from) || g.to.Sub(newest.from) < shortest {
				continue
			}
			s.guests = append(s.guests, g)
			if g.to.Before(s.to) {
				s.to = g.to
			}
		}
		if n := len(out); n > 0 && out[n-1].within(s) {
			out = out[:n-1]
		}
		out = append(out, s)
	}
	return out
}

// within tells whether every batch of s is one of t's.
func (s sitting) within(t sitting) bool {
	for _, g := range s.guests {
		if !t.has(g) {
			return false
		}
	}
	return true
}

func (s sitting) has(g guest) bool {
	return slices.ContainsFunc(s.guests, func(o guest) bool { return o.letter == g.letter })
}

func (s sitting) join(t sitting) sitting {
	for _, g := range t.guests {
		if !s.has(g) {
			s.guests = append(s.guests, g)
		}
	}
	s.to = t.to
	return s
}

func collide(as, bs []guest, phase int) bool {
	for _, a := range as {
		for _, b := range bs {
			if a.letter != b.letter && collides(a, b, phase) {
				return true
			}
		}
	}
	return false
}

func collides(a, b guest, phase int) bool {
	for _, p := range a.batch.Pieces {
		for _, q := range b.batch.Pieces {
			for _, sp := range spots(p, phase) {
				for _, sq := range spots(q, phase) {
					if overlap(p, sp, q, sq) {
						return true
					}
				}
			}
		}
	}
	return false
}
