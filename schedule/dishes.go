package schedule

import (
	"context"
	"fmt"
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/unit"
)

// dishes gathers the batches of each dish.
func (d *day) dishes(ctx context.Context, all []*placed, a arrangement) ([]DishPlan, error) {
	out := make([]DishPlan, len(d.items))
	for i := range d.items {
		it := &d.items[i]
		out[i] = DishPlan{
			ID: it.dish.ID, Name: it.dish.Name, Cut: it.cut.Name, ServeAt: d.at(float64(it.serve)),
			TargetC: it.targetC, Doneness: it.doneness, MinimumC: it.verdict.Minimum.CoreC, Probe: it.cut.Look, Chance: 1,
		}
	}
	for _, p := range all {
		if err := ctx.Err(); err != nil { // curves and holds are simulated
			return nil, err
		}
		dp := &out[p.it.index]
		b := d.batchPlan(p, a)
		dp.Count += p.count
		dp.MassKg += float64(p.count) * p.massKg
		dp.Chance = math.Min(dp.Chance, b.Chance)
		dp.Batches = append(dp.Batches, b)
		if p.number == 1 {
			dp.Way = d.wayText(p)
			dp.TargetC = p.way.pullC
			dp.Holds, dp.DoneEarly, dp.Lethality = d.holdAdvice(p), d.doneEarly(p), d.lethality(p)
		}
	}
	return out, nil
}

func (d *day) batchPlan(p *placed, a arrangement) Batch {
	b := Batch{Number: p.number, Chance: round3(p.readiness().chance())}
	t, w, l := p.it.cut.Dimensions(p.massKg, float64(p.it.dish.Thickness))
	f := p.it.footprint(p.massKg)
	for range p.count {
		b.Pieces = append(b.Pieces, Piece{MassKg: p.massKg, ThicknessM: t, WidthM: w, LengthM: l, AreaM2: fire.CoverM2(f), Disc: f.Disc})
	}
	b.Stages = d.stages(p, a)
	b.Milestones = d.milestones(p)
	b.Curve = d.curve(p)
	return b
}

// stages are the stretches of a batch as planned.
func (d *day) stages(p *placed, a arrangement) []Stage {
	area := float64(p.count) * fire.CoverM2(p.it.footprint(p.massKg))
	first := Stage{
		Kind: p.way.kind, From: d.at(p.on), To: d.at(p.off), Minutes: p.way.first.minutes(), Place: PlaceGrate,
		Direct: p.way.direct, LevelC: d.airAt(p, 0, a), CoreC: p.way.pullC, Flips: p.way.flips, AreaM2: area,
		Zone: p.zones[0], Phase: p.phases[0][0] + 1, PhaseTo: p.phases[0][1] + 1,
	}
	if p.oven && p.stages() == 1 { // carried indoors on the day, as it was
		first.Place, first.Phase, first.PhaseTo, first.AreaM2, first.Zone = PlaceOven, 0, 0, 0, ""
	}
	out := []Stage{first}
	if p.stages() == 2 {
		out[0].To, out[0].CoreC = d.at(p.on-p.way.first.planned), p.way.wrapC
		if p.it.dish.Finish == "" {
			out[0].To = d.at(p.wrap)
		}
		second := Stage{
			Kind: StageWrapped, From: d.at(p.wrap), To: d.at(p.off), Minutes: p.way.second.minutes(), With: p.way.with,
			Place: PlaceGrate, LevelC: p.way.levelC, CoreC: p.way.pullC, AreaM2: area, Zone: p.zones[1],
			Phase: p.phases[1][0] + 1, PhaseTo: p.phases[1][1] + 1,
		}
		switch {
		case p.way.sear:
			second.Kind, second.With, second.Direct = StageSear, "", true
			second.LevelC, second.Flips = d.airAt(p, 1, a), 1
		case p.oven:
			second.Place, second.Phase, second.PhaseTo, second.AreaM2, second.Zone = PlaceOven, 0, 0, 0, ""
		}
		out = append(out, second)
	}
	return append(out, d.waits(p)...)
}

// Places of a stage away from or on the grate.
const (
	PlaceGrate = "grate"
	PlaceOven  = "oven"
)

// airAt is the level of the zone that a stage begins in.
func (d *day) airAt(p *placed, stage int, a arrangement) float64 {
	ph := p.phases[stage][0]
	if ph < 0 || ph >= len(a.solution.Phases) {
		return p.way.levelC
	}
	f := a.solution.Phases[ph].Fire
	for _, z := range a.hearth.zones[f] {
		if z.Name == p.zones[stage] {
			return a.hearth.fires[f].LevelC + z.LiftK
		}
	}
	return p.way.levelC
}

// waits are the rest and the hold.
func (d *day) waits(p *placed) []Stage {
	rest := p.it.restMinutes()
	serve := float64(p.it.serve)
	rested := math.Max(p.off-rest, serve)
	gap := Minutes{
		Early: math.Max(p.on-p.took().late-serve-rest, 0), Expected: math.Max(p.on-p.took().expected-serve-rest, 0),
		Late: math.Max(p.earlyGap()-rest, 0),
	}
	var out []Stage
	place := p.restPlace()
	if p.off > rested {
		out = append(out, Stage{Kind: StageRest, From: d.at(p.off), To: d.at(rested), Place: place, Minutes: Minutes{rest, rest, rest}})
	}
	if p.hold >= 0 && (rested > serve || gap.Expected > 0) {
		out = append(out, Stage{Kind: StageHold, From: d.at(rested), To: d.at(serve), Place: p.options[p.hold].method, Minutes: gap})
	}
	return out
}

// restPlace is where a piece rests: under a loose tent, small pieces as they are.
func (p *placed) restPlace() string {
	if p.it.cut.Style == cut.Small || p.it.cut.Style == cut.Timed {
		return HoldCounter
	}
	return HoldTent
}

// moment is an instant of a batch, in minutes from its put-on at a standard
// normal quantile of its pace.
type moment struct {
	kind    string
	coreC   float64
	minutes func(z float64) float64
}

// moments are the instants of a batch from its put-on until it is rested.
func (p *placed) moments() []moment {
	out := []moment{{MilestoneOn, p.startC(), func(float64) float64 { return 0 }}}
	stall, stalls := p.stall()
	if stalls {
		out = append(out, moment{MilestoneStallBegins, stall.BeginCoreC, p.way.when(stall.BeginS)})
	}
	if p.stages() == 2 && !p.way.sear {
		out = append(out, moment{MilestoneWrap, p.way.wrapC, p.way.first.at})
	}
	if stalls {
		out = append(out, moment{MilestoneStallEnds, stall.EndCoreC, p.way.when(stall.EndS)})
	}
	off := p.takeOff
	out = append(out, moment{MilestoneTakeOff, p.way.pullC, off})
	if p.way.state != nil && p.it.cut.Style != cut.Timed {
		peak := p.way.state.CarryOver(heat.Tented(roomC))
		out = append(out, moment{MilestonePeak, peak.CoreC, func(z float64) float64 { return off(z) + peak.AfterS/60 }})
	}
	return append(out, moment{MilestoneRested, p.restedC(), func(z float64) float64 { return off(z) + p.it.restMinutes() }})
}

// restedC is what a probe shows in the middle after the least rest, degC; 0 where
// the piece is not modelled.
func (p *placed) restedC() float64 {
	if p.way.state == nil || p.it.cut.Style == cut.Timed {
		return 0
	}
	rested := *p.way.state
	rested.Change(heat.Tented(roomC))
	rested.RunFor(p.it.restMinutes() * 60)
	return heat.ProbeCoreC(p.way.pullC, rested.CoreC())
}

// milestones are the same on the clock, and the serving.
func (d *day) milestones(p *placed) []Milestone {
	var out []Milestone
	off := d.window(p, p.takeOff)
	for _, m := range p.moments() {
		w := d.window(p, m.minutes)
		if m.kind == MilestoneWrap { // it waits for somebody to be up, but not beyond the end
			w = d.afterQuiet(w)
			w = Window{earlier(w.Early, off.Early), earlier(w.Expected, off.Expected), earlier(w.Late, off.Late)}
		}
		out = append(out, Milestone{Kind: m.kind, CoreC: m.coreC, Window: w})
	}
	return append(out, Milestone{Kind: MilestoneServe, Window: fixedWindow(d.at(float64(p.it.serve)))})
}

// takeOff is when the batch is done, in minutes from the put-on. A sear begins
// when it is planned, or when the slow side is late.
func (p *placed) takeOff(z float64) float64 {
	if p.way.sear && p.stages() == 2 {
		return math.Max(p.way.first.at(z), p.on-p.wrap) + p.way.second.at(z)
	}
	return p.way.total().at(z)
}

func (p *placed) startC() float64 {
	if p.it.cut.Style == cut.Timed {
		return 0
	}
	return p.it.body(p.massKg).StartC
}

func (p *placed) stall() (heat.Stall, bool) {
	if p.way.state == nil {
		return heat.Stall{}, false
	}
	st, ok := p.way.state.Stall()
	return st, ok && p.it.cut.Style == cut.Tough
}

// wayText says how a batch cooks, in a few words.
func (d *day) wayText(p *placed) string {
	where := "beside the coals"
	if p.way.direct {
		where = "over the coals"
	}
	text := fmt.Sprintf("%s, %s band (%s)", where, p.way.band, d.req.Units.Grate(unit.Temperature(p.way.levelC)))
	switch {
	case p.way.sear:
		text += fmt.Sprintf(", from %s seared over the coals", d.core(p.way.wrapC))
	case p.stages() == 2 && p.way.fixed && (p.it.dish.Wrap == nil || p.it.dish.Wrap.After == nil):
		text += fmt.Sprintf(", wrapped in %s when it is ready for it and somebody is up", p.way.with)
	case p.stages() == 2 && p.way.fixed:
		text += fmt.Sprintf(", wrapped in %s after %s", p.way.with, d.about(p.way.first.planned))
	case p.stages() == 2:
		text += fmt.Sprintf(", wrapped in %s from %s", p.way.with, d.req.Units.Core(unit.Temperature(p.way.wrapC)))
	}
	if p.oven {
		text += ", finished in the oven"
	}
	return text
}
