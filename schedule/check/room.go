package check

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
)

// lying is a batch in a place for a stretch of time.
type lying struct {
	batch    *batchFacts
	path     string
	from, to time.Time
	pieces   int
	needs    fire.Needs
	alone    fire.Needs // of a single piece that has the grate for itself
	there    bool       // the log has it in this place already: the cook found room
}

func (a lying) with(b lying) bool { return a.from.Before(b.to) && b.from.Before(a.to) }

// needs is what some pieces of a batch need of the room during a stage: as they were put on,
// or shrunk in a wrap; a piece that has a grate for itself may need less.
func (c *checker) needs(b *batchFacts, s schedule.Stage, n int, alone bool) fire.Needs {
	laid := c.facts.lay(b.dish, b.Pieces[0].MassKg)
	needs := laid.Needs(n)
	if alone {
		needs = laid.NeedsAlone()
	}
	if s.Kind == schedule.StageWrapped {
		easy, least := b.dish.cut.ShrunkTo(s.With)
		needs = fire.Needs{EasyM2: needs.EasyM2 * easy, LeastM2: needs.LeastM2 * least}
	}
	return needs
}

// room: at no instant does a grate hold more than goes on it; what lies closer than easy
// is found to be tight.
func (c *checker) room() {
	for i, ph := range c.plan.Phases {
		for _, z := range c.facts.grill.Zones(phaseAsFire(ph)) {
			grates := z.Grates()
			for level, g := range grates {
				all := c.lyingIn(i+1, z.Name, z.Direct, level, len(grates))
				c.overfull(all, g.AreaM2, fmt.Sprintf("the %s zone of phase %d, %s,", z.Name, i+1, g.Name))
				c.unsaid(all, g.AreaM2)
			}
		}
	}
}

// lyingIn are the batches on one grate of a zone, with what their pieces there need.
func (c *checker) lyingIn(phase int, zone string, direct bool, level, of int) []lying {
	var all []lying
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) || c.makesRoom(&b) {
			continue
		}
		for k, s := range b.Stages {
			if !cooks(s.Kind) || s.Place != "grate" || phase < s.Phase || phase > s.PhaseTo {
				continue
			}
			in, ok := zoneOf(c.plan.Phases[phase-1], s)
			n := b.onGrate(level, of)
			if !ok || in.Name != zone || in.Direct != direct || n == 0 {
				continue
			}
			all = append(all, lying{
				batch: &b, path: fmt.Sprintf("%s.stages[%d]", b.path, k), from: s.From, to: s.To, pieces: n,
				needs: c.needs(&b, s, n, false), alone: c.needs(&b, s, 1, true), there: c.putThere(&b, k),
			})
		}
	}
	return all
}

// onGrate is how many pieces of the batch lie on one of so many grates, counted from below.
func (b *batchFacts) onGrate(level, of int) int {
	n := 0
	for _, p := range b.Pieces {
		if of == 1 || max(p.Grate, 1) == level+1 {
			n++
		}
	}
	return n
}

// makesRoom says whether a revision takes what is on for going aside: for what stands
// in the way, by a finding, or must not be served.
func (c *checker) makesRoom(b *batchFacts) bool {
	id := b.dish.plan.ID
	return c.done(schedule.StepPutOn, id, b.Number, 0) && (c.found("stands-in-the-way", "") || c.condemned(id))
}

// at is what lies there at an instant needs.
func at(all []lying, t time.Time) fire.Needs {
	var sum, alone fire.Needs
	n := 0
	for _, o := range all {
		if !o.from.After(t) && o.to.After(t) {
			sum, alone, n = sum.Plus(o.needs), o.alone, n+o.pieces
		}
	}
	if n == 1 {
		return alone
	}
	return sum
}

// putThere says whether the cook has put a batch where it lies in a stage: it is on, and
// lay there before the stage as well.
func (c *checker) putThere(b *batchFacts, stage int) bool {
	first, s := b.Stages[0], b.Stages[stage]
	return c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0) && first.Place == s.Place && first.Direct == s.Direct
}

// anyToCome says whether something of what lies there at an instant is still to be put there.
func anyToCome(all []lying, t time.Time) bool {
	return slices.ContainsFunc(all, func(o lying) bool { return !o.there && !o.from.After(t) && o.to.After(t) })
}

// overfull looks at each instant at which something is put down. What the cook has put there
// already has its room.
func (c *checker) overfull(all []lying, roomM2 float64, where string) {
	for _, l := range all {
		if !anyToCome(all, l.from) {
			continue
		}
		if needs := at(all, l.from); needs.LeastM2 > roomM2+1e-6 {
			c.fault(l.path, "at %s what lies on %s needs %.4f m2 at the least; there are %.4f", told(l.from), where, needs.LeastM2, roomM2)
		}
	}
}

// unsaid is what is tight and no finding says so.
func (c *checker) unsaid(all []lying, roomM2 float64) {
	for _, l := range all {
		if needs := at(all, l.from); needs.EasyM2 > roomM2+1e-6 && !c.found("tight", l.batch.dish.plan.ID) {
			c.fault(l.path, "at %s it would lie easily on %.4f m2; there are %.4f, and no finding says that it is tight", told(l.from), needs.EasyM2, roomM2)
		}
	}
}

// ovenM2 is what a kitchen oven takes at once (assumption).
const ovenM2 = 0.22

// oven: a stage in the oven needs one, a wrapping, no place on the grate, and room.
func (c *checker) oven() {
	var all []lying
	for _, b := range c.batches() {
		for k, s := range b.Stages {
			if !cooks(s.Kind) || s.Place == "grate" {
				continue
			}
			path := fmt.Sprintf("%s.stages[%d]", b.path, k)
			_, ordered := c.leaves(&b)
			carried := ordered || c.logged(schedule.LogToOven, &b) // the cook has put it there, wrapped or not, or is told to
			if s.Place != "oven" || c.facts.req.Oven == nil && !carried {
				c.fault(path+".place", "%q is no place to cook on this day", s.Place)
			}
			if s.Phase != 0 || s.Zone != "" || s.Kind != schedule.StageWrapped && !carried {
				c.fault(path, "%s in phase %d, zone %q; in the oven a piece is wrapped and has neither", s.Kind, s.Phase, s.Zone)
			}
			if !c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) && !c.makesRoom(&b) {
				needs := c.needs(&b, s, len(b.Pieces), false)
				needs.LeastM2 = math.Min(needs.LeastM2, ovenM2)
				all = append(all, lying{batch: &b, path: path, from: s.From, to: s.To, pieces: len(b.Pieces), needs: needs, alone: needs})
			}
		}
	}
	c.overfull(all, ovenM2, "the oven")
}

// logged says whether the log has an event of a batch once it was on.
func (c *checker) logged(kind schedule.EntryKind, b *batchFacts) bool {
	for _, e := range c.plan.Log {
		if e.Kind == kind && e.Dish == b.dish.plan.ID && !e.At.Before(b.on()) {
			return true
		}
	}
	return false
}
