package check

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/instant"
)

// sameLevel is how far a level may lie from the fire's and still be that level,
// K: far less than a grate holds, more than a conversion loses.
const sameLevel = 0.6

func phaseAsFire(ph schedule.Phase) fire.Fire {
	return fire.Fire{Layout: fire.Layout(ph.Layout), LevelC: ph.LevelC}
}

// phases: one fire after the other, each with the minutes that lighting or
// changing it takes, in a layout that holds its level.
func (c *checker) phases() {
	ps := c.plan.Phases
	if (len(ps) > 0) != (c.plan.LightAt != nil) {
		c.fault("light_at", "a plan has it if, and only if, it has phases; there are %d", len(ps))
	} else if len(ps) > 0 && !c.plan.LightAt.Equal(ps[0].SetupFrom) {
		c.fault("light_at", "%s is not the beginning of the first phase, %s", told(*c.plan.LightAt), told(ps[0].SetupFrom))
	}
	for i, ph := range ps {
		path := fmt.Sprintf("phases[%d]", i)
		if ph.Number != i+1 {
			c.fault(path+".number", "%d in place %d", ph.Number, i+1)
		}
		if ph.From.Before(ph.SetupFrom) || ph.To.Before(ph.From) || ph.To.After(c.plan.ServeAt) {
			c.fault(path, "set-up %s, ready %s, end %s and serving %s are not in that order", told(ph.SetupFrom), told(ph.From), told(ph.To), told(c.plan.ServeAt))
		}
		if ph.Band != fire.Band(ph.LevelC) {
			c.fault(path+".band", "%q is not the band of %.0f degC, %s", ph.Band, ph.LevelC, fire.Band(ph.LevelC))
		}
		switch {
		case i > 0 && !ph.Relit:
			c.change(path, ps[i-1], ph)
		case i > 0 && ph.SetupFrom.Before(ps[i-1].To):
			c.fault(path, "it is lit anew at %s, while the phase before it burns until %s", told(ph.SetupFrom), told(ps[i-1].To))
		case !c.done(schedule.StepLight, "", 0, ph.Number):
			if need, has := c.facts.grill.SetupMinutes(phaseAsFire(ph)), minutesBetween(ph.SetupFrom, ph.From); has < float64(need)-1e-6 {
				c.fault(path, "%.0f min from the light to a %s fire; it takes %d", has, ph.Layout, need)
			}
		}
	}
}

func (c *checker) change(path string, before, ph schedule.Phase) {
	if ph.SetupFrom.Before(before.To) {
		c.fault(path, "the change begins at %s, before the phase before it ends at %s", told(ph.SetupFrom), told(before.To))
	}
	if c.done(schedule.StepChangeFire, "", 0, ph.Number) {
		return
	}
	need, ok := c.facts.grill.ChangeMinutes(phaseAsFire(before), phaseAsFire(ph))
	if !ok {
		c.fault(path, "a %s fire cannot become a %s one", before.Layout, ph.Layout)
	} else if has := minutesBetween(before.To, ph.From); has < float64(need)-1e-6 {
		c.fault(path, "%.0f min for the change from %s to %s; it takes %d", has, before.Layout, ph.Layout, need)
	}
}

// zones: the parts of the grate are what the fire makes of this grill, and the
// layout can hold the level, or a finding says that it is outside.
func (c *checker) zones() {
	for i, ph := range c.plan.Phases {
		path := fmt.Sprintf("phases[%d].zones", i)
		want := c.facts.grill.Zones(phaseAsFire(ph))
		if len(ph.Zones) != len(want) || len(want) == 0 {
			c.fault(path, "there are %d; a %s fire makes %d of this grate", len(ph.Zones), ph.Layout, len(want))
			continue
		}
		for j, z := range want {
			has := ph.Zones[j]
			at := fmt.Sprintf("%s[%d]", path, j)
			if has.Name != z.Name || has.Direct != z.Direct {
				c.fault(at, "%q (direct %t) is not the zone that the fire makes there, %q (direct %t)", has.Name, has.Direct, z.Name, z.Direct)
			}
			if math.Abs(has.LevelC-ph.LevelC-z.LiftK) > sameLevel {
				c.fault(at+".level_c", "%.1f; the fire gives %.1f", has.LevelC, ph.LevelC+z.LiftK)
			}
			c.grates(at+".grates", has.Grates, z)
			if differs(has.AreaM2, z.AreaM2) || differs(has.UsableM2, fire.UsableM2(z, false)) || differs(has.DiscsM2, fire.UsableM2(z, true)) {
				c.fault(at, "area %.4f, room %.4f and %.4f m2 are not the grill's: %.4f, %.4f and %.4f",
					has.AreaM2, has.UsableM2, has.DiscsM2, z.AreaM2, fire.UsableM2(z, false), fire.UsableM2(z, true))
			}
		}
		if d, charcoal := fire.Describe(fire.Layout(ph.Layout)); charcoal && !c.found(string(fire.LevelOutside), "") && !d.Holds(ph.LevelC) {
			c.fault(fmt.Sprintf("phases[%d].level_c", i), "%.0f degC is nothing that a %s fire holds: %.0f to %.0f", ph.LevelC, ph.Layout, d.MinC, d.MaxC)
		}
	}
}

// grates: those of a zone that has several are the grill's, from below.
func (c *checker) grates(path string, has []schedule.Grate, z fire.Zone) {
	var want []fire.Grate
	if len(z.Above) > 0 {
		want = z.Grates()
	}
	if len(has) != len(want) {
		c.fault(path, "there are %d; the grill has %d one above another", len(has), len(want))
		return
	}
	for i, g := range want {
		if has[i].Name != g.Name || differs(has[i].AreaM2, g.AreaM2) {
			c.fault(path, "%q of %.4f m2; the grill has %q of %.4f", has[i].Name, has[i].AreaM2, g.Name, g.AreaM2)
		}
	}
}

// differs compares two areas or masses that went through the same formula.
func differs(a, b float64) bool { return math.Abs(a-b) > 1e-6+1e-6*math.Abs(b) }

// fuel: what is laid and bought covers what is expected to burn, within its own
// range, and the day is the sum of its phases. A tenth may stay unlaid: the last
// top-up of a phase is left out where the bed may sink a little.
func (c *checker) fuel() {
	charcoal := c.facts.grill.Charcoal()
	var sum schedule.Fuel
	for i, ph := range c.plan.Phases {
		path := fmt.Sprintf("phases[%d].burn", i)
		b := ph.Burn
		if b == nil {
			if charcoal && ph.To.After(ph.From) {
				c.fault(path, "is missing; a charcoal fire burns something")
			}
			continue
		}
		c.burnt(path, *b)
		sum.MassKg, sum.LowKg, sum.HighKg, sum.BuyKg = sum.MassKg+b.MassKg, sum.LowKg+b.LowKg, sum.HighKg+b.HighKg, sum.BuyKg+b.BuyKg
		for j, r := range b.Refuels {
			if !inSpan(r.Window.Expected, ph.From, ph.To) {
				c.fault(fmt.Sprintf("%s.refuels[%d]", path, j), "expected at %s, outside its phase from %s to %s", told(r.Window.Expected), told(ph.From), told(ph.To))
			}
		}
	}
	f := c.plan.Fuel
	switch {
	case f == nil && sum.MassKg > 0:
		c.fault("fuel", "is missing; the phases burn %.2f kg", sum.MassKg)
	case f != nil && (differs(f.MassKg, sum.MassKg) || differs(f.BuyKg, sum.BuyKg) || differs(f.LowKg, sum.LowKg) || differs(f.HighKg, sum.HighKg)):
		c.fault("fuel", "expects %.2f kg and buys %.2f; the phases add up to %.2f and %.2f", f.MassKg, f.BuyKg, sum.MassKg, sum.BuyKg)
	}
}

func (c *checker) burnt(path string, b schedule.Burn) {
	fed := b.LayKg
	for _, r := range b.Refuels {
		fed += r.MassKg
	}
	if b.LowKg > b.MassKg || b.MassKg > b.HighKg {
		c.fault(path, "low %.2f, expected %.2f and high %.2f kg are not in that order", b.LowKg, b.MassKg, b.HighKg)
	}
	if fed < 0.9*b.MassKg {
		c.fault(path+".lay_kg", "%.2f kg laid and added for %.2f kg expected to burn", fed, b.MassKg)
	}
	if b.BuyKg < b.MassKg-1e-6 {
		c.fault(path+".buy_kg", "%.2f kg bought for %.2f kg expected to burn", b.BuyKg, b.MassKg)
	}
	if b.Light > b.Lay || b.LightKg > b.LayKg+1e-6 {
		c.fault(path+".light", "%d are lit (%.2f kg) of %d laid (%.2f kg)", b.Light, b.LightKg, b.Lay, b.LayKg)
	}
}

// untended: a fire that nobody may feed in quiet hours lasts through them, or a
// finding says that it does not. Fuel in the quiet hours feeds it where a finding says that
// somebody is up for it.
func (c *checker) untended() {
	if c.found("fire-cannot-last", "") {
		return
	}
	for i, ph := range c.plan.Phases {
		if ph.Burn == nil || ph.Burn.LastsMinutes <= 0 {
			continue
		}
		for _, q := range c.facts.quiet {
			if !q.To.After(ph.From) || !q.From.Before(ph.To) {
				continue
			}
			end := q.To
			if ph.To.Before(end) {
				end = ph.To
			}
			last := q.From
			if c.found("refuel-in-quiet", "") {
				last = end
			}
			fed := ph.From
			for _, r := range ph.Burn.Refuels {
				if r.Window.Expected.After(fed) && r.Window.Expected.Before(last) {
					fed = r.Window.Expected
				}
			}
			if at := c.plan.RevisedAt; at != nil && (ph.From.Before(*at) && fed.Add(instant.Minutes(ph.Burn.LastsMinutes)).Before(*at) || c.fedWithin(q.From, end)) {
				continue // it did last so long, or did not; or somebody got up for it
			}
			if need := minutesBetween(fed, end); need > ph.Burn.LastsMinutes+halfMinute {
				c.fault(fmt.Sprintf("phases[%d].burn.lasts_minutes", i), "%.0f; nobody may feed the fire for %.0f min up to %s", ph.Burn.LastsMinutes, need, told(end))
			}
		}
	}
}

// fedWithin says whether the log has coals added between two instants.
func (c *checker) fedWithin(from, to time.Time) bool {
	for _, e := range c.plan.Log {
		switch e.Kind {
		case schedule.LogRefuelled, schedule.LogLitCoals, schedule.LogUnlitCoals:
			if !e.At.Before(from) && e.At.Before(to) {
				return true
			}
		}
	}
	return false
}
