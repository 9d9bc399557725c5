package planner

import (
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// contradictions are pairs of entries of a log that cannot both be right, by what they say and
// when, whatever any plan makes of them; the newest last. A plan that breaks a rule without
// one of these has only itself to blame.
func contradictions(p schedule.Plan, log []schedule.Entry) (pairs [][2]schedule.Entry) {
	both := func(a, b schedule.Entry) { pairs = append(pairs, [2]schedule.Entry{a, b}) }
	var out *schedule.Entry // the fire, told to be out and not lit since
	for i, e := range log {
		switch e.Kind {
		case schedule.LogFireOut:
			out = &log[i]
		case schedule.LogLit:
			out = nil
		case schedule.LogRestarted, schedule.LogOn:
			if out != nil && out.At.Before(e.At) {
				both(*out, e)
			}
		}
	}
	for _, d := range p.Dishes {
		var first, on *schedule.Entry
		for i, e := range log {
			if e.Dish != d.ID {
				continue
			}
			switch e.Kind {
			case schedule.LogOn:
				if first == nil {
					first = &log[i]
				}
				if on != nil && len(d.Batches) == 1 && e.At.Sub(on.At) >= time.Minute {
					both(*on, e)
				}
				on = &log[i]
			case schedule.LogPulled, schedule.LogStopped, schedule.LogBoxed, schedule.LogCounter, schedule.LogChilled, schedule.LogToOven, schedule.LogServed:
				on = nil
			}
		}
		for _, e := range log {
			if first != nil && e.Dish == d.ID && e.At.Before(first.At) && slices.Contains(afterOn, e.Kind) {
				both(e, *first)
			}
		}
	}
	return pairs
}

// afterOn are entries that nobody writes of a dish before it is on.
var afterOn = []schedule.EntryKind{schedule.LogCore, schedule.LogColdest, schedule.LogOuter, schedule.LogWrapped, schedule.LogPulled, schedule.LogStopped, schedule.LogRestarted, schedule.LogBoxed, schedule.LogServed}
