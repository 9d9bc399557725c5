package check

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
)

// Figures of food of which nothing says where it is (judgment).
const (
	unplacedMost = 0.9              // the most that is promised of it
	hotAsItWent  = 10 * time.Minute // its outside tells for so long how it stood before
)

// kept: every minute of cooked food since its take-off is in a place that the log tells of. Where
// for longer than food may be without heat nothing does, it is thrown away if the log then has it
// put somewhere, and asked after else: no plan of where it should be clears its clock.
func (c *checker) kept() {
	if c.plan.Revision == 0 || c.plan.RevisedAt == nil {
		return
	}
	limit := safety.OutLimit(c.airC()) + wholeMinute
	for _, b := range c.batches() {
		id := b.dish.plan.ID
		from, to, by := c.untold(&b)
		if from.IsZero() || b.dish.plan.MinimumC == 0 || minutesBetween(from, to) <= limit || c.condemned(id) {
			continue
		}
		asked := c.found(schedule.StandsOpen, id) || c.found(schedule.Leftovers, id) || c.unshown(id)
		switch {
		case by == schedule.LogBoxed:
			c.fault(b.path, "came off, was without heat from %s to %s for all that is told, and is kept", told(from), told(to))
		case by == schedule.LogServed && minutesBetween(to, *c.plan.RevisedAt) > limit: // it is eaten
		case !asked:
			c.fault(b.path, "nothing says where it was from %s to %s, and no finding asks", told(from), told(to))
		case by == "" && to.Before(b.dish.serve) && b.Chance > unplacedMost+sameChance:
			c.fault(b.path+".chance", "%.3f; nothing says where it has been since %s", b.Chance, told(from))
		}
	}
}

// untold is the stretch since a batch was taken off in which the log does not say where it is,
// and what ended it: empty for now.
func (c *checker) untold(b *batchFacts) (from, to time.Time, by schedule.EntryKind) {
	to = *c.plan.RevisedAt
	for _, e := range c.logOf(b) {
		if e.At.Before(b.on().Add(time.Minute)) || e.Dish != b.dish.plan.ID && (e.Dish != "" || e.Kind != schedule.LogServed) {
			continue
		}
		hot := (e.Kind == schedule.LogOuter || e.Kind == schedule.LogColdest) && e.C >= safety.DangerHighC
		switch {
		case e.Kind == schedule.LogRestarted:
			from, to, by = time.Time{}, *c.plan.RevisedAt, ""
		case e.Kind == schedule.LogPulled && from.IsZero() && by == "":
			from = e.At
		case hot && !from.IsZero() && (by == "" || !e.At.After(to.Add(hotAsItWent))):
			if from = e.At; by != "" {
				from = to
			}
		case by != "":
		case e.Kind == schedule.LogToOven && from.IsZero(): // it cooks on there
		case e.Kind == schedule.LogBoxed, e.Kind == schedule.LogToOven:
			to, by = e.At, schedule.LogBoxed
		case e.Kind == schedule.LogCounter, e.Kind == schedule.LogChilled && from.IsZero():
			from, by = to, e.Kind // a clock of its own
		case e.Kind == schedule.LogChilled, e.Kind == schedule.LogServed && !from.IsZero():
			to, by = e.At, e.Kind
		}
	}
	return from, to, by
}
