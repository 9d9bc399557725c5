package check

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
)

// Figures of what must be read before it is eaten (judgment).
const (
	unshownMost = 0.9              // the most that a piece may be promised that nothing shows to be done
	coldestFor  = 30 * time.Minute // for so long the coldest place stands against warmer ones
	shownSlackK = 0.3
)

// shown: poultry, ground, stuffed, injected, tenderised and rolled meat that a revision takes
// to be off is promised to nobody, and comes to no table, before it was read at its minimum in
// its coldest place; nor is any other meat that nobody told to be off and nobody read, but what
// cooks for hours past its minimum; and none is taken to be off, done as planned, whose fire is told to have
// gone out before that.
func (c *checker) shown() {
	if c.plan.Revision == 0 {
		return
	}
	for _, b := range c.batches() {
		d := b.dish
		off, logged := c.offAt(&b)
		if off.IsZero() || d.plan.MinimumC == 0 || c.condemned(d.plan.ID) {
			continue
		}
		if out, dead := c.outBefore(b.on(), off); dead && !logged && !c.logged(schedule.LogToOven, &b) {
			c.fault(b.path, "is taken to be off and done at %s, as planned; its fire went out at %s", told(off), told(out))
		}
		if !safety.SurfaceInside(d.category, d.prep) && (logged || d.cut.Style == cut.Tough || c.readAtAll(&b)) || c.readDone(&b, off) {
			continue
		}
		if b.Chance > unshownMost+sameChance {
			c.fault(b.path+".chance", "%.3f; nothing shows that it came to its minimum", b.Chance)
		}
		for i, s := range c.plan.Steps {
			if s.Kind == schedule.StepServe && !s.Done && regexp.MustCompile(`Serve: [^.]*`+regexp.QuoteMeta(d.plan.Name)).MatchString(s.Text) {
				c.fault(fmt.Sprintf("steps[%d].text", i), "%q, and nothing shows that it came to its minimum", s.Text)
			}
		}
	}
}

// readAtAll says whether anybody read a batch.
func (c *checker) readAtAll(b *batchFacts) bool {
	return slices.ContainsFunc(c.plan.Log, func(e schedule.Entry) bool {
		return e.Dish == b.dish.plan.ID && (e.Kind == schedule.LogCore || e.Kind == schedule.LogColdest) && !e.At.Before(b.on())
	})
}

// offAt is when a batch came off, by the log, else by a step that is done; zero for what is on.
func (c *checker) offAt(b *batchFacts) (at time.Time, logged bool) {
	for _, e := range c.logOf(b) {
		if e.Dish != b.dish.plan.ID && !(e.Dish == "" && e.Kind == schedule.LogServed) || e.At.Before(b.on()) { // the whole meal
			continue
		}
		switch e.Kind {
		case schedule.LogPulled, schedule.LogBoxed, schedule.LogCounter, schedule.LogServed:
			if at.IsZero() && e.At.After(b.on()) { // what came off in the minute in which it went on did so before
				at = e.At
			}
		case schedule.LogRestarted:
			at = time.Time{}
		}
	}
	if !at.IsZero() {
		return at, true
	}
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepTakeOff && s.Done && s.Dish == b.dish.plan.ID && s.Batch == b.Number {
			return s.At, false
		}
	}
	return time.Time{}, false
}

// outBefore is when the fire was told to have gone out between two instants.
func (c *checker) outBefore(on, off time.Time) (time.Time, bool) {
	i := slices.IndexFunc(c.plan.Log, func(e schedule.Entry) bool {
		return e.Kind == schedule.LogFireOut && e.At.After(on) && e.At.Before(off)
	})
	if i < 0 {
		return time.Time{}, false
	}
	return c.plan.Log[i].At, true
}

// readDone says whether the log has a batch at its minimum, and no colder coldest place
// shortly before that, or before it had time to cool.
func (c *checker) readDone(b *batchFacts, off time.Time) bool {
	done, place := false, ""
	inner := safety.SurfaceInside(b.dish.category, b.dish.prep)
	var coldest time.Time
	for _, e := range c.plan.Log {
		if e.Dish != b.dish.plan.ID || e.At.Before(b.on()) || e.Kind != schedule.LogCore && e.Kind != schedule.LogColdest {
			continue
		}
		pushed := e.Kind == schedule.LogColdest
		switch {
		case e.C >= c.leastOf(b)-shownSlackK:
			same := place != "" && e.Value == place // the cold place itself, as it was named
			done = done || pushed || same || coldest.IsZero() || e.At.Sub(coldest) > coldestFor || !inner && e.At.After(coldest)
		case pushed && !e.At.After(off):
			done, coldest, place = false, e.At, e.Value
		}
	}
	return done
}

// leastOf is the core that a batch must have shown: its minimum, or what it comes off at where
// that is lower.
func (c *checker) leastOf(b *batchFacts) float64 {
	least := b.dish.plan.MinimumC
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepTakeOff && s.Dish == b.dish.plan.ID && s.CoreC > 0 {
			least = math.Min(least, s.CoreC)
		}
	}
	return least
}
