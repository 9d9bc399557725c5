package check

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
)

// levels: where a zone has several grates every piece has one of them, on which it goes
// under the lid, and nothing raw is above what it must not drip on. What is on already
// hangs where it hangs.
func (c *checker) levels() {
	type hung struct {
		path  string
		level int
		safety.Hanging
	}
	var all []hung
	for _, b := range c.batches() {
		grates := c.gratesOf(&b)
		for j, p := range b.Pieces {
			path := fmt.Sprintf("%s.pieces[%d].grate", b.path, j)
			if p.Grate < 0 || p.Grate > len(grates) || p.Grate == 0 && len(grates) > 0 {
				c.fault(path, "%d; its zone has %d grates one above another", p.Grate, len(grates))
				continue
			}
			if len(grates) == 0 {
				continue
			}
			if laid := c.facts.lay(b.dish, p.MassKg); !grates[p.Grate-1].Takes(laid.HighM) {
				c.fault(path, "%.3f m high does not go on the %s", laid.HighM, grates[p.Grate-1].Name)
			}
			if !c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0) {
				all = append(all, hung{path, p.Grate, c.hanging(&b)})
			}
		}
	}
	for _, a := range all {
		for _, o := range all {
			if a.level > o.level && !safety.MayHangOver(a.Hanging, o.Hanging) {
				c.fault(a.path, "%s hangs raw over %s, which comes off sooner, is done at less or belongs above it", a.Category, o.Category)
			}
		}
	}
}

// gratesOf are those of the first zone beside the coals that a batch lies in, nil where it
// has one.
func (c *checker) gratesOf(b *batchFacts) []fire.Grate {
	for _, s := range b.cooking {
		if s.Place != "grate" || s.Direct || s.Phase < 1 || s.Phase > len(c.plan.Phases) {
			continue
		}
		for _, z := range c.facts.grill.Zones(phaseAsFire(c.plan.Phases[s.Phase-1])) {
			if z.Name == s.Zone && len(z.Above) > 0 {
				return z.Grates()
			}
		}
	}
	return nil
}

// hanging is a batch as it may drip: raw until the slow end of its curve comes to the
// published minimum, or until it is off where there is no curve.
func (c *checker) hanging(b *batchFacts) safety.Hanging {
	at := func(t time.Time) float64 { return minutesBetween(c.plan.ServeAt, t) }
	h := safety.Hanging{
		Category: b.dish.category, MinimumC: safety.MinimumFor(b.dish.category, b.dish.prep).CoreC,
		On: at(b.on()), Off: at(b.off()), RawUntil: at(b.off()),
	}
	for i, p := range b.Curve {
		if p.LowC < h.MinimumC {
			continue
		}
		raw := p.At
		if i > 0 {
			last := b.Curve[i-1]
			share := (h.MinimumC - last.LowC) / (p.LowC - last.LowC)
			raw = last.At.Add(time.Duration(share * float64(p.At.Sub(last.At))))
		}
		h.RawUntil = min(h.RawUntil, at(raw))
		break
	}
	return h
}
