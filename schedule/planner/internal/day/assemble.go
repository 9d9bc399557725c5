package day

import (
	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plans"
)

// blankPlan carries what every plan says, feasible or not.
func (d *Day) BlankPlan() schedule.Plan {
	h := plans.Hash(d.Req)
	return schedule.Plan{
		Format: 1, ID: plans.ID(d.Req, h), Name: d.Req.Name, ServeAt: d.End, TZ: d.Req.Serve.TZ, Units: string(d.Req.Units),
		Chance: schedule.Chance{Asked: d.Req.Confidence},
		Dishes: []schedule.DishPlan{}, Phases: []schedule.Phase{}, Steps: []schedule.Step{}, Findings: []schedule.Finding{}, Remedies: []schedule.Remedy{}, Cautions: []schedule.Caution{},
		Provenance: schedule.Provenance{Catalogue: cut.Version, Model: modelVersion, RequestHash: h},
		Request:    d.Req,
	}
}

// modelVersion changes whenever the same request may give other times.
const modelVersion = "1"

// quietWithin are the quiet hours that touch the plan.
func (d *Day) QuietWithin(p schedule.Plan) []schedule.Interval {
	if len(p.Steps) == 0 {
		return nil
	}
	first := p.Steps[0].At
	var out []schedule.Interval
	for _, q := range d.QuietIntervals() {
		if q.To.After(first) && q.From.Before(p.ServeAt) {
			out = append(out, q)
		}
	}
	return out
}
