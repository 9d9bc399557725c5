package assemble

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// dishes gathers the batches of each dish.
func (d *Assembler) dishes(ctx context.Context, all []*arrange.Placed, a arrange.Arrangement) ([]schedule.DishPlan, error) {
	out := make([]schedule.DishPlan, len(d.Items))
	for i := range d.Items {
		it := &d.Items[i]
		out[i] = schedule.DishPlan{
			ID: it.Dish.ID, Name: it.Dish.Name, Cut: it.Cut.Name, ServeAt: d.At(float64(it.Serve)),
			TargetC: it.TargetC, Doneness: it.Doneness, MinimumC: it.Verdict.Minimum.CoreC, Probe: it.Cut.Look, Chance: 1,
		}
	}
	for _, p := range all {
		if err := ctx.Err(); err != nil { // curves and holds are simulated
			return nil, err
		}
		dp := &out[p.It.Index]
		b := d.batchPlan(p, a)
		dp.Count += p.Count
		dp.MassKg += float64(p.Count) * p.MassKg
		dp.Chance = math.Min(dp.Chance, b.Chance)
		dp.Batches = append(dp.Batches, b)
		if p.Number == 1 {
			dp.Way = d.WayText(p)
			dp.TargetC = p.Way.DoneC(p.It)
			dp.Holds, dp.DoneEarly, dp.Lethality = d.holdAdvice(p, batchesOf(p.It, all)), d.doneEarly(p), d.lethality(p)
		}
	}
	return out, nil
}

func (d *Assembler) batchPlan(p *arrange.Placed, a arrange.Arrangement) schedule.Batch {
	b := schedule.Batch{Number: p.Number, Chance: plans.Round3(p.Readiness().Chance())}
	t, w, l := p.It.Cut.Dimensions(p.MassKg, float64(p.It.Dish.Thickness))
	laid := p.It.Lay(p.MassKg)
	piece := schedule.Piece{MassKg: p.MassKg, ThicknessM: t, WidthM: w, LengthM: l, AreaM2: laid.CoverM2(), Disc: laid.Part.Disc, Rack: laid.Part.Rack}
	if laid.Lie != fire.LieFlat {
		piece.Lies = string(laid.Lie)
	}
	b.Stages = d.stages(p, a)
	onGrate := slices.ContainsFunc(b.Stages, func(s schedule.Stage) bool { return s.Place == schedule.PlaceGrate && !s.Direct }) // and not carried indoors
	for k := range p.Count {
		if k < len(p.Grate) && onGrate && p.OnStack(a.Hearth) {
			piece.Grate = p.Grate[k] + 1
		}
		b.Pieces = append(b.Pieces, piece)
	}
	b.Milestones = d.milestones(p)
	b.Curve = d.curve(p)
	return b
}

// stages are the stretches of a batch as planned.
func (d *Assembler) stages(p *arrange.Placed, a arrange.Arrangement) []schedule.Stage {
	area := float64(p.Count) * p.It.Lay(p.MassKg).CoverM2()
	first := schedule.Stage{
		Kind: p.Way.Kind, From: d.At(p.On), To: d.At(p.Off), Minutes: p.Way.First.Minutes(), Place: schedule.PlaceGrate,
		Direct: p.Way.Direct, LevelC: d.airAt(p, 0, a), CoreC: p.Way.PullC, Flips: p.Way.Flips, AreaM2: area,
		Zone: p.Zones[0], Phase: p.Phases[0].First + 1, PhaseTo: p.Phases[0].Last + 1,
	}
	if p.Oven && (p.Stages() == 1 || p.Carried && p.Left > p.Wrap) { // carried indoors on the day, as it was, and wrapped there
		first.Place, first.Phase, first.PhaseTo, first.AreaM2, first.Zone = schedule.PlaceOven, 0, 0, 0, ""
		first.LevelC = p.OvenLevelC(first.LevelC)
	}
	out := []schedule.Stage{first}
	if p.Stages() == 2 {
		out[0].To, out[0].CoreC = d.At(p.On-p.Way.First.Planned), p.Way.WrapC
		if p.It.Dish.Finish == "" {
			out[0].To = d.At(p.Wrap)
		}
		second := schedule.Stage{
			Kind: schedule.StageWrapped, From: d.At(p.Wrap), To: d.At(p.Off), Minutes: p.Way.Second.Minutes(), With: p.Way.With,
			Place: schedule.PlaceGrate, LevelC: p.Way.LevelC, CoreC: p.Way.PullC, AreaM2: area, Zone: p.Zones[1],
			Phase: p.Phases[1].First + 1, PhaseTo: p.Phases[1].Last + 1,
		}
		switch {
		case p.Way.Sear:
			second.Kind, second.With, second.Direct = schedule.StageSear, "", true
			second.LevelC, second.Flips = d.airAt(p, 1, a), 1
		case p.Oven:
			second.Place, second.Phase, second.PhaseTo, second.AreaM2, second.Zone = schedule.PlaceOven, 0, 0, 0, ""
			second.LevelC = p.OvenLevelC(second.LevelC)
		}
		out = append(out, second)
	}
	return append(out, d.waits(p)...)
}

// airAt is the level of the zone that a stage begins in.
func (d *Assembler) airAt(p *arrange.Placed, stage int, a arrange.Arrangement) float64 {
	ph := p.Phases[stage].First
	if ph < 0 || ph >= len(a.Solution.Phases) {
		return p.Way.LevelC
	}
	f := a.Solution.Phases[ph].Fire
	for _, z := range a.Hearth.Zones[f] {
		if z.Name == p.Zones[stage] {
			return a.Hearth.Fires[f].LevelC + z.LiftK
		}
	}
	return p.Way.LevelC
}

// waits are the rest and the hold.
func (d *Assembler) waits(p *arrange.Placed) []schedule.Stage {
	rest := p.It.RestMinutes()
	serve := float64(p.It.Serve)
	rested := math.Max(p.Off-rest, serve)
	gap := schedule.Minutes{
		Early: math.Max(p.On-p.Took().Late-serve-rest, 0), Expected: math.Max(p.On-p.Took().Expected-serve-rest, 0),
		Late: math.Max(p.EarlyGap()-rest, 0),
	}
	var out []schedule.Stage
	place := restPlace(p)
	if p.Off > rested {
		out = append(out, schedule.Stage{Kind: schedule.StageRest, From: d.At(p.Off), To: d.At(rested), Place: place, Minutes: schedule.Minutes{Early: rest, Expected: rest, Late: rest}})
	}
	if p.Hold >= 0 && (rested > serve || gap.Expected > 0) {
		out = append(out, schedule.Stage{Kind: schedule.StageHold, From: d.At(rested), To: d.At(serve), Place: p.Options[p.Hold].Method, Minutes: gap})
	}
	return out
}

// restPlace is where a piece rests: under a loose tent, small pieces as they are.
func restPlace(p *arrange.Placed) string {
	if p.It.Cut.Quick() {
		return schedule.HoldCounter
	}
	return schedule.HoldTent
}

// moment is an instant of a batch, in minutes from its put-on at a standard
// normal quantile of its pace.
type moment struct {
	Kind    schedule.MilestoneKind
	CoreC   float64
	Minutes func(z float64) float64
}

// Moments are the instants of a batch from its put-on until it is rested.
func Moments(p *arrange.Placed) []moment {
	out := []moment{{schedule.MilestoneOn, startC(p), func(float64) float64 { return 0 }}}
	stall, stalls := stallOf(p)
	if stalls {
		out = append(out, moment{schedule.MilestoneStallBegins, stall.BeginCoreC, p.Way.When(stall.BeginS)})
	}
	if p.Stages() == 2 && !p.Way.Sear {
		out = append(out, moment{schedule.MilestoneWrap, p.Way.WrapC, p.Way.First.At})
	}
	if stalls {
		out = append(out, moment{schedule.MilestoneStallEnds, stall.EndCoreC, p.Way.When(stall.EndS)})
	}
	off := p.TakeOff
	out = append(out, moment{schedule.MilestoneTakeOff, p.Way.PullC, off})
	if p.Way.State != nil && p.It.Cut.Style != cut.Timed {
		peak := p.Way.State.CarryOver(heat.Tented(day.RoomC))
		out = append(out, moment{schedule.MilestonePeak, peak.CoreC, func(z float64) float64 { return off(z) + peak.AfterS/60 }})
	}
	return append(out, moment{schedule.MilestoneRested, restedC(p), func(z float64) float64 { return off(z) + p.It.RestMinutes() }})
}

// restedC is what a probe shows in the middle after the least rest, degC; 0 where
// the piece is not modelled.
func restedC(p *arrange.Placed) float64 {
	if p.Way.State == nil || p.It.Cut.Style == cut.Timed {
		return 0
	}
	rested := *p.Way.State
	rested.Change(heat.Tented(day.RoomC))
	rested.RunFor(p.It.RestMinutes() * 60)
	return heat.ProbeCoreC(p.Way.PullC, rested.CoreC())
}

// milestones are the same on the clock, and the serving.
func (d *Assembler) milestones(p *arrange.Placed) []schedule.Milestone {
	var out []schedule.Milestone
	off := d.window(p, p.TakeOff)
	for _, m := range Moments(p) {
		w := d.window(p, m.Minutes)
		if m.Kind == schedule.MilestoneWrap { // it waits for somebody to be up, but not beyond the end
			w = d.AfterQuiet(w)
			w = schedule.Window{Early: instant.Earlier(w.Early, off.Early), Expected: instant.Earlier(w.Expected, off.Expected), Late: instant.Earlier(w.Late, off.Late)}
		}
		out = append(out, schedule.Milestone{Kind: m.Kind, CoreC: m.CoreC, Window: w})
	}
	return append(out, schedule.Milestone{Kind: schedule.MilestoneServe, Window: plans.FixedWindow(d.At(float64(p.It.Serve)))})
}

func startC(p *arrange.Placed) float64 {
	if p.It.Cut.Style == cut.Timed {
		return 0
	}
	return p.It.Body(p.MassKg).StartC
}

func stallOf(p *arrange.Placed) (heat.Stall, bool) {
	if p.Way.State == nil {
		return heat.Stall{}, false
	}
	st, ok := p.Way.State.Stall()
	return st, ok && p.It.Cut.Style == cut.Tough
}

// WayText says how a batch cooks, in a few words.
func (d *Assembler) WayText(p *arrange.Placed) string {
	where := d.beside()
	if p.Way.Direct {
		where = d.over()
	}
	text := fmt.Sprintf("%s, %s band (%s)", where, p.Way.Band, d.Req.Units.Grate(unit.Temperature(p.Way.LevelC)))
	switch {
	case p.Way.Sear:
		text += fmt.Sprintf(", from %s seared %s", d.Core(p.Way.WrapC), d.over())
	case p.Stages() == 2 && p.Way.Fixed && (p.It.Dish.Wrap == nil || p.It.Dish.Wrap.After == nil):
		text += fmt.Sprintf(", wrapped in %s when it is ready for it and somebody is up", p.Way.With)
	case p.Stages() == 2 && p.Way.Fixed:
		text += fmt.Sprintf(", wrapped in %s after %s", p.Way.With, d.About(p.Way.First.Planned))
	case p.Stages() == 2:
		text += fmt.Sprintf(", wrapped in %s from %s", p.Way.With, d.Req.Units.Core(unit.Temperature(p.Way.WrapC)))
	}
	if p.Oven {
		text += ", finished in the oven"
	}
	return text
}
