package check

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
)

// untilOff is the spread of the time from the put-on to the take-off, minutes. In a
// first plan it follows from the stages; a sear waits for its instant, however
// early the smoke is done. A revision knows more, and says it in the window.
func (c *checker) untilOff(b *batchFacts) schedule.Minutes {
	if m, ok := b.Milestone(schedule.MilestoneTakeOff); ok && c.plan.Revision > 0 {
		since := func(t time.Time) float64 { return math.Max(minutesBetween(b.on(), t), 0) }
		return schedule.Minutes{Early: since(m.Window.Early), Expected: since(m.Window.Expected), Late: since(m.Window.Late)}
	}
	var sum schedule.Minutes
	for _, s := range b.cooking {
		least := 0.0
		if s.Kind == schedule.StageSear {
			least = minutesBetween(b.on(), s.From)
		}
		sum.Early = math.Max(sum.Early, least) + s.Minutes.Early
		sum.Expected = math.Max(sum.Expected, least) + s.Minutes.Expected
		sum.Late = math.Max(sum.Late, least) + s.Minutes.Late
	}
	return sum
}

// sears says whether a batch ends over the coals: it waits for them, however early it is.
func (b *batchFacts) sears() bool { return b.cooking[len(b.cooking)-1].Kind == schedule.StageSear }

// overHeat is the same without the wait before a sear.
func (c *checker) overHeat(b *batchFacts) schedule.Minutes {
	if c.plan.Revision > 0 && !b.sears() {
		return c.untilOff(b)
	}
	var sum schedule.Minutes
	for _, s := range b.cooking {
		sum.Early, sum.Expected, sum.Late = sum.Early+s.Minutes.Early, sum.Expected+s.Minutes.Expected, sum.Late+s.Minutes.Late
	}
	return sum
}

// stageMinutes: a batch has as long over the heat as its spread asks at the plan's
// chance. The spread is log-normal between its three points; where a wrap waits
// for the clock that is near, not exact: two in a hundred are allowed, and a
// minute a stage for rounding.
func (c *checker) stageMinutes() {
	for _, b := range c.batches() {
		id, sure := b.dish.plan.ID, c.facts.req.Confidence
		switch {
		case c.plan.Revision == 0:
			c.takeTime(&b)
			if c.plan.Night != nil && c.plan.Night.Way == schedule.NightEarly && c.found(schedule.MayBeLate, id) {
				sure = math.Min(sure, beforeDawn)
			}
			if b.sears() && c.found(schedule.MayBeLate, id) { // it hardly stands before its sear, and how sure it is is told
				sure = math.Min(sure, 0.5)
			}
		case c.done(schedule.StepTakeOff, id, b.Number, 0), c.makesRoom(&b), c.neverDone(&b):
			continue
		case c.lessSure() || c.admits(id):
			sure = math.Min(sure, 0.5)
		}
		room := minutesBetween(b.on(), b.dish.serve) - b.dish.rest
		if c.found("hold-short", id) && c.likeliest(&b, room) {
			sure = math.Min(sure, 0.5)
		}
		need := minutesAt(c.overHeat(&b), sure)
		has := minutesBetween(b.on(), b.off()) - b.pause()
		if b.sears() && c.plan.Revision == 0 { // on a slow day it is seared later, and rests less
			has = room - b.pause()
		}
		if has < need*0.98-wholeMinute*float64(len(b.cooking)) {
			c.fault(b.path+".stages", "%.0f min over the heat are planned; at a chance of %g it takes %.0f", has, sure, need)
		}
	}
}

// beforeDawn is the least chance for which a day begins before people are usually up.
const beforeDawn = 0.8

// lessSure says whether a revision counts with what is expected, as it does where dinner
// is not sure any more.
func (c *checker) lessSure() bool {
	return c.found("less-sure", "") || c.found(schedule.Late, "") || c.found(schedule.MayBeLate, "")
}

// takeTime: every stage of cooking takes minutes.
func (c *checker) takeTime(b *batchFacts) {
	for k, s := range b.cooking {
		if s.Minutes.Expected <= 0 {
			c.fault(fmt.Sprintf("%s.stages[%d].minutes", b.path, k), "%.1f expected; cooking takes time", s.Minutes.Expected)
		}
	}
}
