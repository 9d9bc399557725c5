package schedule

import (
	"context"

	"example.com/cookday/schedule/internal/sequence"
)

// Costs of the solver's objective, in tenths of what a minute of hold costs
// (assumptions): a change of fire, and a minute of fire.
const (
	changeCost = 150
	burnCost   = 1
)

// ovenRoomCm2 is what a kitchen oven's rack takes (assumption).
const ovenRoomCm2 = 1500

// arrangement is the solved day: what the solver was asked, in the planner's
// terms, and what it answered.
type arrangement struct {
	hearth   hearth
	batches  []*batch
	problem  sequence.Problem
	solution sequence.Solution
}

// arrange states the day as an integer problem and solves it.
func (d *day) arrange(ctx context.Context) (arrangement, error) {
	a := arrangement{hearth: d.layFires()}
	a.batches = d.batches(a.hearth)
	if len(a.batches) > mostBatches || !d.everyBatchHasWay(a.batches) {
		a.solution.Status = sequence.Infeasible
		return a, nil
	}
	a.problem = d.problem(a.hearth, a.batches)
	var err error
	a.solution, err = sequence.Solve(ctx, &a.problem)
	return a, err
}

func (d *day) problem(h hearth, batches []*batch) sequence.Problem {
	p := sequence.Problem{
		ChangeCost: changeCost, BurnCost: burnCost, Quiet: d.quiet, Earliest: d.earliest,
		LightHands: handsLight, ChangeHands: handsChange,
	}
	if d.req.Oven != nil {
		p.Ovens = []int{ovenRoomCm2}
	}
	for i, f := range h.fires {
		sf := sequence.Fire{Setup: d.grill.SetupMinutes(f)}
		for _, z := range h.zones[i] {
			sf.Zones = append(sf.Zones, int(usable(z)*1e4))
		}
		p.Fires = append(p.Fires, sf)
		row := make([]int, len(h.fires))
		for j, g := range h.fires {
			m, ok := d.grill.ChangeMinutes(f, g)
			if row[j] = m; !ok {
				row[j] = -1
			}
		}
		p.Change = append(p.Change, row)
	}
	night := d.nightFires(h)
	for _, b := range batches {
		p.Chains = append(p.Chains, d.chain(b, h, night))
	}
	return p
}

// everyBatchHasWay says so, with a finding for each dish that has none.
func (d *day) everyBatchHasWay(batches []*batch) bool {
	ok := true
	for _, b := range batches {
		if len(b.ways) > 0 {
			continue
		}
		ok = false
		if b.number == 1 {
			d.find(d.neverArrives(b.it))
		}
	}
	return ok
}
