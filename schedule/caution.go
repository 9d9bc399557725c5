package schedule

import (
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// cautions are those that apply to the plan, most important first. A day that
// cannot be done, and a forecast, light no fire.
func (d *day) cautions(p *Plan, all []*placed) []Caution {
	s := safety.Situation{Charcoal: d.grill.Kind != fire.OtherKind, Frail: d.frail, NoSchedule: !p.Feasible}
	for i := range d.items {
		it := &d.items[i]
		s = s.With(it.category, it.prep)
		s.TargetBelowMinimum = s.TargetBelowMinimum || it.verdict.Kind == safety.BelowMinimum
		s.Travel = s.Travel || it.dish.Travel != nil
		s.Probes = s.Probes || it.targetC > 0
		s.Frozen = s.Frozen || it.thaws || it.fromFrozen
	}
	for _, b := range all {
		s.Holding = s.Holding || b.hold >= 0
	}
	for i, ph := range p.Phases {
		s.Sear = s.Sear || ph.Band == bandSear
		s.LitCoalChange = s.LitCoalChange || i > 0
		s.UnattendedFire = s.UnattendedFire || len(d.untended(ph.SetupFrom, ph.To)) > 0
		s.StarvedFireOpened = s.StarvedFireOpened || ph.Band == bandLow
		s.LowGrate = s.LowGrate || ph.LevelC < lowGrateC
	}
	out := []Caution{}
	for _, c := range safety.Cautions(s) {
		out = append(out, Caution{Code: c.Code, Severity: string(c.Severity), Text: c.Sentence, Source: c.Source})
	}
	for i := range d.items {
		if it := &d.items[i]; it.verdict.Kind == safety.BelowMinimum {
			out = append(out, Caution{Code: it.verdict.Code, Severity: Danger, Text: it.dish.Name + ": " + lower(it.verdict.Sentence), Source: it.verdict.Minimum.Source})
		}
	}
	return out
}

// lowGrateC is 225 F less what a grate may be off; below it meat warms slowly.
var lowGrateC = celsius(224)
