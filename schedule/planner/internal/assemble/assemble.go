package assemble

import (
	"context"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/sequence"
	"example.com/cookday/schedule/planner/internal/spread"
)

// Assemble writes the solved day as a plan.
func (d *Assembler) Assemble(ctx context.Context, a arrange.Arrangement) (schedule.Plan, error) {
	all, err := d.Place(ctx, a)
	if err != nil {
		return schedule.Plan{}, err
	}
	arrange.NumberByTime(all)
	d.Rekindle(&a, all, 0, arrange.Ever)
	d.countEarly(all)
	p, err := d.Write(ctx, a, all)
	if err == nil {
		p = d.frozenStill(p)
	}
	return p, err
}

// frozenStill makes no day of a plan that puts on a piece which there was no time to thaw.
func (d *Assembler) frozenStill(p schedule.Plan) schedule.Plan {
	var still []schedule.Finding
	for _, f := range p.Findings {
		if f.Code == codeNoThaw {
			still = append(still, f)
		}
	}
	if len(still) == 0 {
		return p
	}
	q := d.BlankPlan()
	q.Solution = schedule.Solution{Status: sequence.Infeasible.String(), Proven: true, Nodes: p.Solution.Nodes}
	q.Dishes, q.Findings, q.Cautions = d.Menu(), still, d.Cautions(&q, nil)
	return q
}

// codeNoThaw is that of a piece that goes on thawed, and has no time to thaw.
const codeNoThaw = "thaw-no-time"

func (d *Assembler) Write(ctx context.Context, a arrange.Arrangement, all []*arrange.Placed) (schedule.Plan, error) {
	p := d.BlankPlan()
	p.Feasible = true
	p.Solution = SolutionOf(a.Solution)
	p.Phases = d.Phases(a, all)
	p.Fuel = d.fuel(p.Phases)
	var err error
	if p.Dishes, err = d.dishes(ctx, all, a); err != nil {
		return schedule.Plan{}, err
	}
	var rs []spread.Readiness
	for _, b := range all {
		rs = append(rs, b.Readiness())
	}
	p.Chance.All = plans.Round3(spread.ChanceOfAll(rs))
	if len(p.Phases) > 0 {
		t := p.Phases[0].SetupFrom
		p.LightAt = &t
	}
	if err := d.lay(ctx, &p, a, all); err != nil {
		return schedule.Plan{}, err
	}
	d.noteHolds(all)
	d.noteHeats(all)
	d.noteWraps(all)
	d.noteFuel(&p)
	d.noteFires(&p)
	d.noteLayouts(a, all)
	p.Steps = plans.WithoutLateHolds(d.Steps(&p, a, all))
	p.Quiet = d.QuietWithin(p)
	d.noteNight(&p, all)
	p.Findings = strict.NonNil([]schedule.Finding(d.findings))
	p.Cautions = d.Cautions(&p, all)
	return p, nil
}

func SolutionOf(s sequence.Solution) schedule.Solution {
	return schedule.Solution{
		Status: s.Status.String(), Proven: s.Status == sequence.Optimal || s.Status == sequence.Infeasible,
		Objective: s.Cost, Hold: s.Parts.Hold, Mode: s.Parts.Mode, Change: s.Parts.Change, Burn: s.Parts.Burn,
		Bound: s.Bound, Nodes: s.Nodes, Stopped: s.Stopped,
	}
}

// Phases turns the solver's phases into the cook's. The last one ends with the
// last food on the grate.
func (d *Assembler) Phases(a arrange.Arrangement, all []*arrange.Placed) []schedule.Phase {
	var out []schedule.Phase
	setup := float64(a.Solution.Light)
	for i, sp := range a.Solution.Phases {
		f, relit := a.Hearth.Fires[sp.Fire], a.Relit(i)
		if relit {
			setup = float64(sp.Begin + d.Grill.SetupMinutes(f))
		}
		end := float64(sp.End)
		if i == len(a.Solution.Phases)-1 {
			end = arrange.LastUse(all, i, float64(sp.Begin))
		}
		ph := schedule.Phase{
			Number: i + 1, Layout: string(f.Layout), Band: fire.Band(f.LevelC), LevelC: f.LevelC,
			Relit: relit, GaugeC: fire.GaugeC(d.Grill, f.LevelC, d.Air.AirC), SetupFrom: d.At(setup), From: d.At(float64(sp.Begin)), To: d.At(end),
		}
		for _, z := range a.Hearth.Zones[sp.Fire] {
			ph.Zones = append(ph.Zones, schedule.Zone{
				Name: z.Name, Direct: z.Direct, LevelC: f.LevelC + z.LiftK, AreaM2: z.AreaM2,
				UsableM2: fire.UsableM2(z, false), DiscsM2: fire.UsableM2(z, true), Grates: gratesOf(z),
			})
		}
		d.burn(&ph, f, i == 0 || relit)
		out = append(out, ph)
		setup = float64(sp.End)
	}
	return out
}

// gratesOf are the grates of a zone that has several.
func gratesOf(z fire.Zone) []schedule.Grate {
	if len(z.Above) == 0 {
		return nil
	}
	var out []schedule.Grate
	for _, g := range z.Grates() {
		out = append(out, schedule.Grate{Name: g.Name, AreaM2: g.AreaM2})
	}
	return out
}

// window is an instant on the paces of a way, counted from the put-on.
func (d *Assembler) window(p *arrange.Placed, minutes func(z float64) float64) schedule.Window {
	return schedule.Window{
		Early: d.At(p.On - minutes(-spread.ZTenth)), Expected: d.At(p.On - minutes(0)), Late: d.At(p.On - minutes(spread.ZTenth)),
	}
}
