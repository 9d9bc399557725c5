package logbook

import (
	"fmt"
	"time"

	"example.com/cookday/schedule/unit"
)

// soonAhead is how far ahead a time may lie and still be a clock that goes a little slow,
// rather than one of half a day ago (assumption).
const soonAhead = 30 * time.Minute

// earlyBy is how much before its planned hour a cook may begin (assumption).
const earlyBy = 90 * time.Minute

// moment is the instant that a note tells: without am or pm the latest such moment that
// is not after now and not before anything was on the fire. The sentence asks back.
func (n *noteReader) moment(t told, of Row) (time.Time, string) {
	if t.isAgo {
		return n.at.Add(-t.ago), ""
	}
	c, begun := t.clock, n.begun(of)
	latest := n.latest(c)
	if !c.exact && n.day.Units == unit.Metric { // a clock of 24 hours: as written, where that can be
		written := clockSaid{c.hour, c.minute, true}
		if at := n.latest(written); !at.Before(begun) {
			latest = at
		}
	}
	if !latest.Before(begun) {
		return latest, ""
	}
	if (Kind(of.kind) == Counter || Kind(of.kind) == Chilled) && n.neverOn(of.dish) && n.at.Sub(latest) < 12*time.Hour {
		return latest, "" // raw meat lay out before this cook began
	}
	if soon := n.soonest(c, n.at); soon.Sub(n.at) <= soonAhead {
		return soon, ""
	}
	if c.exact {
		at := time.Date(2000, 1, 1, c.hour, c.minute, 0, 0, time.UTC)
		return n.nearest(at, n.fromHere), ""
	}
	before := "this cook began"
	if begun.After(n.begun(Row{kind: string(On)})) {
		before = of.dish + " went on, at " + n.day.Units.Clock(begun.In(n.day.Loc))
	}
	clock := fmt.Sprintf("%d:%02d", c.hour, c.minute)
	return latest, fmt.Sprintf("%s would be %s, before %s. If it is right, write it with AM or PM, such as %s PM", clock, n.dated(latest), before, clock)
}

// begun is when the first thing of this day may have happened; of what is on the fire, what
// came after it went on.
func (n *noteReader) begun(of Row) time.Time {
	from := n.day.From.Add(-earlyBy)
	for _, e := range n.log {
		if e.At.Before(from) {
			from = e.At
		}
	}
	if Kind(of.kind) == On {
		return from
	}
	for _, e := range n.log {
		if e.Kind == On && e.Dish == of.dish && e.At.After(from) && of.dish != "" {
			from = e.At
		}
	}
	return from
}

// latest is the last such time of day that is not after now.
func (n *noteReader) latest(c clockSaid) time.Time {
	var best time.Time
	for _, t := range n.on(c, n.at) {
		if !t.After(n.at) && t.After(best) {
			best = t
		}
	}
	return best
}

// soonest is the next such time of day after an instant.
func (n *noteReader) soonest(c clockSaid, after time.Time) time.Time {
	var best time.Time
	for _, t := range n.on(c, after) {
		if t.After(after) && (best.IsZero() || t.Before(best)) {
			best = t
		}
	}
	return best
}

// on are the instants of a time of day about another, in either half of a day where it
// does not say which.
func (n *noteReader) on(c clockSaid, about time.Time) []time.Time {
	var all []time.Time
	y, m, d := about.In(n.day.Loc).Date()
	for k := -2; k <= 2; k++ {
		all = append(all, time.Date(y, m, d+k, c.hour, c.minute, 0, 0, n.day.Loc))
		if !c.exact {
			all = append(all, time.Date(y, m, d+k, c.hour%12, c.minute, 0, 0, n.day.Loc), time.Date(y, m, d+k, c.hour%12+12, c.minute, 0, 0, n.day.Loc))
		}
	}
	return all
}

// serving is when the meal is, or a dish of it: as planned, or as it was moved last.
func (n *noteReader) serving(dish string) time.Time {
	at := n.day.To
	for _, e := range n.log {
		if e.Kind == ServingMoved && (e.Dish == "" || e.Dish == dish) {
			if t, err := time.Parse(time.RFC3339, e.Value); err == nil {
				at = t
			}
		}
	}
	return at
}

// servingAt is a time of day at which people eat: of those ahead the one that lies least
// far from the planned serving.
func (n *noteReader) servingAt(c clockSaid, dish string) time.Time {
	var best time.Time
	planned := n.serving(dish)
	for _, t := range append(n.on(c, planned), n.on(c, n.at)...) {
		if t.After(n.at) && (best.IsZero() || t.Sub(planned).Abs() < best.Sub(planned).Abs()) {
			best = t
		}
	}
	return best
}
