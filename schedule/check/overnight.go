package check

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
)

// overnight: only what may be is in an oven through a night, hot enough by its own
// reckoning all the time, not for longer than the oven may be left alone; and somebody
// looks at it before sleep, and on waking before anything else.
func (c *checker) overnight() {
	for _, b := range c.batches() {
		h, ok := b.advice()
		if !ok || h.Method != schedule.HoldOven || !b.holds() {
			continue
		}
		for _, q := range c.facts.quiet {
			in := schedule.Interval{From: instant.Later(q.From, instant.Later(b.off(), c.inOven(&b))), To: instant.Earlier(q.To, c.upFor(&b))}
			if minutesBetween(in.From, in.To) > safety.NightMinutes {
				c.ovenNight(&b, h, in, q.From)
			}
		}
	}
}

// holds says whether a batch has a stage of waiting.
func (b *batchFacts) holds() bool {
	for _, s := range b.Stages {
		if s.Kind == schedule.StageHold && s.To.After(s.From) {
			return true
		}
	}
	return false
}

func (c *checker) ovenNight(b *batchFacts, h schedule.HoldAdvice, q schedule.Interval, sleep time.Time) {
	if c.plan.RevisedAt != nil && !c.plan.RevisedAt.Before(q.To) || c.condemned(b.dish.plan.ID) || c.unshown(b.dish.plan.ID) || c.plan.Revision > 0 && c.found(schedule.CodeHoldShort, b.dish.plan.ID) {
		return // it does not keep, and a finding says so; or it was, and its readings are judged
	}
	if off, ok := b.Milestone(schedule.MilestoneTakeOff); ok && off.Window.Expected.After(sleep) { // it comes off at night: whoever took it off looks at it before sleeping on
		sleep = c.inOven(b).Add(time.Hour)
	}
	before, woken := c.lookBefore(b, sleep), c.lookAt(b, q.To)
	if before.IsZero() {
		c.fault(b.path, "is in the oven from %s to %s, and nobody looks at it in the hour before", told(q.From), told(q.To))
		before = sleep
	}
	if !woken {
		c.fault(b.path, "is in the oven through the night, and reading its probe is not the first step at %s", told(q.To))
	}
	staysOn := c.facts.req.Oven != nil && c.facts.req.Oven.StaysOn
	if unwatched := minutesBetween(before, q.To); !safety.Overnight(c.finished(b, h), unwatched, staysOn) {
		c.fault(b.path, "is in the oven and not looked at for %.0f min, from %s; it may not be left so", unwatched, told(before))
	}
	if most := b.dish.serve.Add(-safety.OvernightMostMinutes*time.Minute - time.Minute); c.plan.Revision == 0 && c.inOven(b).Before(most) {
		c.fault(b.path, "goes into the oven at %s, for longer than is practised", told(c.inOven(b)))
	}
	for _, p := range h.Course {
		if p.LowC < safety.DangerHighC && b.Number == 1 {
			c.fault(b.path, "at %s the outer layer may be at %.1f degC in the oven, below the line", told(p.At), p.LowC)
			return
		}
	}
}

// upFor is when somebody is up for a batch at the latest: it is cut up, or served.
func (c *checker) upFor(b *batchFacts) time.Time {
	if cut := c.cutUp(b); !cut.IsZero() {
		return instant.Earlier(cut, b.dish.serve)
	}
	return b.dish.serve
}

// inOven is when a batch goes into the oven.
func (c *checker) inOven(b *batchFacts) time.Time {
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepToOven && s.Dish == b.dish.plan.ID && s.Batch == b.Number {
			return s.At
		}
	}
	return b.off()
}

// lookBefore is when somebody looks at a batch in the hour before quiet hours, while it is
// off the fire; zero if nobody does.
func (c *checker) lookBefore(b *batchFacts, quiet time.Time) time.Time {
	var at time.Time
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepCheckOven && s.Dish == b.dish.plan.ID && s.Batch == b.Number && s.At.Before(quiet) && !s.At.Before(quiet.Add(-time.Hour)) {
			at = s.At
		}
	}
	return at
}

// lookAt says whether reading the probe of a batch, or of another that is in the oven too,
// is the first that somebody does from an instant on.
func (c *checker) lookAt(b *batchFacts, wake time.Time) bool {
	for _, s := range c.plan.Steps {
		switch {
		case s.At.Before(wake) || !s.Attended:
		case s.Kind != schedule.StepCheckOven || !s.At.Equal(wake):
			return false
		case s.Dish == b.dish.plan.ID && s.Batch == b.Number:
			return true
		}
	}
	return false
}

// boxes: a limit that only a good box has wants a logged hold that shows one.
func (c *checker) boxes() {
	box := c.facts.req.Box
	if box == nil || box.Kind != schedule.BoxGood || box.Proven() {
		return
	}
	for i := range c.facts.dishes {
		for k, h := range c.facts.dishes[i].plan.Holds {
			if h.Chosen && h.Method == schedule.HoldBox && !c.found("box-unproven", "") {
				c.fault(fmt.Sprintf("%s.holds[%d]", c.facts.dishes[i].path, k), "is in a box that is only called good, and no finding \"box-unproven\" says that it counts as a usual one")
			}
		}
	}
}
