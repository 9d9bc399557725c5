package schedule

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
)

// lay gives every piece its spot on the grate, for the picture. Meat bends: where
// no spot is found by shape a finding says that it will be tight, and nothing more.
func (d *day) lay(ctx context.Context, p *Plan, a arrangement, all []*placed) error {
	if d.grill.Kind == fire.OtherKind {
		return nil
	}
	for i := range p.Phases {
		zones := a.hearth.zones[a.solution.Phases[i].Fire]
		for _, z := range zones {
			if err := d.layZone(ctx, p, i, z, all); err != nil {
				return err
			}
		}
	}
	return nil
}

func (d *day) layZone(ctx context.Context, p *Plan, phase int, z fire.Zone, all []*placed) error {
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
		from, to, ok := b.inZone(phase, z.Name)
		if !ok {
			continue
		}
		var taken []fire.Spot
		for _, o := range done {
			if o.to < from && to < o.from {
				taken = append(taken, o.spots...)
			}
		}
		pieces := slices.Repeat([]fire.Footprint{b.it.footprint(b.massKg)}, b.count)
		places, fits := fire.Arrange(z, taken, pieces)
		l := laid{from: from, to: to}
		target := p.Dishes[b.it.index].Batches[b.number-1].Pieces
		for k, pl := range places {
			if pl.Placed {
				l.spots = append(l.spots, fire.Spot{Piece: pieces[k], Place: pl})
				target[k].Spots = append(target[k].Spots, Spot{Phase: phase + 1, XM: pl.At.XM, YM: pl.At.YM, AngleDeg: pl.TurnRad * 180 / math.Pi})
			}
		}
		done = append(done, l)
		if !fits && !tight[b.it.dish.ID] {
			tight[b.it.dish.ID] = true
			d.find(Finding{Code: "tight", Severity: Info, Dishes: []string{b.it.dish.ID}, Text: fmt.Sprintf(
				"%s will be tight on the %s side: bend, fold or stand pieces closer.", b.it.dish.Name, z.Name)})
		}
	}
	return nil
}

// inZone is the stretch in which a batch lies in a zone during a phase, in
// minutes before the last serving instant.
func (p *placed) inZone(phase int, zone string) (from, to float64, ok bool) {
	for s := range p.stages() {
		if p.phases[s][0] > phase || p.phases[s][1] < phase || p.phases[s][0] < 0 || p.zones[s] != zone {
			continue
		}
		a, b := p.on, p.off
		if p.stages() == 2 {
			if s == 0 {
				b = p.wrap
			} else {
				a = p.wrap
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
