package schedule

import (
	"context"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/sequence"
)

// placed is one batch with the way the solver chose, in minutes before the last
// serving instant.
type placed struct {
	*batch
	way      way
	on       float64 // put on
	wrap     float64 // second stage begins; NaN without one
	off      float64 // take-off as planned
	phases   [2][2]int
	zones    [2]string
	oven     bool // the second stage is in the oven
	reasons  []sequence.Reason
	options  []holdOption
	hold     int // index of the chosen one, -1 for none
	holdLong bool
}

// stages is how many stages of cooking it has on the way chosen.
func (p *placed) stages() int {
	if math.IsNaN(p.wrap) {
		return 1
	}
	return 2
}

// place reads the solver's answer for every batch.
func (d *day) place(ctx context.Context, a arrangement) ([]*placed, error) {
	out := make([]*placed, len(a.batches))
	for i, b := range a.batches {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		ps := a.solution.Chains[i]
		ref := b.first[ps[0].Mode]
		p := &placed{batch: b, way: b.ways[ref.way], on: float64(ps[0].Start), wrap: math.NaN(), reasons: a.solution.Why[i]}
		p.off = float64(ps[len(ps)-1].End)
		p.phases[0] = [2]int{ps[0].FirstPhase, ps[0].LastPhase}
		p.zones[0] = a.zoneName(ps[0], ref.places)
		if len(ps) > 1 {
			second := b.second[ps[1].Mode]
			p.phases[1] = [2]int{ps[1].FirstPhase, ps[1].LastPhase}
			p.zones[1] = a.zoneName(ps[1], second.places)
			if p.oven = second.oven; p.oven {
				p.way.second = p.way.inOven
			}
			if p.way.stages() > 1 {
				p.wrap = float64(ps[1].Start)
			} else {
				p.phases[0][1] = ps[1].LastPhase
			}
		}
		d.setHold(p, p.longestWait())
		out[i] = p
	}
	return out, nil
}

// zoneName is the zone of the first phase a task is in.
func (a arrangement) zoneName(t sequence.Placed, places []place) string {
	if t.FirstPhase < 0 {
		return ""
	}
	f := a.solution.Phases[t.FirstPhase].Fire
	for _, pl := range places {
		if pl.fire == f {
			return a.hearth.zones[f][pl.zone].Name
		}
	}
	return ""
}

// earlyGap is the longest the batch may have to wait: from the early end of its
// take-off to serving.
func (p *placed) earlyGap() float64 {
	return p.on - p.took().early - float64(p.it.serve)
}

// took is the minutes from the put-on until the batch is done. Between the slow side
// and its sear a piece stands, and is not held.
func (p *placed) took() pace {
	if p.searedLater() {
		return pace{early: p.takeOff(-zTenth), expected: p.takeOff(0), late: p.takeOff(zTenth)}
	}
	return p.way.total()
}

// readiness is the margin of the batch.
func (p *placed) readiness() readiness {
	available := p.on - float64(p.it.serve) - p.it.restMinutes()
	if !math.IsNaN(p.wrap) && p.it.dish.Finish != "" {
		available -= p.on - p.way.first.planned - p.wrap // the rest before the sear
	}
	return readiness{Z: p.way.quantileOf(available), spread: p.way.spread}
}

// assemble writes the solved day as a plan.
func (d *day) assemble(ctx context.Context, a arrangement) (Plan, error) {
	all, err := d.place(ctx, a)
	if err != nil {
		return Plan{}, err
	}
	d.rekindle(&a, all, 0, ever)
	return d.write(ctx, a, all)
}

func (d *day) write(ctx context.Context, a arrangement, all []*placed) (Plan, error) {
	p := d.blankPlan()
	p.Feasible = true
	p.Solution = solutionOf(a.solution)
	p.Phases = d.phases(a, all)
	p.Fuel = d.fuel(p.Phases)
	var err error
	if p.Dishes, err = d.dishes(ctx, all, a); err != nil {
		return Plan{}, err
	}
	var rs []readiness
	for _, b := range all {
		rs = append(rs, b.readiness())
	}
	p.Chance.All = round3(chanceOfAll(rs))
	if len(p.Phases) > 0 {
		t := p.Phases[0].SetupFrom
		p.LightAt = &t
	}
	if err := d.lay(ctx, &p, a, all); err != nil {
		return Plan{}, err
	}
	d.noteHolds(all)
	d.noteWraps(all)
	d.noteFuel(&p)
	p.Steps = d.steps(&p, a, all)
	p.Quiet = d.quietWithin(p)
	p.Findings = nonNil(d.findings)
	p.Cautions = d.cautions(&p, all)
	return p, nil
}

// blankPlan carries what every plan says, feasible or not.
func (d *day) blankPlan() Plan {
	h := hash(d.req)
	return Plan{
		Format: 1, ID: planID(d.req, h), Name: d.req.Name, ServeAt: d.end, TZ: d.req.Serve.TZ, Units: string(d.req.Units),
		Chance: Chance{Asked: d.req.Confidence},
		Dishes: []DishPlan{}, Phases: []Phase{}, Steps: []Step{}, Findings: []Finding{}, Remedies: []Remedy{}, Cautions: []Caution{},
		Provenance: Provenance{Catalogue: cut.Version, Model: modelVersion, RequestHash: h},
		Request:    d.req,
	}
}

// modelVersion changes whenever the same request may give other times.
const modelVersion = "1"

func solutionOf(s sequence.Solution) Solution {
	return Solution{
		Status: s.Status.String(), Proven: s.Status == sequence.Optimal || s.Status == sequence.Infeasible,
		Objective: s.Cost, Hold: s.Parts.Hold, Mode: s.Parts.Mode, Change: s.Parts.Change, Burn: s.Parts.Burn,
		Bound: s.Bound, Nodes: s.Nodes, Stopped: s.Stopped,
	}
}

// phases turns the solver's phases into the cook's. The last one ends with the
// last food on the grate.
func (d *day) phases(a arrangement, all []*placed) []Phase {
	var out []Phase
	setup := float64(a.solution.Light)
	for i, sp := range a.solution.Phases {
		f, relit := a.hearth.fires[sp.Fire], a.relit(i)
		if relit {
			setup = float64(sp.Begin + d.grill.SetupMinutes(f))
		}
		end := float64(sp.End)
		if i == len(a.solution.Phases)-1 {
			end = lastUse(all, i, float64(sp.Begin))
		}
		ph := Phase{
			Number: i + 1, Layout: string(f.Layout), Band: fire.Band(f.LevelC), LevelC: f.LevelC,
			Relit: relit, GaugeC: fire.GaugeC(d.grill, f.LevelC, d.air.AirC), SetupFrom: d.at(setup), From: d.at(float64(sp.Begin)), To: d.at(end),
		}
		for _, z := range a.hearth.zones[sp.Fire] {
			ph.Zones = append(ph.Zones, Zone{
				Name: z.Name, Direct: z.Direct, LevelC: f.LevelC + z.LiftK, AreaM2: z.AreaM2,
				UsableM2: fire.UsableM2(z, false), DiscsM2: fire.UsableM2(z, true),
			})
		}
		d.burn(&ph, f, i == 0 || relit)
		out = append(out, ph)
		setup = float64(sp.End)
	}
	return out
}

// window is an instant on the paces of a way, counted from the put-on.
func (d *day) window(p *placed, minutes func(z float64) float64) Window {
	return Window{
		Early: d.at(p.on - minutes(-zTenth)), Expected: d.at(p.on - minutes(0)), Late: d.at(p.on - minutes(zTenth)),
	}
}

func fixedWindow(t time.Time) Window { return Window{Early: t, Expected: t, Late: t} }

func round3(x float64) float64 { return math.Round(x*1000) / 1000 }

func nonNil[T any](s []T) []T {
	if s == nil {
		return []T{}
	}
	return s
}

// quietWithin are the quiet hours that touch the plan.
func (d *day) quietWithin(p Plan) []Interval {
	if len(p.Steps) == 0 {
		return nil
	}
	first := p.Steps[0].At
	var out []Interval
	for _, q := range d.quietIntervals() {
		if q.To.After(first) && q.From.Before(p.ServeAt) {
			out = append(out, q)
		}
	}
	return out
}
