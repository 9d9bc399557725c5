package schedule

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
)

// write is the revised plan but for its remedies and changes.
func (v *revision) write(ctx context.Context, l left) (Plan, error) {
	p, err := v.day.write(ctx, l.a, l.all)
	if err != nil {
		return Plan{}, err
	}
	now := v.now
	p.ID, p.Revision, p.RevisedAt, p.Log = v.first.ID, len(v.log)+1, &now, v.log
	if p.Provenance.RequestHash != hash(v.base.req) {
		asked := v.asked
		p.Asked = &asked
	}
	p.Steps = v.steps(&p, l)
	p.Quiet = v.day.quietWithin(p) // the log may have begun earlier than the plan
	v.tellRefuels(&p)
	p.Cautions = joinCautions(p.Cautions, v.first.Cautions)
	unfit, _ := v.unfit(l)
	p.Findings = slices.DeleteFunc(p.Findings, func(f Finding) bool {
		return f.Code == codeHoldShort && slices.Contains(unfit, f.Dishes[0]) || f.Code == "done-before-wrap" && v.isOff(f.Dishes) || strings.HasPrefix(f.Code, "thaw-") && v.isOn(f.Dishes)
	})
	for i, f := range p.Findings {
		if f.Code == codeHoldShort {
			p.Findings[i].Text = v.waitsTooLong(f)
		}
	}
	p.Findings = nonNil(append(v.findings(l), p.Findings...))
	return p, nil
}

// tellRefuels gives the fuel of the phases the instants of their steps: what was
// due and is not done is due now.
func (v *revision) tellRefuels(p *Plan) {
	for _, s := range p.Steps {
		if s.Kind != StepRefuel || s.Done || s.Phase < 1 || s.Phase > len(p.Phases) || p.Phases[s.Phase-1].Burn == nil {
			continue
		}
		refuels := p.Phases[s.Phase-1].Burn.Refuels
		for j := range refuels {
			if stepID(p.ID, "", s.Phase, StepRefuel, j+1) == s.ID {
				refuels[j].Window = s.Window
				refuels[j].Window.Expected = s.At
			}
		}
	}
}

// isOn says whether one of some dishes is on the grate, or was.
func (v *revision) isOn(ids []string) bool {
	return slices.ContainsFunc(v.afoot, func(a *afoot) bool { return a.on.set && slices.Contains(ids, a.batch.it.dish.ID) })
}

// isOff says whether all batches of some dishes are off.
func (v *revision) isOff(ids []string) bool {
	for _, a := range v.afoot {
		if a.where != off && slices.Contains(ids, a.batch.it.dish.ID) {
			return false
		}
	}
	return len(ids) > 0
}

// waitsTooLong says of a dish that is on or off what hold-short says of one to come:
// it can no longer be put on later.
func (v *revision) waitsTooLong(f Finding) string {
	for _, a := range v.afoot {
		name := a.batch.it.dish.Name
		switch {
		case !slices.Contains(f.Dishes, a.batch.it.dish.ID) || a.where == waiting:
		case a.where == off:
			return fmt.Sprintf("%s came off at %s and cannot be held until %s. Serve it sooner, or chill it.",
				name, v.clock(a.off.at), v.clock(v.serve(a)))
		default:
			done := a.on.at.Add(minutes(a.live.total().early + a.batch.it.restMinutes()))
			return fmt.Sprintf("On a fast day %s is ready at about %s and cannot be held until %s. Serve it when it is done, or keep it hot: 140 F (60 °C) or more just under the surface.",
				name, v.clock(done), v.clock(v.serve(a)))
		}
	}
	return f.Text
}

// joinCautions keeps what the first plan said: a revision never drops one.
func joinCautions(now, first []Caution) []Caution {
	for _, c := range first {
		if !slices.Contains(now, c) {
			now = append(now, c)
		}
	}
	return now
}

// liveCurve is the core of a piece on the grate, as believed, to the late end
// of its take-off.
func (d *day) liveCurve(p *placed) []Point {
	b, c, total := p.way.believed, p.way.journey, p.way.total()
	read := func(x, m float64) float64 {
		return b.between(x, func(q *path) float64 {
			return sample(q.curve, c.body.StartC, c.targetC, m/math.Exp(q.lnf)*60)
		})
	}
	along := func(p, m float64) float64 { // as it went, and from now on as it will go
		x := b.paceSoFar(p)
		if left := b.done(x) - c.now; m > c.now && left > 0 && b.drift > 0 {
			m = c.now + (m-c.now)*left/math.Max(b.done(b.quantile(p))-c.now, leastLeft)
		}
		return read(x, m)
	}
	step := math.Max(math.Ceil(total.late/curvePoints), 1)
	var out []Point
	for m := 0.0; m <= total.late+step/2; m += step {
		core := [3]float64{along(0.9, m), along(0.5, m), along(0.1, m)}
		slices.Sort(core[:]) // a fast piece also cools fast
		out = append(out, Point{At: d.at(p.on - m), CoreC: core[1], LowC: core[0], HighC: core[2]})
	}
	return out
}
