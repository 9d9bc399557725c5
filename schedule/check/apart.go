package check

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// logOf is the log as it is of a batch: where one piece of several came off by itself, the lines
// of its take-off and of where it waits are of that piece, which is a batch of its own.
func (c *checker) logOf(b *batchFacts) []schedule.Entry {
	id := b.dish.plan.ID
	piece := func(e schedule.Entry) bool { return e.Dish == id && e.Kind == schedule.LogPulled && e.Value != "" }
	first := slices.IndexFunc(c.plan.Log, piece)
	if first < 0 {
		return c.plan.Log
	}
	var off time.Time // by its step; zero while it is on
	for _, s := range c.plan.Steps {
		if s.Kind == schedule.StepTakeOff && s.Done && s.Dish == id && s.Batch == b.Number {
			off = s.At
		}
	}
	var out []schedule.Entry
	for i, e := range c.plan.Log {
		waits := slices.Contains([]schedule.EntryKind{schedule.LogBoxed, schedule.LogCounter, schedule.LogOuter, schedule.LogChilled, schedule.LogToOven}, e.Kind)
		switch {
		case piece(e) && !e.At.Equal(off), e.Dish == id && waits && i > first && (off.IsZero() || e.At.Before(off)):
		default:
			out = append(out, e)
		}
	}
	return out
}
