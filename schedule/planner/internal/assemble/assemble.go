package assemble

import (
	"context"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	instantpkg "example.com/cookday/schedule/internal/instant"
	arrangepkg "example.com/cookday/schedule/planner/internal/arrange"
	daypkg "example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
	spreadpkg "example.com/cookday/schedule/planner/internal/spread"
)

// assemble writes the solved day as a plan.
func DayAssemble(d *daypkg.Day, ctx context.Context, a arrangepkg.Arrangement) (schedule.Plan, error) {
	all, err := arrangepkg.DayPlace(d, ctx, a)
	if err != nil {
		return schedule.Plan{}, err
	}
	arrangepkg.DayRekindle(d, &a, all, 0, arrangepkg.Ever)
	return DayWrite(d, ctx, a, all)
}

func DayWrite(d *daypkg.Day, ctx context.Context, a arrangepkg.Arrangement, all []*arrangepkg.Placed) (schedule.Plan, error) {
	p := d.BlankPlan()
	p.Feasible = true
	p.Solution = SolutionOf(a.Solution)
	p.Phases = DayPhases(d, a, all)
	p.Fuel = dayFuel(d, p.Phases)
	var err error
	if p.Dishes, err = dayDishes(d, ctx, all, a); err != nil {
		return schedule.Plan{}, err
	}
	var rs []spreadpkg.Readiness
	for _, b := range all {
		rs = append(rs, b.Readiness())
	}
	p.Chance.All = instantpkg.Round3(spreadpkg.ChanceOfAll(rs))
	if len(p.Phases) > 0 {
		t := p.Phases[0].SetupFrom
		p.LightAt = &t
	}
	if err := dayLay(d, ctx, &p, a, all); err != nil {
		return schedule.Plan{}, err
	}
	dayNoteHolds(d, all)
	dayNoteWraps(d, all)
	dayNoteFuel(d, &p)
	p.Steps = DaySteps(d, &p, a, all)
	p.Quiet = d.QuietWithin(p)
	p.Findings = instantpkg.NonNil(d.Findings)
	p.Cautions = DayCautions(d, &p, all)
	return p, nil
}

func SolutionOf(s sequence.Solution) schedule.Solution {
	return schedule.Solution{
		Status: s.Status.String(), Proven: s.Status == sequence.Optimal || s.Status == sequence.Infeasible,
		Objective: s.Cost, Hold: s.Parts.Hold, Mode: s.Parts.Mode, Change: s.Parts.Change, Burn: s.Parts.Burn,
		Bound: s.Bound, Nodes: s.Nodes, Stopped: s.Stopped,
	}
}

// phases turns the solver's phases into the cook's. The last one ends with the
// last food on the grate.
func DayPhases(d *daypkg.Day, a arrangepkg.Arrangement, all []*arrangepkg.Placed) []schedule.Phase {
	var out []schedule.Phase
	setup := float64(a.Solution.Light)
	for i, sp := range a.Solution.Phases {
		f, relit := a.Hearth.Fires[sp.Fire], a.Relit(i)
		if relit {
			setup = float64(sp.Begin + d.Grill.SetupMinutes(f))
		}
		end := float64(sp.End)
		if i == len(a.Solution.Phases)-1 {
			end = arrangepkg.LastUse(all, i, float64(sp.Begin))
		}
		ph := schedule.Phase{
			Number: i + 1, Layout: string(f.Layout), Band: fire.Band(f.LevelC), LevelC: f.LevelC,
			Relit: relit, GaugeC: fire.GaugeC(d.Grill, f.LevelC, d.Air.AirC), SetupFrom: d.At(setup), From: d.At(float64(sp.Begin)), To: d.At(end),
		}
		for _, z := range a.Hearth.Zones[sp.Fire] {
			ph.Zones = append(ph.Zones, schedule.Zone{
				Name: z.Name, Direct: z.Direct, LevelC: f.LevelC + z.LiftK, AreaM2: z.AreaM2,
				UsableM2: fire.UsableM2(z, false), DiscsM2: fire.UsableM2(z, true),
			})
		}
		dayBurn(d, &ph, f, i == 0 || relit)
		out = append(out, ph)
		setup = float64(sp.End)
	}
	return out
}

// window is an instant on the paces of a way, counted from the put-on.
func dayWindow(d *daypkg.Day, p *arrangepkg.Placed, minutes func(z float64) float64) schedule.Window {
	return schedule.Window{
		Early: d.At(p.On - minutes(-spreadpkg.ZTenth)), Expected: d.At(p.On - minutes(0)), Late: d.At(p.On - minutes(spreadpkg.ZTenth)),
	}
}
