package check

import (
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
)

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
			if o.phase == p.phase && o.lying.with(p.lying) && !o.same(p) && o.piece.Grate == p.piece.Grate && (o.meets(p) || p.meets(o)) {
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

// drawnLeast is how much of its size a piece keeps in the picture where it is pushed
// together or overlaps its neighbour a little.
const drawnLeast = 0.89

// outlines are the pieces of a batch in a phase, as they lie during stage k.
func (c *checker) outlines(b *batchFacts, k, phase int) []outline {
	var all []outline
	s, zones := b.Stages[k], zonesIn(b, phase)
	for j := range b.Pieces {
		p := &b.Pieces[j]
		path := fmt.Sprintf("%s.pieces[%d].spots", b.path, j)
		laid := c.facts.lay(b.dish, p.MassKg)
		drawn := laid.Drawn(c.facts.grill.ReachM())
		spots := spotsIn(p, phase)
		for n, spot := range spots {
			if at := n / laid.Parts; len(zones) > 1 && len(zones)*laid.Parts == len(spots) && zones[at] != s.Zone {
				continue // it lies there in another stage
			}
			if size := spot.LengthM / drawn.LengthM; size < drawnLeast || size > 1+1e-6 || math.Abs(spot.WidthM/drawn.WidthM-size) > 1e-6 {
				c.fault(path, "%.3f x %.3f m; it lies on %.3f x %.3f", spot.LengthM, spot.WidthM, drawn.LengthM, drawn.WidthM)
			}
			shape := drawn
			shape.LengthM, shape.WidthM = spot.LengthM, spot.WidthM
			all = append(all, outline{
				lying: lying{from: s.From, to: s.To}, path: path, piece: p, part: spot.Part, phase: phase, shape: shape,
				at: fire.Point{XM: spot.XM, YM: spot.YM}, turn: spot.AngleDeg * math.Pi / 180,
			})
		}
		if len(spots) == 0 && !c.found("tight", b.dish.plan.ID) {
			c.fault(path, "there is none in phase %d, and no finding says that it will be tight", phase)
		}
	}
	return all
}
