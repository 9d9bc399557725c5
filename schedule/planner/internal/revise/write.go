package revise

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/unit"
)

// write is the revised plan but for its remedies and changes.
func (v *Revision) write(ctx context.Context, l remainder) (schedule.Plan, error) {
	v.day.Now = v.now
	p, err := v.day.Write(ctx, l.a, l.all)
	if err != nil {
		return schedule.Plan{}, err
	}
	now := v.now
	p.ID, p.Revision, p.RevisedAt, p.Log = v.first.ID, len(v.log)+1, &now, v.log
	if p.Provenance.RequestHash != plans.Hash(v.asked.WithDefaults()) {
		asked := v.asked
		p.Asked = &asked
	}
	found := v.findings(l)
	condemn(l, found)
	v.unsure(&p, l, found)
	p.Steps = v.steps(&p, l)
	v.keepForUndone(&p, found)
	p.Quiet = v.day.QuietWithin(p) // the log may have begun earlier than the plan
	p.Night = v.night
	v.tellRefuels(&p)
	v.unfed(&p)
	v.withoutFuel(&p, l, func(f schedule.Finding) { found = append(found, f) })
	v.noteRefuels(&p, func(f schedule.Finding) { found = append(found, f) })
	p.Cautions = joinCautions(p.Cautions, v.first.Cautions)
	unfit, _ := v.unfit(l)
	unsure, _ := suspects(l)
	p.Findings = slices.DeleteFunc(p.Findings, func(f schedule.Finding) bool {
		if f.Code == "fire-cannot-last" && (v.fedInTheNight(&p) || f.Path == assemble.PastShort && !v.feedsAtNight(&p)) {
			return true
		}
		return f.Code == schedule.CodeHoldShort && slices.ContainsFunc(found, func(o schedule.Finding) bool { return o.Code == f.Code && slices.Equal(o.Dishes, f.Dishes) }) || f.Code == schedule.CodeHoldShort && (slices.Contains(unfit, f.Dishes[0]) || slices.Contains(unsure, f.Dishes[0])) || (f.Code == schedule.CodeOvenDries || f.Code == schedule.CodeHotter) && slices.Contains(unfit, f.Dishes[0]) || f.Code == "done-before-wrap" && v.isOff(f.Dishes) || (f.Code == schedule.CodeHoldShort || f.Code == schedule.CodeOvenDries) && v.allServed(f.Dishes) || strings.HasPrefix(f.Code, "thaw-") && v.isOn(f.Dishes)
	})
	for i, f := range p.Findings {
		if f.Code == schedule.CodeHoldShort {
			p.Findings[i].Text = v.waitsTooLong(f, l)
		}
	}
	p.Findings = slices.DeleteFunc(p.Findings, func(f schedule.Finding) bool { return f.Text == "" })
	for i, f := range p.Findings {
		if f.Path == assemble.PastShort {
			p.Findings[i].Path = ""
		}
	}
	p.Steps = slices.DeleteFunc(p.Steps, func(s schedule.Step) bool { return v.measuredAnyway(s, p.Findings, l) })
	if len(p.Quiet) == 0 || !p.Quiet[len(p.Quiet)-1].To.After(v.now) { // the night is over
		p.Findings = slices.DeleteFunc(p.Findings, func(f schedule.Finding) bool { return strings.HasPrefix(f.Code, "night-") })
	}
	p.Findings = strict.NonNil(byUrgency(append(found, p.Findings...)))
	return p, nil
}

// measuredAnyway says of the look at a piece that is held that a finding asks for it, with
// what is done then.
func (v *Revision) measuredAnyway(s schedule.Step, found []schedule.Finding, l remainder) bool {
	a := l.of(s.Dish, s.Batch)
	return s.Kind == schedule.StepLook && !s.Done && a != nil && a.where == off && slices.ContainsFunc(found, func(f schedule.Finding) bool {
		return f.Code == schedule.CodeHoldShort && slices.Contains(f.Dishes, s.Dish) && strings.HasPrefix(f.Text, "Measure ")
	})
}

// condemn takes what a finding says must not be eaten out of the day: a hold is judged
// when it is looked at.
func condemn(l remainder, found []schedule.Finding) {
	for _, f := range found {
		for _, a := range l.bound {
			if f.Severity == schedule.Danger && slices.Contains(f.Dishes, a.batch.It.Dish.ID) && !a.asks(f) {
				a.condemned, a.mends = true, f.Code == schedule.OffUndone && !strings.Contains(f.Text, "throw it away") || strings.Contains(f.Text, "or throw it away")
			}
		}
	}
}

// tellRefuels gives the fuel of the phases the instants of their steps: what was
// due and is not done is due now.
func (v *Revision) tellRefuels(p *schedule.Plan) {
	for _, s := range p.Steps {
		if s.Kind != schedule.StepRefuel || s.Done || s.Phase < 1 || s.Phase > len(p.Phases) || p.Phases[s.Phase-1].Burn == nil {
			continue
		}
		refuels := p.Phases[s.Phase-1].Burn.Refuels
		for j := range refuels {
			if plans.StepID(p.ID, "", s.Phase, schedule.StepRefuel, j+1) == s.ID {
				refuels[j].Window = s.Window
				refuels[j].Window.Expected = s.At
			}
		}
	}
}

// noteRefuels says it where fuel that was due comes due in quiet hours.
func (v *Revision) noteRefuels(p *schedule.Plan, add func(schedule.Finding)) {
	const code = "refuel-in-quiet"
	if slices.ContainsFunc(p.Findings, func(f schedule.Finding) bool { return f.Code == code }) {
		return
	}
	for _, ph := range p.Phases {
		if ph.Burn == nil {
			continue
		}
		for _, r := range ph.Burn.Refuels {
			if v.day.InQuiet(r.Window.Expected) && ph.To.After(v.now) {
				add(schedule.NewFinding(code, "", fmt.Sprintf("The %s fire needs fuel at %s, in quiet hours.", ph.Layout, v.clock(r.Window.Expected))))
				return
			}
		}
	}
}

// isOn says whether one of some dishes is on the grate, or was.
func (v *Revision) isOn(ids []string) bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool { return a.on.set && slices.Contains(ids, a.batch.It.Dish.ID) })
}

// isOff says whether all batches of some dishes are off.
func (v *Revision) isOff(ids []string) bool {
	for _, a := range v.batches {
		if a.where != off && slices.Contains(ids, a.batch.It.Dish.ID) {
			return false
		}
	}
	return len(ids) > 0
}

// waitsTooLong says of a dish that is on or off what hold-short says of one to come:
// it can no longer be put on later.
func (v *Revision) waitsTooLong(f schedule.Finding, l remainder) string {
	for i, a := range l.bound {
		name := a.batch.It.Dish.Name
		if !slices.Contains(f.Dishes, a.batch.It.Dish.ID) || a.where == waiting {
			continue
		}
		o := l.all[i]
		held, holds := v.day.ChosenHold(o)
		if _, serve := v.eatNow(a, o, held.Rule); a.where == off && (serve || v.madeHot(a, o)) {
			return "" // that is said
		}
		if a.where == off && holds && (held.Read || a.boxed.set && held.Hot > 0 && !a.readHold()) {
			return v.fallsText(a, o)
		}
		if waits := a.waits(); a.where == off && len(waits) > 0 && waits[len(waits)-1].kind == schedule.LogCounter {
			return "" // its clock is said
		}
		if a.where == off && v.noteUnplaced(a, o, func(schedule.Finding) {}) {
			return "" // where it is is asked
		}
		if a.where == off {
			_, served, eaten := v.heldClocks(a, held)
			if holds && served.After(v.now) && !a.boxed.set && !a.readHold() {
				return fmt.Sprintf("Put %s into an oven at %s now, or have it on the table by %s, eaten by %s; or chill it. It came off at %s, and as it is it will not hold until %s. Is it in a cooler or an oven? Then log that.",
					name, v.day.Grate(v.keepC(a)), v.clock(served), v.clock(eaten), v.clock(a.off.at), v.clock(v.serve(a)))
			}
			if !holds || !served.After(v.now) {
				return fmt.Sprintf("%s: off at %s, and will not hold until %s. Eat it now, or chill it. Is it in a cooler or an oven? Then log that, and what it shows just under the surface.", name, v.clock(a.off.at), v.clock(v.serve(a)))
			}
			return fmt.Sprintf("%s: off at %s, and will not hold until %s. On the table by %s, eaten by %s; or chill it, or keep it in an oven at %s or more.",
				name, v.clock(a.off.at), v.clock(v.serve(a)), v.clock(served), v.clock(eaten), v.day.Grate(ovenHoldC))
		}
		at := func(minutes float64) string { return v.foretold(a.on.at.Add(instant.Minutes(minutes))) }
		if a.batch.It.Cut.Style == cut.Timed {
			off := o.On - a.live.Total().Expected
			return fmt.Sprintf("%s: expected off at %s; best until about %s, not until %s. Put it on the table by itself, or keep it hot, covered: 140 °F (60 °C) or more.",
				name, v.foretold(v.day.At(off)), v.clock(v.day.HeldUntil(off, v.day.Stands(a.batch.It).Good)), v.clock(v.serve(a)))
		}
		off, until, ok := v.heldUntil(a, l.all[i])
		if ok && v.serve(a).After(a.on.at.Add(instant.Minutes(until))) {
			return fmt.Sprintf("%s: expected off at %s; it keeps until about %s, not until %s. Eat it by then, keep it in an oven at %s or more, or cut it small, chill it within 2 hr and reheat it to 165 °F (74 °C).",
				name, at(off), v.clock(v.day.HeldUntil(v.u(a.on.at)-off, until-off)), v.clock(v.serve(a)), v.day.Grate(ovenHoldC))
		}
		return fmt.Sprintf("%s: on a fast day it is ready at about %s and will not hold until %s. Serve it when it is done, or keep it hot: 140 °F (60 °C) or more just under the surface.",
			name, at(a.live.Total().Early+a.batch.It.RestMinutes()), v.clock(v.serve(a)))
	}
	return f.Text
}

// ovenHoldC is the oven that keeps finished meat hot, 170 F (common practice, no source).
var ovenHoldC = unit.FToC(170)

// joinCautions keeps what the first plan said: a revision never drops one.
func joinCautions(now, first []schedule.Caution) []schedule.Caution {
	for _, c := range first {
		if !slices.Contains(now, c) {
			now = append(now, c)
		}
	}
	return now
}
