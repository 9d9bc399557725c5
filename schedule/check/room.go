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
	areaM2   float64 // in the measure of large pieces
}

func (a lying) with(b lying) bool { return a.from.Before(b.to) && b.from.Before(a.to) }

// takesM2 is what a batch takes of the room of a zone, in the measure of large
// pieces: small discs leave gaps and count for more.
func (b *batchFacts) takesM2() float64 {
	sum := 0.0
	whole := fire.Zone{AreaM2: 1}
	for _, p := range b.Pieces {
		area := p.AreaM2
		if p.Disc {
			area *= fire.UsableM2(whole, false) / fire.UsableM2(whole, true)
		}
		sum += area
	}
	return sum
}

// room: at no instant does a zone hold more than its share allows. A single piece
// may take more than that share, but then it has the zone for itself.
func (c *checker) room() {
	for i, ph := range c.plan.Phases {
		for _, z := range ph.Zones {
			room := fire.UsableM2(fire.Zone{AreaM2: z.AreaM2}, false)
			all := c.lyingIn(i+1, z)
			for k, l := range all {
				if len(l.batch.Pieces) == 1 && l.areaM2 > room && l.batch.Pieces[0].AreaM2 <= z.AreaM2+1e-6 {
					all[k].areaM2 = room
				}
			}
			c.overfull(all, room, fmt.Sprintf("the %s zone of phase %d", z.Name, i+1))
		}
	}
}

func (c *checker) lyingIn(phase int, z schedule.Zone) []lying {
	var all []lying
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) || c.makesRoom(&b) {
			continue
		}
		for k, s := range b.Stages {
			if !cooks(s.Kind) || s.Place != "grate" || phase < s.Phase || phase > s.PhaseTo {
				continue
			}
			if in, ok := zoneOf(c.plan.Phases[phase-1], s); ok && in.Name == z.Name {
				all = append(all, lying{&b, fmt.Sprintf("%s.stages[%d]", b.path, k), s.From, s.To, b.takesM2()})
			}
		}
	}
	return all
}

// makesRoom says whether a revision takes what is on for going aside: for what stands
// in the way, by a finding, or must not be served.
func (c *checker) makesRoom(b *batchFacts) bool {
	id := b.dish.plan.ID
	return c.done(schedule.StepPutOn, id, b.Number, 0) && (c.found("stands-in-the-way", "") || c.condemned(id))
}

// overfull looks at each instant at which something is put down.
func (c *checker) overfull(all []lying, roomM2 float64, where string) {
	for _, l := range all {
		sum := 0.0
		for _, o := range all {
			if !o.from.After(l.from) && o.to.After(l.from) {
				sum += o.areaM2
			}
		}
		if sum > roomM2+1e-6 {
			c.fault(l.path, "at %s %s holds %.4f m2; it takes %.4f", told(l.from), where, sum, roomM2)
		}
	}
}

// ovenM2 is what a kitchen oven takes at once (assumption).
const ovenM2 = 0.15

// oven: a stage in the oven needs one, a wrapping, no place on the grate, and room.
func (c *checker) oven() {
	var all []lying
	for _, b := range c.batches() {
		for k, s := range b.Stages {
			if !cooks(s.Kind) || s.Place == "grate" {
				continue
			}
			path := fmt.Sprintf("%s.stages[%d]", b.path, k)
			if s.Place != "oven" || c.facts.req.Oven == nil {
				c.fault(path+".place", "%q is no place to cook on this day", s.Place)
			}
			carried := c.logged(schedule.LogToOven, &b) // the cook has put it there, wrapped or not
			if s.Phase != 0 || s.Zone != "" || s.Kind != schedule.StageWrapped && !carried {
				c.fault(path, "%s in phase %d, zone %q; in the oven a piece is wrapped and has neither", s.Kind, s.Phase, s.Zone)
			}
			if !c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) && !c.makesRoom(&b) {
				all = append(all, lying{&b, path, s.From, s.To, math.Min(b.takesM2(), ovenM2)})
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

// spots: pieces lie on the grate and not on each other, or a finding says that it
// will be tight.
func (c *checker) spots() {
	if c.facts.grill.Kind == fire.OtherKind {
		return
	}
	grate := c.facts.grill.Grate()
	var all []outline
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) {
			continue // it lay where it lay
		}
		for k, s := range b.Stages {
			if !cooks(s.Kind) || s.Place != "grate" {
				continue
			}
			for phase := s.Phase; phase <= s.PhaseTo; phase++ {
				all = append(all, c.outlines(&b, k, phase)...)
			}
		}
	}
	for i, o := range all {
		if !o.inside(grate) {
			c.fault(o.path, "at %.2f, %.2f m it reaches beyond the grate", o.at.XM, o.at.YM)
		}
		for _, p := range all[:i] {
			if o.phase == p.phase && o.lying.with(p.lying) && o.piece != p.piece && (o.meets(p) || p.meets(o)) {
				c.fault(o.path, "lies on %s", p.path)
			}
		}
	}
}

// spotsIn are where a piece lies in a phase: one spot for each zone that it goes through.
func spotsIn(p *schedule.Piece, phase int) []schedule.Spot {
	var in []schedule.Spot
	for _, spot := range p.Spots {
		if spot.Phase == phase {
			in = append(in, spot)
		}
	}
	return in
}

// zonesIn are the zones that a batch goes through in a phase, in their order: the slow
// side and then the coals, where it is seared on the fire that burns.
func zonesIn(b *batchFacts, phase int) []string {
	var zones []string
	for _, s := range b.Stages {
		if cooks(s.Kind) && s.Place == "grate" && s.Phase <= phase && phase <= s.PhaseTo && !slices.Contains(zones, s.Zone) {
			zones = append(zones, s.Zone)
		}
	}
	return zones
}

// outlines are the pieces of a batch in a phase, as they lie during stage k.
func (c *checker) outlines(b *batchFacts, k, phase int) []outline {
	var all []outline
	s, zones := b.Stages[k], zonesIn(b, phase)
	for j := range b.Pieces {
		p := &b.Pieces[j]
		path := fmt.Sprintf("%s.pieces[%d].spots", b.path, j)
		spots := spotsIn(p, phase)
		for n, spot := range spots {
			if len(zones) > 1 && len(zones) == len(spots) && zones[n] != s.Zone {
				continue // it lies there in another stage
			}
			all = append(all, outline{
				lying: lying{from: s.From, to: s.To}, path: path, piece: p, phase: phase, shape: b.dish.footprint(p.MassKg),
				at: fire.Point{XM: spot.XM, YM: spot.YM}, turn: spot.AngleDeg * math.Pi / 180,
			})
		}
		if len(spots) == 0 && !c.found("tight", b.dish.plan.ID) {
			c.fault(path, "there is none in phase %d, and no finding says that it will be tight", phase)
		}
	}
	return all
}
