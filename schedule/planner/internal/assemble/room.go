package assemble

import (
	"context"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// lay gives every piece its spot on the grate, for the picture, and says what will be
// tight. Where no spot is found by shape a finding says so, and nothing more.
func (d *Assembler) lay(ctx context.Context, p *schedule.Plan, a arrange.Arrangement, all []*arrange.Placed) error {
	d.noteTight(a, all)
	if d.Grill.Kind == fire.OtherKind {
		return nil
	}
	for i := range p.Phases {
		zones := a.Hearth.Zones[a.Solution.Phases[i].Fire]
		for _, z := range zones {
			for level := range z.Levels() {
				if err := d.layGrate(ctx, p, place{phase: i, zones: zones, zone: z, level: level, grate: z.Grate(level)}, all); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// place is one grate of a zone during a phase.
type place struct {
	phase, level int
	zones        []fire.Zone // of the phase
	zone         fire.Zone
	grate        fire.Grate
}

// gives are how much of its size a piece keeps where it is pushed together or overlaps
// a little: the picture tries them in turn.
var gives = []float64{1, 0.9}

func (d *Assembler) layGrate(ctx context.Context, p *schedule.Plan, at place, all []*arrange.Placed) error {
	type laid struct {
		from, to float64
		spots    []fire.Spot
	}
	var done []laid
	var drawn []drawnSpot
	on := fire.Zone{AreaM2: at.grate.AreaM2, Shape: at.grate.Shape}
	for _, b := range all {
		if err := ctx.Err(); err != nil { // places are searched for
			return err
		}
		from, to, ok := inZone(b, at.phase, at.zones, at.zone.Name)
		pieces := b.OnGrate(at.zone, at.level)
		if !ok || len(pieces) == 0 {
			continue
		}
		var taken []fire.Spot
		for _, o := range done {
			if o.to < from && to < o.from {
				taken = append(taken, o.spots...)
			}
		}
		parts, places, fits := d.arranged(on, taken, b, len(pieces))
		l := laid{from: from, to: to}
		each := len(parts) / len(pieces)
		target := p.Dishes[b.It.Index].Batches[b.Number-1].Pieces
		for k, pl := range places {
			if !pl.Placed {
				continue
			}
			l.spots = append(l.spots, fire.Spot{Piece: parts[k], Place: pl})
			s := schedule.Spot{Phase: at.phase + 1, XM: pl.At.XM, YM: pl.At.YM, AngleDeg: pl.TurnRad * 180 / math.Pi, LengthM: parts[k].LengthM, WidthM: parts[k].WidthM}
			if each > 1 {
				s.Part = k%each + 1
			}
			piece := &target[pieces[k/each]]
			piece.Spots = append(piece.Spots, s)
			drawn = append(drawn, drawnSpot{piece, len(piece.Spots) - 1})
		}
		done = append(done, l)
		if !fits {
			d.tight(b, at.zone.Name, "")
		}
	}
	var lie []fire.Spot
	for _, l := range done {
		lie = append(lie, l.spots...)
	}
	by := fire.Toward(on, lie)
	for _, s := range drawn {
		spot := &s.piece.Spots[s.at]
		spot.XM, spot.YM = spot.XM+by.XM, spot.YM+by.YM
	}
	return nil
}

// drawnSpot is the spot of that number of a piece.
type drawnSpot struct {
	piece *schedule.Piece
	at    int
}

// arranged looks for places for the parts of so many pieces, at their size or pushed
// together a little.
func (d *Assembler) arranged(z fire.Zone, taken []fire.Spot, b *arrange.Placed, n int) (parts []fire.Footprint, places []fire.Place, fits bool) {
	laid := b.It.Lay(b.MassKg)
	part := laid.Drawn(d.Grill.ReachM())
	for _, give := range gives {
		less := part
		less.LengthM, less.WidthM = less.LengthM*give, less.WidthM*give
		parts = slices.Repeat([]fire.Footprint{less}, n*laid.Parts)
		if places, fits = fire.Arrange(z, taken, parts); fits {
			break
		}
	}
	return parts, places, fits
}

// inZone is the stretch in which a batch lies in a zone during a phase, in
// minutes before the last serving instant.
func inZone(p *arrange.Placed, phase int, zones []fire.Zone, zone string) (from, to float64, ok bool) {
	for s := range p.Stages() {
		if p.Phases[s].First > phase || p.Phases[s].Last < phase || p.Phases[s].First < 0 || p.ZoneIn(zones, s).Name != zone {
			continue
		}
		a, b := p.On, p.Off
		if p.Stages() == 2 {
			if s == 0 {
				b = p.Wrap
			} else {
				a = p.Wrap
			}
		}
		if !ok {
			from, to, ok = a, b, true
			continue
		}
		from, to = math.Max(from, a), math.Min(to, b)
	}
	return from, to, ok
}
