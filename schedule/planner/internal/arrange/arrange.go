package arrange

import (
	"context"
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// Costs of the solver's objective, in tenths of what a minute of hold costs
// (assumptions): a change of fire is ten minutes of work with hot coals and a quarter of an
// hour or more in which nothing can go on; one more for the same meal wants a good reason;
// and a minute of fire.
const (
	changeCost  = 250
	rakeCost    = 100 // of one for which the coals that burn are only raked
	furtherCost = 150
	burnCost    = 1
)

// leastChangeK is how far two levels of a layout must lie apart to be worth a change: 25 F
// either way is good enough for any of them (common practice, no source).
const leastChangeK = 26 / 1.8

// ovenCost is what finishing in the oven costs: a cook does it for the grate's
// sake, not to save an hour of fire (assumption).
const ovenCost = 600

// changeCosts are those of the changes from a fire to others.
func changeCosts(from fire.Fire, all []fire.Fire) []int {
	costs := make([]int, len(all))
	for i, to := range all {
		if costs[i] = changeCost; from.Layout != to.Layout && fire.AllLit(from.Layout) && fire.AllLit(to.Layout) {
			costs[i] = rakeCost
		}
	}
	return costs
}

// ovenRoomCm2 is the rack of a kitchen oven (assumption).
const ovenRoomCm2 = 2200

// Arrangement is the solved day: what the solver was asked, in the planner's
// terms, and what it answered.
type Arrangement struct {
	Least    int // batches that the menu makes at the least
	Hearth   Hearth
	Batches  []*Batch
	Problem  sequence.Problem
	Solution sequence.Solution
	Unheard  bool // layouts that are asked for did not count
}

// Arrange states the day as an integer problem and solves it. Dishes are split
// into as few batches as the roomiest place allows; if that cannot be done, or only with
// a change of fire that may be spared, into more, smaller ones that fit more of the places
// that they may cook in. A layout that is asked for is had where the day can be had with it. Where pieces cannot be parted among grates one above another, fewer of the
// grates are used.
func (d *Arranger) Arrange(ctx context.Context) (Arrangement, error) {
	if n := d.LeastBatches(); n > MostBatches {
		return Arrangement{Least: n, Solution: sequence.Solution{Status: sequence.Infeasible}}, nil
	}
	a, err := d.arrangeStacked(ctx)
	if err != nil || !d.asksMore() {
		return d.onRing(ctx, a, err)
	}
	if a.Solved() && (d.FirstPlan || !d.runsShort(a)) {
		return a, nil
	}
	free := *d
	free.Unheard = true
	b, err := free.arrangeStacked(ctx)
	b, err = free.onRing(ctx, b, err)
	if b.Unheard = true; err != nil || !a.Solved() || b.Solved() && !d.runsShort(b) {
		return b, err
	}
	return a, nil
}

func (d *Arranger) arrangeStacked(ctx context.Context) (Arrangement, error) {
	h := d.layFires()
	for h.Levels = len(h.stacked()); ; h.Levels-- {
		a, err := d.arrangeOn(ctx, h)
		if err != nil || h.Levels <= 1 || !a.Solved() {
			return a, err
		}
		if fits, err := d.stacks(ctx, a); err != nil || fits {
			return a, err
		}
	}
}

// Solved says whether there is an arrangement.
func (a Arrangement) Solved() bool {
	return a.Solution.Status == sequence.Optimal || a.Solution.Status == sequence.Feasible
}

// stacks says whether the pieces can be parted among grates one above another.
func (d *Arranger) stacks(ctx context.Context, a Arrangement) (bool, error) {
	all, err := d.Place(ctx, a)
	if err != nil {
		return false, err
	}
	for _, p := range all {
		p.Grate = nil
	}
	return d.Stack(a.Hearth, a.Solution.Phases, all), nil
}

// arrangeOn arranges the day on a hearth.
func (d *Arranger) arrangeOn(ctx context.Context, h Hearth) (Arrangement, error) {
	roomy, err := d.Batches(ctx, h, Roomiest)
	if err != nil {
		return Arrangement{}, err
	}
	a, err := d.solve(ctx, h, roomy, than{})
	if err != nil || a.Solution.Status != sequence.Infeasible && (d.FirstPlan || len(a.Solution.Phases) < 2) {
		return a, err
	}
	better := than{}
	if a.Solved() { // loads in turn may spare a fire, or one that is lit anew after a night
		lit, err := d.firesLit(ctx, a)
		if err != nil {
			return a, err
		}
		better = than{cost: a.Solution.Cost + changeCost*(lit-len(a.Solution.Phases)), fires: lit}
	}
	tried := roomy
	for _, c := range []Cutting{usual, filled} {
		finer, err := d.Batches(ctx, h, c)
		if err != nil {
			return Arrangement{}, err
		}
		if sameSizes(finer, tried) || len(finer) > MostBatches {
			continue
		}
		b, err := d.solve(ctx, h, finer, better)
		if err == nil && b.Solved() && a.Solved() {
			var lit int
			if lit, err = d.firesLit(ctx, b); err == nil && lit >= better.fires {
				continue
			}
		}
		if err != nil || b.Solved() || b.Solution.Status != sequence.Infeasible && !a.Solved() {
			return b, err
		}
		tried = finer
	}
	return a, nil
}

// firesLit are the fires of an arrangement, those counted too that are lit anew after long
// hours in which nothing is on them.
func (d *Arranger) firesLit(ctx context.Context, a Arrangement) (int, error) {
	if a.Solution.Light < halfDay {
		return len(a.Solution.Phases), nil
	}
	all, err := d.Place(ctx, a)
	if err != nil {
		return 0, err
	}
	d.Rekindle(&a, all, 0, Ever)
	return len(a.Solution.Phases), nil
}

// fewFires are as many as a meal has without a good reason for more.
const fewFires = 2

// than is what a plan must cost less than, on fewer fires; nothing for any plan.
type than struct{ cost, fires int }

func (d *Arranger) solve(ctx context.Context, h Hearth, batches []*Batch, better than) (Arrangement, error) {
	a := Arrangement{Hearth: h, Batches: batches}
	a.Solution.Status = sequence.Infeasible
	if len(batches) > MostBatches || !everyBatchHasWay(batches) {
		return a, nil
	}
	var err error
	if a.Problem, err = d.Problem(ctx, h, batches); err != nil {
		return a, err
	}
	for _, b := range batches {
		if len(b.First) == 0 {
			return a, nil
		}
	}
	without(&a.Problem, d.Lifted)
	a.Problem.NoClash, a.Problem.FirstPlan = d.NoClash, d.FirstPlan
	if better.cost > 0 {
		a.Problem.NoClash, a.Problem.Below, a.Problem.MaxPhases = true, better.cost, better.fires-1
	}
	a.Solution, err = d.Search(ctx, &a.Problem)
	return a, err
}

// Search solves a problem with what the day may still spend.
func (d *Arranger) Search(ctx context.Context, p *sequence.Problem) (sequence.Solution, error) {
	p.Budget = d.Allowance.NodesFor(d.Nodes, p)
	s, err := d.Room.Solve(ctx, p)
	d.Allowance.Spend(s.Nodes, p)
	if err == nil {
		err = sequence.Verify(p, &s) // worked out again where it is used: a breach is a fault of this program
	}
	return s, err
}

func (d *Arranger) Problem(ctx context.Context, h Hearth, batches []*Batch) (sequence.Problem, error) {
	p := sequence.Problem{
		FurtherCost: furtherCost, FewChanges: fewFires*d.meals() - 1, BurnCost: burnCost,
		Quiet: d.quiet(), Earliest: d.Earliest, IdleMost: idleMost,
		LightHands: HandsLight, ChangeHands: HandsChange, MaxPhases: d.mostPhases(),
	}
	if d.Req.Oven != nil {
		p.Ovens = []int{ovenRoomCm2}
	}
	for i, f := range h.Fires {
		sf := sequence.Fire{Setup: d.Grill.SetupMinutes(f), LightClosed: d.lightClosed(f), ChangeClosed: d.changeClosed(f)}
		for _, z := range h.Zones[i] {
			sf.Zones = append(sf.Zones, int(h.roomOf(z)*1e4))
		}
		p.Fires = append(p.Fires, sf)
		row := make([]int, len(h.Fires))
		for j, g := range h.Fires {
			m, ok := d.Grill.ChangeMinutes(f, g)
			if row[j] = m; !ok || f.Layout == g.Layout && math.Abs(f.LevelC-g.LevelC) < leastChangeK {
				row[j] = -1
			}
		}
		p.Change, p.ChangeCosts = append(p.Change, row), append(p.ChangeCosts, changeCosts(f, h.Fires))
	}
	night := d.nightFires(h)
	h.least = leastArea(batches)
	for _, b := range batches {
		if err := ctx.Err(); err != nil { // holds are simulated for every way
			return p, err
		}
		p.Chains = append(p.Chains, d.chain(b, h, night))
	}
	for i := range p.Fires { // a night's fire is left alone before people sleep
		level := h.Fires[i].LevelC
		p.Fires[i].LightClosed = slices.Concat(p.Fires[i].LightClosed, d.settled(night[i], level, d.Grill.SetupMinutes(h.Fires[i])))
		p.Fires[i].ChangeClosed = slices.Concat(p.Fires[i].ChangeClosed, d.settled(night[i], level, HandsChange))
	}
	return p, nil
}
