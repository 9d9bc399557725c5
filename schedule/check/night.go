package check

import (
	"slices"

	"example.com/cookday/schedule"
)

// hours are the quiet hours as the plan has them: those of the request, or what it kept of
// the usual ones. A plan of an older edition kept none.
func (c *checker) hours() []schedule.Quiet {
	switch n := c.plan.Night; {
	case c.facts.req.Quiet != nil:
		return c.facts.req.Quiet
	case n != nil:
		return n.Quiet
	}
	return nil
}

func forSleep(hours []schedule.Quiet) []schedule.Quiet {
	return slices.DeleteFunc(slices.Clone(hours), func(q schedule.Quiet) bool { return !q.ForSleep() })
}

// yesterday: the day before may have spent its night another way. Its hours hold until
// everything is chilled.
func (c *checker) yesterday() {
	if c.plan.Ahead == nil || c.plan.Ahead.Plan == nil || c.facts.req.Quiet != nil || c.plan.Ahead.Plan.Night == nil {
		return
	}
	chill, hours := c.plan.Ahead.ChillAt, c.plan.Ahead.Plan.Night.Quiet
	both := func(first, later []schedule.Interval) []schedule.Interval {
		out := slices.DeleteFunc(first, func(q schedule.Interval) bool { return !q.From.Before(chill) })
		return append(out, slices.DeleteFunc(later, func(q schedule.Interval) bool { return q.From.Before(chill) })...)
	}
	c.facts.quiet = both(c.facts.quietHours(chill, hours), c.facts.quiet)
	c.facts.nights = both(c.facts.quietHours(chill, forSleep(hours)), c.facts.nights)
}

// night: a plan says how the night is spent, with the hours that go with it.
func (c *checker) night() {
	asked, n := c.facts.req.Quiet, c.plan.Night
	switch {
	case c.plan.Revision > 0:
		return // as it was first planned
	case n == nil && (asked == nil || len(asked) > 0):
		c.fault("night", "is missing; somebody may sleep")
		return
	case n == nil:
		return
	case asked != nil && !slices.Equal(asked, n.Quiet):
		c.fault("night.quiet", "%v is not what the request says, %v", n.Quiet, asked)
	case asked == nil:
		c.usual(n)
	}
	if n.Way != schedule.NightDay && !c.found(n.Way.Code(), "") {
		c.fault("night.way", "%q, and no finding says so", n.Way)
	}
	burns := len(c.burntNights()) > 0
	if burns != (n.Way == schedule.NightFire) {
		c.fault("night.way", "%q; a fire burns in the night: %t", n.Way, burns)
	}
	if n.Way == schedule.NightOven && !c.heldOvernight() {
		c.fault("night.way", "%q, and nothing waits in the oven through a night", n.Way)
	}
}

// usual: of the usual hours only the end may be given up, by an early start, or all of
// them where nothing else works.
func (c *checker) usual(n *schedule.Night) {
	usual := schedule.UsualQuiet()
	switch n.Way {
	case schedule.NightAwake:
		if len(n.Quiet) > 0 {
			c.fault("night.quiet", "%v; somebody is up all night", n.Quiet)
		}
	case schedule.NightEarly:
		if len(n.Quiet) != 1 || n.Quiet[0].From != usual[0].From || n.Quiet[0].To >= usual[0].To {
			c.fault("night.quiet", "%v is no usual night that ends early", n.Quiet)
		}
	case schedule.NightDay, schedule.NightOven, schedule.NightFire:
		if !slices.Equal(n.Quiet, usual) {
			c.fault("night.quiet", "%v is not the usual night, %v", n.Quiet, usual)
		}
	default:
		c.fault("night.way", "%q is no way to spend a night", n.Way)
	}
}

// heldOvernight says whether something waits in the oven through a night.
func (c *checker) heldOvernight() bool {
	for i := range c.facts.dishes {
		d := &c.facts.dishes[i]
		if !slices.ContainsFunc(d.plan.Holds, func(h schedule.HoldAdvice) bool { return h.Chosen && h.Method == schedule.HoldOven }) {
			continue
		}
		for _, b := range d.plan.Batches {
			m, ok := b.Milestone(schedule.MilestoneTakeOff)
			if ok && slices.ContainsFunc(c.facts.nights, func(q schedule.Interval) bool {
				return !m.Window.Expected.After(q.From) && !d.serve.Before(q.To)
			}) {
				return true
			}
		}
	}
	return false
}
