package check

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
)

// pieces: what lies on the grate is what the request asks for, piece by piece.
func (c *checker) pieces() {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		var has, want []float64
		for j, b := range d.plan.Batches {
			if len(b.Pieces) == 0 {
				c.fault(fmt.Sprintf("%s.batches[%d].pieces", d.path, j), "there are none")
			}
			for k, p := range b.Pieces {
				has = append(has, p.MassKg)
				c.piece(fmt.Sprintf("%s.batches[%d].pieces[%d]", d.path, j, k), d, p)
			}
		}
		for _, w := range d.ask.Weights {
			want = append(want, float64(w))
		}
		if len(want) == 0 {
			want = slices.Repeat([]float64{float64(d.ask.Weight)}, max(d.ask.Count, 0))
		}
		slices.Sort(has)
		slices.Sort(want)
		if !slices.EqualFunc(has, want, func(a, b float64) bool { return !differs(a, b) }) {
			c.fault(d.path+".batches", "%d pieces of %.3f kg in all; the request has %d of %.3f kg", len(has), total(has), len(want), total(want))
		}
		if d.plan.Count != len(want) || differs(d.plan.MassKg, total(want)) {
			c.fault(d.path, "count %d and mass %.3f kg; the request has %d of %.3f kg", d.plan.Count, d.plan.MassKg, len(want), total(want))
		}
	}
}

func total(all []float64) float64 {
	sum := 0.0
	for _, x := range all {
		sum += x
	}
	return sum
}

// piece: its size is the catalogue's for its mass.
func (c *checker) piece(path string, d *dishFacts, p schedule.Piece) {
	t, w, l := d.cut.Dimensions(p.MassKg, float64(d.ask.Thickness))
	if differs(p.ThicknessM, t) || differs(p.WidthM, w) || differs(p.LengthM, l) {
		c.fault(path, "%.3f x %.3f x %.3f m is not the size of %.2f kg: %.3f x %.3f x %.3f", p.ThicknessM, p.WidthM, p.LengthM, p.MassKg, t, w, l)
	}
	laid := c.facts.lay(d, p.MassKg)
	if f := laid.Part; differs(p.AreaM2, laid.CoverM2()) || p.Disc != f.Disc || p.Rack != f.Rack {
		c.fault(path+".area_m2", "%.4f (disc %t, rack %t) is not what it covers, %.4f (disc %t, rack %t)", p.AreaM2, p.Disc, p.Rack, laid.CoverM2(), f.Disc, f.Rack)
	}
	if lies := fire.Lie(p.Lies); lies != laid.Lie && !(lies == "" && laid.Lie == fire.LieFlat) {
		c.fault(path+".lies", "%q; on this grate it lies %s", p.Lies, laid.Lie)
	}
	if laid.TooLong {
		c.fault(path, "%.2f m long does not lie on a grate %.2f m across", laid.Part.LengthM, c.facts.grill.ReachM())
	}
}

// places: a stage on the grate lies within its phases, in a zone of theirs, at
// that zone's heat.
func (c *checker) places() {
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) {
			continue
		}
		for k, s := range b.Stages {
			if !cooks(s.Kind) {
				continue
			}
			path := fmt.Sprintf("%s.stages[%d]", b.path, k)
			if s.Place != "grate" {
				continue
			}
			if s.Phase < 1 || s.PhaseTo < s.Phase || s.PhaseTo > len(c.plan.Phases) {
				c.fault(path+".phase", "%d to %d; the plan has %d phases", s.Phase, s.PhaseTo, len(c.plan.Phases))
				continue
			}
			c.placed(path, &b, s)
		}
	}
}

func (c *checker) placed(path string, b *batchFacts, s schedule.Stage) {
	first, last := c.plan.Phases[s.Phase-1], c.plan.Phases[s.PhaseTo-1]
	begins := first.From
	if c.plan.RevisedAt != nil && s.Kind == schedule.StageWrapped && len(b.cooking) > 1 && b.cooking[0].PhaseTo >= s.Phase {
		begins = first.SetupFrom // what stays on through a change of fire may be wrapped during it
	}
	if !inSpan(s.From, begins, first.To) {
		c.fault(path+".from", "%s is not in phase %d, from %s to %s", told(s.From), s.Phase, told(first.From), told(first.To))
	}
	ready := last.From
	if c.plan.RevisedAt != nil {
		ready = last.SetupFrom // a piece may come off while the fire is being changed
	}
	ends := last.To
	if n := len(b.cooking); c.plan.RevisedAt != nil && n > 1 && b.cooking[n-1].Kind == schedule.StageSear && s.Kind != schedule.StageSear && s.PhaseTo < len(c.plan.Phases) {
		ends = c.plan.Phases[s.PhaseTo].From // or before its sear, while the fire for that is made
	}
	if !inSpan(s.To, ready, ends) {
		c.fault(path+".to", "%s is not in phase %d, from %s to %s", told(s.To), s.PhaseTo, told(last.From), told(last.To))
	}
	z, ok := zoneOf(first, s)
	if !ok || z.Name != s.Zone {
		c.fault(path+".zone", "%q (direct %t) is no zone of phase %d", s.Zone, s.Direct, s.Phase)
		return
	}
	slowest := z.LevelC
	for k := s.Phase; k < s.PhaseTo; k++ {
		next, ok := zoneOf(c.plan.Phases[k], s)
		if !ok || s.Direct {
			c.fault(path+".phase_to", "%d; it cannot stay on through phase %d", s.PhaseTo, k+1)
			return
		}
		slowest = math.Min(slowest, next.LevelC)
	}
	coolest := slowest
	if s.Kind == schedule.StageWrapped { // it may be reckoned with the slower fire before it
		coolest = math.Min(coolest, b.cooking[0].LevelC)
	}
	if s.LevelC > slowest+sameLevel || s.LevelC < coolest-sameLevel {
		c.fault(path+".level_c", "%.1f; its zone has %.1f (the slower of its fires)", s.LevelC, slowest)
	}
}

// zoneOf is the zone that a stage lies in during a phase: the one of its name, or,
// where it rides into another layout, the one of the same kind of heat.
func zoneOf(ph schedule.Phase, s schedule.Stage) (schedule.Zone, bool) {
	for _, z := range ph.Zones {
		if z.Name == s.Zone && z.Direct == s.Direct {
			return z, true
		}
	}
	for _, z := range ph.Zones {
		if z.Direct == s.Direct {
			return z, true
		}
	}
	return schedule.Zone{}, false
}

// asked: a dish cooks where, how hot and wrapped as the request says.
func (c *checker) asked() {
	for _, b := range c.batches() {
		first, ask := b.cooking[0], b.dish.ask
		last := b.cooking[len(b.cooking)-1]
		path := b.path + ".stages"
		if ask.Zone != "" && first.Direct != (ask.Zone == "direct") {
			c.fault(path, "direct %t where the request asks for %s", first.Direct, ask.Zone)
		}
		carried := c.plan.Revision > 0 && first.Place == schedule.PlaceOven // on the day, from the grate
		if ask.Level != nil && !first.Direct && !carried && math.Abs(first.LevelC-float64(*ask.Level)) > sameLevel {
			c.fault(path, "%.1f degC where the request asks for %.1f", first.LevelC, float64(*ask.Level))
		}
		unseared := c.plan.Revision > 0 && c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) // and the cook sears it, or not
		if (ask.Finish == "sear") != (last.Kind == schedule.StageSear) && !(unseared && ask.Finish == "sear") {
			c.fault(path, "ends with %s where the finish asked for is %q", last.Kind, ask.Finish)
		}
		c.wrapAsked(path, &b)
	}
}

func (c *checker) wrapAsked(path string, b *batchFacts) {
	wrapped := -1
	for k, s := range b.cooking {
		if s.Kind == schedule.StageWrapped {
			wrapped = k
			if s.With != schedule.WrapFoil && s.With != schedule.WrapPaper {
				c.fault(path, "wrapped in %q; it is foil or paper", s.With)
			}
		}
	}
	if with, ok := c.wrapLogged(b); ok { // the cook has done it in a way of their own
		if wrapped >= 0 && with != "" && b.cooking[wrapped].With != with {
			c.fault(path, "wrapped in %s where the log says %s", b.cooking[wrapped].With, with)
		}
		return
	}
	ask := b.dish.ask.Wrap
	switch {
	case ask == nil:
	case c.plan.Revision > 0 && wrapped < 0 && c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0): // it came off bare
	case ask.With == schedule.WrapNone && wrapped >= 0:
		c.fault(path, "wrapped where the request says none")
	case ask.With == schedule.WrapNone:
	case wrapped < 0 && c.found("done-before-wrap", b.dish.plan.ID):
	case wrapped < 0:
		c.fault(path, "never wrapped where the request asks for %s", ask.With)
	case b.cooking[wrapped].With != ask.With:
		c.fault(path, "wrapped in %s where the request asks for %s", b.cooking[wrapped].With, ask.With)
	case ask.From != nil && wrapped > 0 && b.cooking[wrapped-1].CoreC < math.Min(float64(*ask.From), b.dish.plan.TargetC)-0.5: // a step of the simulation
		c.fault(path, "wrapped at %.1f degC in the core; the request asks for %.1f at the earliest", b.cooking[wrapped-1].CoreC, float64(*ask.From))
	case ask.After != nil && wrapped > 0 && math.Abs(b.cooking[wrapped-1].Minutes.Expected-time.Duration(*ask.After).Minutes()) > wholeMinute:
		c.fault(path, "wrapped after %.0f min; the request asks for %.0f", b.cooking[wrapped-1].Minutes.Expected, time.Duration(*ask.After).Minutes())
	}
}

// wrapLogged is what the log says that a batch was wrapped in once it was on, empty
// where it does not say in what; it may be left bare too. What was done first stays.
func (c *checker) wrapLogged(b *batchFacts) (with string, ok bool) {
	for _, e := range c.plan.Log {
		if e.Kind != schedule.LogWrapped || e.Dish != b.dish.plan.ID || e.At.Before(b.on()) {
			continue
		}
		if e.Value != schedule.WrapNone {
			return e.Value, true
		}
		ok = true
	}
	return "", ok
}
