package check

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
)

// tenthZ is the standard normal quantile of 0.9.
const tenthZ = 1.2815515655446004

// chanceWithin is the chance that something takes at most so many minutes: the
// logarithm is normal on either side of the median, through the three points.
func chanceWithin(m schedule.Minutes, minutes float64) float64 {
	if minutes <= 0 || m.Expected <= 0 {
		return 0
	}
	side, sure := m.Late, 1.0
	if minutes < m.Expected {
		side, sure = m.Early, 0
	}
	slope := math.Abs(math.Log(side/m.Expected)) / tenthZ
	if !(slope > 1e-12) { // no spread on that side
		return sure
	}
	return math.Erfc(-math.Log(minutes/m.Expected)/slope/math.Sqrt2) / 2
}

// minutesAt is the inverse: within how many minutes it is done at a chance.
func minutesAt(m schedule.Minutes, chance float64) float64 {
	z := -math.Sqrt2 * math.Erfcinv(2*chance)
	side := m.Late
	if z < 0 {
		side = m.Early
	}
	return m.Expected * math.Exp(math.Abs(z)/tenthZ*math.Log(side/m.Expected))
}

// sameChance covers that chances are printed with three digits.
const sameChance = 0.002

// chances: the chance of each batch follows from its window and the time it has,
// is at least what was asked or is said not to be, and all together are no
// likelier than the unlikeliest.
func (c *checker) chances() {
	least, product, left, any := 1.0, 1.0, c.eaten(), false
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		// The chance is of what may be served: where all is in danger, of what may be once it is measured.
		counts := !c.heldBack(d.plan.ID) || left == 0 && d.plan.Chance > 0
		any = any || counts
		worst := 1.0
		for _, b := range d.plan.Batches {
			worst = math.Min(worst, b.Chance)
			if counts {
				product *= b.Chance
			}
		}
		if math.Abs(d.plan.Chance-worst) > sameChance {
			c.fault(d.path+".chance", "%.3f is not that of its least likely batch, %.3f", d.plan.Chance, worst)
		}
		if counts {
			least = math.Min(least, d.plan.Chance)
		}
	}
	for _, b := range c.batches() {
		c.chance(&b)
	}
	if !any {
		least, product = 0, 0
	}
	all := c.plan.Chance.All
	if all > least+sameChance {
		c.fault("chance.all", "%.3f is more than that of the least likely dish, %.3f", all, least)
	}
	// What they share makes them rather likelier together than apart; a hundredth
	// is left for the numerical integral over it.
	if all < product-0.01 {
		c.fault("chance.all", "%.3f is less than if the dishes had nothing in common, %.3f", all, product)
	}
}

// eaten is how many dishes may be served as they are.
func (c *checker) eaten() (n int) {
	for i := range c.facts.dishes {
		if !c.heldBack(c.facts.dishes[i].plan.ID) {
			n++
		}
	}
	return n
}

func (c *checker) chance(b *batchFacts) {
	asked := c.facts.req.Confidence
	if b.Chance > 1 {
		c.fault(b.path+".chance", "%g is more than 1", b.Chance)
	}
	if c.done(schedule.StepTakeOff, b.dish.plan.ID, b.Number, 0) {
		return
	}
	room := minutesBetween(b.on(), b.dish.serve) - b.dish.rest
	if c.plan.Revision == 0 || b.sears() {
		room -= b.pause()
	}
	over := c.tooEarly(b)
	is := math.Max(chanceWithin(c.overHeat(b), room)-over, 0)
	if c.followed(b) {
		c.chanceOfFollowed(b, room)
	} else if off := b.Chance - is; off > sameChance+c.roundedChance(b, room) || -off > sameChance+c.roundedChance(b, room) && !c.condemned(b.dish.plan.ID) && !c.found(codeFireOut, b.dish.plan.ID) && !c.found(schedule.StandsOpen, b.dish.plan.ID) {
		c.fault(b.path+".chance", "%.3f; its window and the %.0f min that it has make it %.3f", b.Chance, room, is)
	}
	slack := b.slackInChance()
	if b.sears() {
		slack = math.Max(slack, c.roundedChance(b, room)) // its wait is rounded to a minute
	}
	if c.plan.Revision > 0 && c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0) {
		slack = math.Max(slack, 0.01) // it cannot go on sooner, and less is not worth a word
	}
	if c.found("hold-short", b.dish.plan.ID) {
		slack += over // it is in time, and a finding says that it does not keep on a fast day
		if c.likeliest(b, room) {
			return // neither is it sure to be, and no earlier put-on would have made both likelier
		}
	}
	if b.Chance < asked-slack && !c.admits(b.dish.plan.ID) {
		c.fault(b.path+".chance", "%.3f where %g was asked, and no finding says so", b.Chance, asked)
	}
}

// followed says whether a batch is on the fire of a revised day, and its window comes from
// what was read: such a window is no log-normal one.
func (c *checker) followed(b *batchFacts) bool {
	return c.plan.Revision > 0 && (len(b.Curve) > 0 || c.found(schedule.NeverDone, b.dish.plan.ID)) && c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0)
}

// chanceOfFollowed holds a chance between those of the three points of its window. Where a
// finding says that another explanation is alive it may be less, and never more.
func (c *checker) chanceOfFollowed(b *batchFacts, room float64) {
	m := c.overHeat(b)
	const minute = 1.5 // instants are rounded to the minute at both ends
	least, most := 0.0, 1.0
	for _, x := range []struct{ minutes, chance float64 }{{m.Early, 0.1}, {m.Expected, 0.5}, {m.Late, 0.9}} {
		if room < x.minutes-minute {
			most = math.Min(most, x.chance)
		}
		if room > x.minutes+minute {
			least = math.Max(least, x.chance)
		}
	}
	if c.found(schedule.ReadingOpen, b.dish.plan.ID) || c.found(schedule.Plateau, b.dish.plan.ID) || c.anyDoubt(b.dish.plan.ID) || c.condemned(b.dish.plan.ID) {
		least = 0
	}
	if b.Chance > most+sameChance || b.Chance < least-sameChance {
		c.fault(b.path+".chance", "%.3f; its window and the %.0f min that it has make it %g to %g", b.Chance, room, least, most)
	}
}

// anyDoubt says whether a reading of a dish is not taken for its core.
func (c *checker) anyDoubt(dish string) bool {
	for _, code := range []string{schedule.ProbeCold, schedule.ProbeFellOut, schedule.ReadingUnit, schedule.ReadingOther, schedule.FrozenMiddle} {
		if c.found(code, dish) {
			return true
		}
	}
	return false
}

// slackInChance is how much less than asked a batch may have: a little where its wrap
// waits for the clock, for the curve through three points is not exact then (up to 0.011
// was seen).
func (b *batchFacts) slackInChance() float64 {
	if m := b.cooking[0].Minutes; len(b.cooking) > 1 && (m.Late == m.Expected || m.Early == m.Expected) {
		return 0.015
	}
	return 2 * sameChance
}

// roundedChance is what a minute makes of a chance that was worked out from
// instants rounded to it: nothing in a first plan, whose minutes are not rounded,
// but for the wait before a sear.
func (c *checker) roundedChance(b *batchFacts, room float64) float64 {
	if c.plan.Revision == 0 && b.cooking[len(b.cooking)-1].Kind != schedule.StageSear {
		return 0
	}
	m := c.overHeat(b)
	is, most := chanceWithin(m, room), math.Abs(chanceWithin(m, room+1)-chanceWithin(m, room-1))
	if c.plan.Revision == 0 {
		return most
	}
	// The window of a revision is itself rounded to minutes, which is much of a patty's.
	for corner := range 8 {
		off := func(bit int) float64 { return halfMinute * float64(corner>>bit&1*2-1) }
		n := schedule.Minutes{Early: m.Early + off(0), Expected: m.Expected + off(1), Late: m.Late + off(2)}
		if n.Early > 0 && n.Early <= n.Expected && n.Expected <= n.Late {
			most = math.Max(most, math.Abs(chanceWithin(n, room)-is))
		}
	}
	return most
}

// admits says whether a finding warns of a dish for another reason than its hold
// or its room.
func (c *checker) admits(dish string) bool {
	for _, f := range c.plan.Findings {
		if f.Severity != schedule.Info && f.Code != "hold-short" && f.Code != "tight" && containsID(f.Dishes, dish) {
			return true
		}
	}
	return false
}

// curves: in order of time, with the band about the expected core.
func (c *checker) curves() {
	for _, b := range c.batches() {
		for i, p := range b.Curve {
			path := fmt.Sprintf("%s.curve[%d]", b.path, i)
			if p.LowC > p.CoreC+sameC || p.CoreC > p.HighC+sameC {
				c.fault(path, "low %.1f, expected %.1f and high %.1f are not in that order", p.LowC, p.CoreC, p.HighC)
			}
			if i > 0 && !p.At.After(b.Curve[i-1].At) {
				c.fault(path+".at", "%s is not after the point before it", told(p.At))
				break
			}
		}
	}
}
