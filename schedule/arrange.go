package schedule

import (
	"context"
	"slices"

	"example.com/cookday/schedule/internal/sequence"
)

// Costs of the solver's objective, in tenths of what a minute of hold costs
// (assumptions): a change of fire, and a minute of fire.
const (
	changeCost = 150
	burnCost   = 1
)

// ovenCost is what finishing in the oven costs: a cook does it for the grate's
// sake, not to save an hour of fire (assumption).
const ovenCost = 300

// ovenRoomCm2 is what a kitchen oven's rack takes (assumption).
const ovenRoomCm2 = 1500

// arrangement is the solved day: what the solver was asked, in the planner's
// terms, and what it answered.
type arrangement struct {
	least    int // batches that the menu makes at the least
	hearth   hearth
	batches  []*batch
	problem  sequence.Problem
	solution sequence.Solution
}

// arrange states the day as an integer problem and solves it. Dishes are split
// into as few batches as the roomiest place allows; if that cannot be done, into
// more, smaller ones that fit every place they may cook in.
func (d *day) arrange(ctx context.Context) (arrangement, error) {
	if n := d.leastBatches(); n > mostBatches {
		return arrangement{least: n, solution: sequence.Solution{Status: sequence.Infeasible}}, nil
	}
	h := d.layFires()
	roomy, err := d.batches(ctx, h, roomiest)
	if err != nil {
		return arrangement{}, err
	}
	a, err := d.solve(ctx, h, roomy)
	if err != nil || a.solution.Status != sequence.Infeasible {
		return a, err
	}
	finer, err := d.batches(ctx, h, narrowest)
	if err != nil {
		return arrangement{}, err
	}
	if len(finer) == len(a.batches) || len(finer) > mostBatches {
		return a, nil
	}
	b, err := d.solve(ctx, h, finer)
	if err != nil || b.solution.Status != sequence.Infeasible {
		return b, err
	}
	return a, nil
}

func (d *day) solve(ctx context.Context, h hearth, batches []*batch) (arrangement, error) {
	a := arrangement{hearth: h, batches: batches}
	a.solution.Status = sequence.Infeasible
	if len(batches) > mostBatches || !everyBatchHasWay(batches) {
		return a, nil
	}
	var err error
	if a.problem, err = d.problem(ctx, h, batches); err != nil {
		return a, err
	}
	for _, b := range batches {
		if len(b.first) == 0 {
			return a, nil
		}
	}
	without(&a.problem, d.lifted)
	a.problem.NoClash, a.problem.FirstPlan = d.noClash, d.probe
	a.solution, err = d.search(ctx, &a.problem)
	return a, err
}

// search solves a problem with what the day may still spend.
func (d *day) search(ctx context.Context, p *sequence.Problem) (sequence.Solution, error) {
	p.Budget = d.purse.budget(d.budget, p)
	s, err := sequence.Solve(ctx, p)
	d.purse.spend(s.Nodes, p)
	return s, err
}

func (d *day) problem(ctx context.Context, h hearth, batches []*batch) (sequence.Problem, error) {
	p := sequence.Problem{
		ChangeCost: changeCost, BurnCost: burnCost, Quiet: d.quiet, Earliest: d.earliest,
		LightHands: handsLight, ChangeHands: handsChange, MaxPhases: d.mostPhases(),
	}
	if d.req.Oven != nil {
		p.Ovens = []int{ovenRoomCm2}
	}
	for i, f := range h.fires {
		sf := sequence.Fire{Setup: d.grill.SetupMinutes(f), LightClosed: d.lightClosed(f), ChangeClosed: d.changeClosed(f)}
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
	h.least = leastArea(batches)
	for _, b := range batches {
		if err := ctx.Err(); err != nil { // holds are simulated for every way
			return p, err
		}
		p.Chains = append(p.Chains, d.chain(b, h, night))
	}
	for i := range p.Fires {
		p.Fires[i].LightClosed = append(p.Fires[i].LightClosed, d.idleLights(&p, i, night[i])...)
		p.Fires[i].ChangeClosed = append(p.Fires[i].ChangeClosed, d.idleChanges(&p, i, night[i])...)
	}
	return p, nil
}

// The fires of a request: as many as of a day, and two more where a second day has a meal
// of its own. The solver tries every sequence of them, so it is not offered twice as many.
func (d *day) mostPhases() int {
	if d.meals() > 1 {
		return sequence.DefaultPhases + 2
	}
	return sequence.DefaultPhases
}

// meals counts the servings that are half a day or more apart.
func (d *day) meals() int {
	var serves []int
	for i := range d.items {
		serves = append(serves, d.items[i].serve)
	}
	slices.Sort(serves)
	n := 1
	for i := 1; i < len(serves); i++ {
		if serves[i]-serves[i-1] >= halfDay {
			n++
		}
	}
	return n
}

const halfDay = 12 * 60

func everyBatchHasWay(batches []*batch) bool {
	for _, b := range batches {
		if len(b.ways) == 0 {
			return false
		}
	}
	return true
}
