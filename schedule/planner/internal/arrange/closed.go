package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
	"example.com/cookday/schedule/planner/internal/spread"
)

// startGrid is the step in minutes at which closed starts are looked for.
const startGrid = 5

// wrapInQuiet is the greatest chance that a wrap comes due in quiet hours and
// waits for their end, whatever the plan's confidence: the times after it do not
// count with that.
const wrapInQuiet = 0.1

// closedStarts are the starts at which a way may not be put on: those from which
// the take-off or the wrap falls into quiet hours with more
// than the allowed chance, and those that need the fire through a night that it
// does not last. Where no fire burns while people sleep, it is also too early for a fire
// that can only be lit when they are up, so many minutes before it is ready.
func (d *Arranger) closedStarts(w day.Way, lasts bool, it *day.Item, ready int) []sequence.Span {
	if len(d.Quiet) == 0 || !(w.First.Planned >= 0) {
		return nil
	}
	return d.closedFor(d.attendedEnds(w), w.First.Planned, w.Total().Planned, fireAt{lasts, w.LevelC, ready}, it)
}

// closedSears are the starts at which a sear may not begin: those from which its end
// falls into quiet hours. It may stand for long between the stages, so that this does
// not follow from when the piece was put on.
func (d *Arranger) closedSears(w day.Way, it *day.Item) []sequence.Span {
	if len(d.Quiet) == 0 || !(w.Second.Planned >= 0) {
		return nil
	}
	return d.closedFor([]attendedEnd{newAttendedEnd(w.Second, 1-d.Req.Confidence)}, w.Second.Planned, w.Second.Planned, fireAt{true, w.LevelC, 0}, it)
}

// fireAt is the fire that a way cooks on: whether it lasts through the longest quiet
// hours, its level, and how many minutes it takes to be ready, from its lighting.
type fireAt struct {
	lasts  bool
	levelC float64
	ready  int
}

// isLit says whether a fire may burn at a minute: one that was not kept overnight is lit
// only when people are up.
func (d *Arranger) isLit(f fireAt, u float64) bool {
	return !d.Watched || !slices.ContainsFunc(d.Quiet, func(q day.Span) bool {
		return q.Night && u <= float64(q.From) && u > float64(q.From-f.ready)
	})
}

// closedFor are the bad starts of a cook that is over so long before serving at the latest.
func (d *Arranger) closedFor(ends []attendedEnd, latest, whole float64, f fireAt, it *day.Item) []sequence.Span {
	var closed []sequence.Span
	through := make([]bool, len(d.Quiet))
	for i, q := range d.Quiet {
		through[i] = d.burnsThrough(q, f.lasts, f.levelC)
	}
	for u := int(latest); u <= it.Earliest; u += startGrid {
		if d.startIsBad(ends, float64(u), whole, through) || !d.isLit(f, float64(u)) {
			closed = appendSpan(closed, sequence.Span{From: u - startGrid + 1, To: u + startGrid})
		}
	}
	return closed
}

// startIsBad says it of one start; through is which quiet hours the fire burns through.
func (d *Arranger) startIsBad(ends []attendedEnd, u, whole float64, through []bool) bool {
	for i, q := range d.Quiet {
		if float64(q.From) < u && float64(q.To) > u-whole && !(through[i] && settledBy(q, u)) {
			return true
		}
		for i := range ends {
			if ends[i].tooLikely(u, q) {
				return true
			}
		}
	}
	return false
}

// attendedEnd is a length of time after which somebody must come, and the chance
// that may be that this is in quiet hours. To spare most of the many questions the
// trouble of a normal distribution, it knows between which minutes the answer is sure.
type attendedEnd struct {
	pace    spread.ScaledPace
	allowed float64

	never, late float64 // over in less, or in more, with the allowed chance at the most
	by, after   float64 // over in less, and in more, so likely that between them is too much
	first, soon float64 // hardly ever over in less, and over with more than the allowed chance in less
	last, still float64 // hardly ever over in more, likewise
}

// attendedEnds are the whole cook, on the grate or in the oven, and the first stage.
func (d *Arranger) attendedEnds(w day.Way) []attendedEnd {
	allowed := 1 - d.Req.Confidence
	ends := []attendedEnd{newAttendedEnd(w.Total(), allowed)}
	if w.InOven.Planned > 0 {
		ends = append(ends, newAttendedEnd(w.First.Plus(w.InOven), allowed))
	}
	if w.Stages() == 2 {
		ends = append(ends, newAttendedEnd(w.First, min(allowed, wrapInQuiet)))
	}
	return ends
}

func newAttendedEnd(p spread.Pace, allowed float64) attendedEnd {
	e := attendedEnd{pace: p.Scaled(), allowed: allowed, never: math.Inf(-1), late: math.Inf(1), by: math.Inf(-1), after: math.Inf(1), first: math.Inf(-1), last: math.Inf(1)}
	const sure = 1e-6 // well above what rounding makes of a chance
	ordered := 0 < p.Early && p.Early <= p.Expected && p.Expected <= p.Late
	if !ordered || !(2*sure < allowed && allowed < 1-2*sure) {
		return e // nothing is sure
	}
	at := func(chance float64) float64 { return p.At(spread.NormalQuantile(chance)) }
	e.never, e.late = at(allowed-sure), at(1-allowed+sure)
	e.by, e.after = at((1-allowed)/2-sure), at((1+allowed)/2+sure)
	if first, soon := at(sure), at(allowed+3*sure); first > leastMinutes && soon > p.Early/farOff {
		e.first, e.soon = first, soon
	}
	if last, still := at(1-sure), at(1-allowed-3*sure); last > p.Early/farOff && still < p.Late*farOff {
		e.last, e.still = last, still
	}
	return e
}

// tooLikely says whether what is put on at minute u comes to its end within a quiet
// stretch with more than the allowed chance.
func (e *attendedEnd) tooLikely(u float64, q day.Span) bool {
	longest, shortest := u-float64(q.From)+1, u-float64(q.To)+1
	switch {
	case longest <= e.never || shortest >= e.late:
		return false
	case shortest <= e.by && longest >= e.after, shortest <= e.first && longest >= e.soon, longest >= e.last && shortest <= e.still:
		return true
	}
	return quietChance(&e.pace, longest, shortest) > e.allowed+1e-9
}

// quietChance is the chance that something takes longer than the shortest and not
// longer than the longest of two times, both in minutes.
func quietChance(end *spread.ScaledPace, longest, shortest float64) float64 {
	if longest <= 0 || shortest > farOff*end.Late || longest < end.Early/farOff {
		return 0
	}
	return spread.NormalCDF(end.QuantileOf(longest)) - spread.NormalCDF(end.QuantileOf(math.Max(shortest, leastMinutes)))
}

// What is a third of the early time or three times the late one is out of the question; no time is less than the least.
const farOff, leastMinutes = 3, 1e-3

// appendSpan adds a span that does not begin before the last one, joining the two
// where they touch.
func appendSpan(all []sequence.Span, s sequence.Span) []sequence.Span {
	if n := len(all); n > 0 && s.From <= all[n-1].To {
		all[n-1].To = max(all[n-1].To, s.To)
		return all
	}
	return append(all, s)
}
