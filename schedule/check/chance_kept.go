package check

import (
	"math"

	"example.com/cookday/schedule"
)

// tooEarly is the chance that a batch of a first plan is done so early that its way of
// waiting ends before it is eaten, beyond the tenth of fast days that a plan leaves aside:
// a hold that the plan cannot keep is not called sure.
func (c *checker) tooEarly(b *batchFacts) float64 {
	if c.plan.Revision > 0 {
		return 0
	}
	return c.tooEarlyWith(b, 0)
}

// tooEarlyWith is the same of a put-on so many minutes earlier. What may wait by a published
// rule is lost at its end; what only stands goes off evenly until twice as long.
func (c *checker) tooEarlyWith(b *batchFacts, earlier float64) float64 {
	if b.dish.timed() || c.chilled() || b.sears() {
		return 0
	}
	const parts = 8
	good := c.holdLimit(b)
	most := good
	if _, held := b.advice(); !held {
		most = math.Max(math.Min(2*good, c.openLimit()), good)
	}
	sum := 0.0
	for i := range parts {
		limit := math.Min(good*(1+(float64(i)+0.5)/parts), most)
		sum += chanceWithin(c.overHeat(b), minutesBetween(b.on(), b.dish.serve)+earlier+b.dish.travel-limit-halfMinute)
	}
	return math.Max(sum/parts-0.1, 0)
}

// likeliest says whether a batch that is not on yet, put on for the asked chance of being in
// time, would be no likelier to be in time and kept.
func (c *checker) likeliest(b *batchFacts, room float64) bool {
	if c.done(schedule.StepPutOn, b.dish.plan.ID, b.Number, 0) {
		return false
	}
	asked := c.facts.req.Confidence
	earlier := minutesAt(c.overHeat(b), asked) - room
	return earlier <= 0 || chanceWithin(c.overHeat(b), room)-c.tooEarlyWith(b, 0) >= asked-c.tooEarlyWith(b, earlier)-b.slackInChance()
}
