package assemble

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// lay gives every piece its spot on the grate, for the picture. Meat bends: where
// no spot is found by shape a finding says that it will be tight, and nothing more.
func (d *Assembler) lay(ctx context.Context, p *schedule.Plan, a arrange.Arrangement, all []*arrange.Placed) error {
	if d.Grill.Kind == fire.OtherKind {
		return nil
	}
	for i := range p.Phases {
		zones := a.Hearth.Zones[a.Solution.Phases[i].Fire]
		for _, z := range zones {
			if err := d.layZone(ctx, p, i, z, all); err != nil {
				return err
			}
		}
	}
	return nil
}

func (d *Assembler) layZone(ctx context.Context, p *schedule.Plan, phase int, z fire.Zone, all []*arrange.Placed) error {
	type laid struct {
		from, to float64
		spots    []fire.Spot
	}
	var done []laid
	tight := map[string]bool{}
	for _, b := range all {
		if err := ctx.Err(); err != nil { // places are searched for
			return err
		}
		from, to, ok := inZone(b, phase, z.Name)
		if !ok {
			continue
		}
		var taken []fire.Spot
		for _, o := range done {
			if o.to < from && to < o.from {
				taken = append(taken, o.spots...)
			}
		}
		pieces := slices.Repeat([]fire.Footprint{b.It.Footprint(b.MassKg)}, b.Count)
		places, fits := fire.Arrange(z, taken, pieces)
		l := laid{from: from, to: to}
		target := p.Dishes[b.It.Index].Batches[b.Number-1].Pieces
		for k, pl := range places {
			if pl.Placed {
				l.spots = append(l.spots, fire.Spot{Piece: pieces[k], Place: pl})
				target[k].Spots = append(target[k].Spots, schedule.Spot{Phase: phase + 1, XM: pl.At.XM, YM: pl.At.YM, AngleDeg: pl.TurnRad * 180 / math.Pi})
			}
		}
		done = append(done, l)
		if !fits && !tight[b.It.Dish.ID] {
			tight[b.It.Dish.ID] = true
			d.find("tight", "", b.It, fmt.Sprintf(
				"%s will be tight on the %s side: bend, fold or stand pieces closer.", b.It.Dish.Name, z.Name))
		}
	}
	return nil
}

// inZone is the stretch in which a batch lies in a zone during a phase, in
// minutes before the last serving instant.
func inZone(p *arrange.Placed, phase int, zone string) (from, to float64, ok bool) {
	for s := range p.Stages() {
		if p.Phases[s].First > phase || p.Phases[s].Last < phase || p.Phases[s].First < 0 || p.Zones[s] != zone {
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
