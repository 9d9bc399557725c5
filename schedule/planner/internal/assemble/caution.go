package assemble

import (
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/unit"
)

// Cautions are those that apply to the plan, most important first. A day that
// cannot be done, and a forecast, light no fire.
func (d *Assembler) Cautions(p *schedule.Plan, all []*arrange.Placed) []schedule.Caution {
	s := safety.Situation{Charcoal: d.Grill.BurnsCharcoal(), OtherFire: !d.Grill.BurnsCharcoal(), Frail: d.Frail, FrailAsked: d.Req.Guests != nil && d.Req.Guests.NoneFrail, NoSchedule: !p.Feasible}
	s.ChillAhead = d.Chill
	for i := range d.Items {
		it := &d.Items[i]
		s = s.With(it.Category, it.Prep).WithLabel(it.Category, it.Dish.Prep != nil)
		s.TargetBelowMinimum = s.TargetBelowMinimum || it.Verdict.Kind == safety.BelowMinimum
		s.FattyJoint = s.FattyJoint || it.Cut.Style == cut.Tough && d.Grill.BurnsCharcoal()
		s.Travel = s.Travel || it.Dish.Travel != nil
		s.Probes = s.Probes || it.TargetC > 0
		s.Frozen = s.Frozen || it.Thaws || it.FromFrozen
	}
	for _, b := range all {
		s.Holding = s.Holding || b.Hold >= 0
	}
	for i, ph := range p.Phases {
		s.Sear = s.Sear || ph.Band == schedule.BandSear
		s.LitCoalChange = s.LitCoalChange || i > 0
		s.UnattendedFire = s.UnattendedFire || slices.ContainsFunc(p.Quiet, func(q schedule.Interval) bool { return q.From.Before(ph.To) && q.To.After(ph.SetupFrom) })
		s.StarvedFireOpened = s.StarvedFireOpened || ph.Band == schedule.BandLow
		s.LowGrate = s.LowGrate || ph.LevelC < lowGrateC
	}
	out := []schedule.Caution{}
	for _, c := range safety.Cautions(s) {
		out = append(out, schedule.Caution{Code: c.Code, Severity: schedule.Severity(c.Severity), Text: c.Sentence, Source: c.Source})
	}
	for i := range d.Items {
		if it := &d.Items[i]; it.Verdict.Kind == safety.BelowMinimum {
			out = append(out, schedule.Caution{Code: it.Verdict.Code, Severity: schedule.Danger, Text: it.Dish.Name + ": " + say.Lower(it.Verdict.Sentence), Source: it.Verdict.Minimum.Source})
		}
	}
	return out
}

// lowGrateC is 225 F less what a grate may be off; below it meat warms slowly.
var lowGrateC = unit.FToC(224)
