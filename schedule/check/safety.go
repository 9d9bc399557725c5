package check

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/unit"
)

// belowBoilingK is how far below the boiling point a typed target is held.
const belowBoilingK = 1

// sameC is how far two temperatures that went through text may differ, K.
const sameC = 0.05

// targets: no core temperature is planned that the published rules refuse, one
// below the minimum carries its caution, and the minimum is the published one.
func (c *checker) targets() {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if d.timed() {
			continue
		}
		v := safety.JudgeTarget(d.category, d.prep, d.judged(), c.facts.frail)
		switch v.Kind {
		case safety.Refused:
			c.fault(d.path+".target_c", "%.1f degC is refused for %s: %s", d.judged(), d.plan.Name, v.Sentence)
		case safety.BelowMinimum:
			if !c.cautioned(v.Code) {
				c.fault(d.path+".target_c", "%.1f degC is below the published %.1f degC and the caution %q is missing", d.judged(), v.Minimum.CoreC, v.Code)
			}
		}
		if dc := d.plan.MinimumC - v.Minimum.CoreC; dc > sameC || dc < -sameC {
			c.fault(d.path+".minimum_c", "%.1f is not the published minimum, %.1f", d.plan.MinimumC, v.Minimum.CoreC)
		}
		c.targetAsked(d)
	}
}

// judged is the temperature that the rules look at: where the request asks for a
// peak after carry-over it is that, else the core at take-off.
func (d *dishFacts) judged() float64 {
	if t := d.ask.Target; t != nil && t.Final != nil {
		return float64(*t.Final)
	}
	return d.plan.TargetC
}

// targetAsked: the take-off is what the request asks for. Only tough cuts at
// height stop short of a doneness, and only a peak is approached from below.
func (c *checker) targetAsked(d *dishFacts) {
	has, want, below := d.plan.TargetC, 0.0, false
	switch t := d.ask.Target; {
	case t != nil && t.Core != nil:
		want = min(float64(*t.Core), heat.BoilingC(float64(c.facts.req.Weather.Altitude))-belowBoilingK)
	case t != nil && t.Final != nil:
		want, below = float64(*t.Final), true
	default:
		doneness, ok := d.cut.DefaultDoneness()
		if t != nil {
			doneness, ok = d.cut.FindDoneness(t.Doneness)
		}
		if !ok {
			return
		}
		want, below = doneness.CoreC, d.cut.Style == cut.Tough && c.facts.req.Weather.Altitude > 0
	}
	if d.tenderByTime() { // taken off when tender, which is at some core temperature above
		least := min(d.cut.TenderAboveC, heat.BoilingC(float64(c.facts.req.Weather.Altitude))-tenderBelowBoilingK)
		if has < least-sameC {
			c.fault(d.path+".target_c", "%.1f is below %.1f, where it grows tender", has, least)
		}
		return
	}
	if has > want+sameC || !below && has < want-sameC {
		c.fault(d.path+".target_c", "%.1f is not what the request asks for, %.1f", has, want)
	}
}

// tenderBelowBoilingK: where water boils below the tender temperature, a tough cut is
// taken off this far short of boiling, which its surface gets to only very slowly
// (assumption).
const tenderBelowBoilingK = 5

// tenderByTime says whether a thin tough cut is cooked for a time until it is
// tender, not to a core temperature.
func (d *dishFacts) tenderByTime() bool {
	return d.cut.TenderMinutes[1] > 0 && d.ask.Target == nil && d.ask.Finish == ""
}

func (c *checker) cautioned(code string) bool {
	return slices.ContainsFunc(c.plan.Cautions, func(k schedule.Caution) bool { return k.Code == code })
}

// cautions: those that apply are there, with a known severity, a text and a source that
// the charts know.
func (c *checker) cautions() {
	for i, k := range c.plan.Cautions {
		path := fmt.Sprintf("cautions[%d]", i)
		c.said(path, k.Code, k.Severity, k.Text)
		if safety.Document(k.Source) == "" {
			c.fault(path+".source", "%q is no publication that the rules come from", k.Source)
		}
	}
	for _, want := range safety.Cautions(c.situation()) {
		if !c.cautioned(want.Code) {
			c.fault("cautions", "%q is missing: %s", want.Code, want.Sentence)
		}
	}
}

// situation is what the plan holds that a caution may belong to.
func (c *checker) situation() safety.Situation {
	s := safety.Situation{Charcoal: c.facts.grill.BurnsCharcoal(), OtherFire: !c.facts.grill.BurnsCharcoal(), Frail: c.facts.frail, FrailAsked: c.facts.req.Guests != nil && c.facts.req.Guests.NoneFrail, NoSchedule: !c.plan.Feasible}
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		s = s.With(d.category, d.prep).WithLabel(d.category, d.ask.Prep != nil)
		s.FattyJoint = s.FattyJoint || d.cut.Style == cut.Tough && c.facts.grill.BurnsCharcoal()
		s.Travel = s.Travel || d.ask.Travel != nil
		s.Frozen = s.Frozen || d.ask.Start != nil && d.ask.Start.Frozen
		if d.timed() {
			continue
		}
		s.Probes = true
		v := safety.JudgeTarget(d.category, d.prep, d.judged(), c.facts.frail)
		s.TargetBelowMinimum = s.TargetBelowMinimum || v.Kind == safety.BelowMinimum
		s.Holding = s.Holding || slices.ContainsFunc(d.plan.Holds, func(h schedule.HoldAdvice) bool { return h.Chosen })
	}
	for i, ph := range c.plan.Phases {
		s.LitCoalChange = s.LitCoalChange || i > 0
		s.Sear = s.Sear || fire.Band(ph.LevelC) == "sear"
		s.StarvedFireOpened = s.StarvedFireOpened || fire.Band(ph.LevelC) == "low"
		// Half a kelvin: 225 F may stand in the plan as 107.2 degC.
		s.LowGrate = s.LowGrate || ph.LevelC < float64(unit.FromFahrenheit(225))-0.5
		for _, q := range c.facts.quiet {
			s.UnattendedFire = s.UnattendedFire || q.From.Before(ph.To) && q.To.After(ph.SetupFrom)
		}
	}
	return s
}

// Limits for birds, degC and kg: the coolest grate that they are cooked on (300 F), below
// which their skin stays soft without the coals (325 F), and from where they are never
// cooked cooler than the first (14 lb; judgment, no source; the levels are common practice).
const (
	birdLeastC = (300.0 - 32) / 1.8
	skinSoftC  = (325.0 - 32) / 1.8
	bigBirdKg  = 14 * 0.45359237
)

// birds: a bird is not cooked below 300 F unless its level is asked for or the grill has no
// hotter place beside the fire, and a big one never; below 325 F its skin is finished over
// the coals.
func (c *checker) birds() {
	cool := c.plan.Request.Grill.Kind == schedule.GrillOther && !slices.ContainsFunc(c.plan.Request.Grill.Zones, func(z schedule.GrillZone) bool {
		return !z.Direct && fire.Band(float64(z.Max)) != schedule.BandLow
	})
	for _, b := range c.batches() {
		big := slices.ContainsFunc(b.Pieces, func(p schedule.Piece) bool { return p.MassKg > bigBirdKg }) && b.dish.cut.Poultry && c.plan.Revision == 0
		if b.dish.cut.Style != cut.Bird || (b.dish.ask.Level != nil || cool) && !big {
			continue
		}
		for _, s := range b.cooking {
			if s.Place == schedule.PlaceGrate && s.LevelC < birdLeastC-sameLevel {
				c.fault(b.path+".stages", "%s cooks at %.0f degC; birds want %.0f or more", b.dish.plan.Name, s.LevelC, birdLeastC)
			}
		}
		if c.softSkin(&b) {
			c.fault(b.path+".stages", "%s cooks below %.0f degC, and no step crisps its skin", b.dish.plan.Name, skinSoftC)
		}
	}
}

// softSkin says whether the skin of a bird stays soft: cooked gently to its end, with no
// step over the coals after that.
func (c *checker) softSkin(b *batchFacts) bool {
	last := b.cooking[len(b.cooking)-1]
	gentle := last.Place == schedule.PlaceGrate && last.Kind == schedule.StageBare && !last.Direct && last.LevelC < skinSoftC-sameLevel
	if c.plan.Revision > 0 || !gentle || b.dish.cut.WetFactor > skinWetFactor {
		return false
	}
	return !slices.ContainsFunc(c.plan.Steps, func(s schedule.Step) bool {
		return s.Kind == schedule.StepSear && s.Dish == b.dish.plan.ID && s.Batch == b.Number
	})
}

// skinWetFactor is what the catalogue gives to skin, which keeps most of a piece dry.
const skinWetFactor = 0.3
