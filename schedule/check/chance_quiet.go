package check

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
)

// quietChance: a take-off or a refuel falls into quiet hours with no more than the
// chance that the plan leaves for failing, or a finding says so.
func (c *checker) quietChance() {
	if c.plan.Revision > 0 && c.facts.req.Quiet == nil {
		return // nobody said that they sleep, and what cooks slowly is not left alone for that
	}
	allowed := 1 - c.facts.req.Confidence + 0.005 // three digits, and the half minutes of two ends
	for _, b := range c.batches() {
		if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) || c.followed(&b) {
			continue // what is on the fire comes off when it is done
		}
		if c.offAtOnce(&b) {
			continue // whoever asks is up
		}
		if p := c.chanceInQuiet(b.on(), c.untilOff(&b)); p > allowed {
			c.fault(b.path, "its take-off falls into quiet hours with a chance of %.2f; at most %.2f is allowed", p, allowed)
		}
	}
	for i, ph := range c.plan.Phases {
		if ph.Burn == nil || c.found("refuel-in-quiet", "") {
			continue
		}
		for j, r := range ph.Burn.Refuels {
			since := func(t time.Time) float64 { return minutesBetween(ph.From, t) }
			m := schedule.Minutes{Early: since(r.Window.Early), Expected: since(r.Window.Expected), Late: since(r.Window.Late)}
			if p := c.chanceInQuiet(ph.From, m); p > allowed {
				c.fault(fmt.Sprintf("phases[%d].burn.refuels[%d]", i, j), "falls into quiet hours with a chance of %.2f; at most %.2f is allowed, or a finding \"refuel-in-quiet\" says so", p, allowed)
			}
		}
	}
}

// offAtOnce says whether a piece that is on the fire of a revised day is expected off within
// minutes of now.
func (c *checker) offAtOnce(b *batchFacts) bool {
	const soon = 10 * time.Minute
	at := c.plan.RevisedAt
	return at != nil && c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0) && !b.off().After(at.Add(soon))
}

// chanceInQuiet is the chance that what begins at from and takes m ends in quiet
// hours: not before they begin, and before they end. What ends after the last
// serving is late, not loud.
func (c *checker) chanceInQuiet(from time.Time, m schedule.Minutes) float64 {
	sum := 0.0
	for _, q := range c.facts.quiet {
		end := q.To
		if end.After(c.plan.ServeAt) {
			end = c.plan.ServeAt
		}
		if !end.After(q.From) {
			continue
		}
		a, b := minutesBetween(from, q.From), minutesBetween(from, end)
		sum += chanceWithin(m, b-1e-6) - chanceWithin(m, a-1e-6)
	}
	return sum
}
