package export

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// guest is a batch on one side of the grate in a phase.
type guest struct {
	dish   schedule.DishPlan
	batch  schedule.Batch
	letter string    // of the batch
	from   time.Time // on this fire, on an ordinary day
	to     time.Time
	flips  int
	direct bool
	sear   bool
	zone   string
}

// shortest is how long a batch must lie on a fire to be drawn: a stay of a minute or
// two is one that ends as the fire changes, unless it is a sear.
const (
	shortest     = 5 * time.Minute
	shortestSear = time.Minute
)

func (g guest) stays() bool {
	if g.sear {
		return g.to.Sub(g.from) >= shortestSear
	}
	return g.to.Sub(g.from) >= shortest
}

// onGrate lists the batches of a phase in the order in which they go on, lettered. One
// that goes on to another side of the grate is there once for each.
func (v *view) onGrate(f schedule.Phase) []guest {
	var all []guest
	for _, d := range v.Dishes {
		for _, b := range d.Batches {
			all = append(all, sidesOf(d, b, f)...)
		}
	}
	slices.SortStableFunc(all, func(a, b guest) int { return a.from.Compare(b.from) })
	letters := 0
	for i := range all {
		k := slices.IndexFunc(all[:i], func(g guest) bool { return g.dish.ID == all[i].dish.ID && g.batch.Number == all[i].batch.Number })
		if k >= 0 {
			all[i].letter = all[k].letter
			continue
		}
		all[i].letter = string(rune('A' + letters%26))
		letters++
	}
	return all
}

// sidesOf follows a batch over the grate during a phase.
func sidesOf(d schedule.DishPlan, b schedule.Batch, f schedule.Phase) []guest {
	var sides []guest
	for _, s := range likely(b) {
		if s.Phase == 0 || f.Number < s.Phase || f.Number > max(s.Phase, s.PhaseTo) {
			continue
		}
		n := len(sides)
		if n == 0 || sides[n-1].zone != clean(s.Zone) || sides[n-1].sear != (s.Kind == schedule.StageSear) {
			sides = append(sides, guest{dish: d, batch: b, from: later(s.From, f.From), zone: clean(s.Zone), sear: s.Kind == schedule.StageSear})
			n++
		}
		g := &sides[n-1]
		g.to = earlier(s.To, f.To)
		g.flips, g.direct = max(g.flips, s.Flips), g.direct || s.Direct
	}
	return slices.DeleteFunc(sides, func(g guest) bool { return !g.stays() })
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
		if n := len(out); n > 0 && !v.collide(out[n-1].guests, s.guests, f) {
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
	for i, newest := range all {
		s := sitting{from: newest.from, to: newest.to}
		for k, g := range all {
			if k != i && (g.from.After(newest.from) || g.to.Sub(newest.from) < shortest) {
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
	return slices.ContainsFunc(s.guests, func(o guest) bool { return o.letter == g.letter && o.zone == g.zone && o.sear == g.sear })
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

// collide says whether something in one picture would cover something in the other, or be
// in both.
func (v *view) collide(as, bs []guest, f schedule.Phase) bool {
	for _, a := range as {
		for _, b := range bs {
			same := a.letter == b.letter
			if same && (a.zone != b.zone || a.sear != b.sear) || !same && v.collides(a, b, f) {
				return true
			}
		}
	}
	return false
}

func (v *view) collides(a, b guest, f schedule.Phase) bool {
	for _, p := range a.batch.Pieces {
		for _, q := range b.batch.Pieces {
			for _, sp := range v.spots(a, p, f) {
				for _, sq := range v.spots(b, q, f) {
					if overlap(p, sp, q, sq) {
						return true
					}
				}
			}
		}
	}
	return false
}
