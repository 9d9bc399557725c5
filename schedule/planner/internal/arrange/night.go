package arrange

import (
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// lightClosed are the instants from which a light would bring the pouring of its
// coals into quiet hours.
func (d *Arranger) lightClosed(f fire.Fire) []sequence.Span {
	return d.quietMoved(d.Grill.PourMinutes(f))
}

// changeClosed are the instants at which the fire may not be changed to this one,
// because the chimney for it would have to be lit in quiet hours.
func (d *Arranger) changeClosed(f fire.Fire) []sequence.Span {
	return d.quietMoved(-d.Grill.PourMinutes(f))
}

// quietMoved are the quiet hours, earlier by so many minutes.
func (d *Arranger) quietMoved(by int) []sequence.Span {
	if by == 0 {
		return nil
	}
	closed := make([]sequence.Span, len(d.Quiet))
	for i, q := range d.Quiet {
		closed[i] = sequence.Span{From: q.From + by, To: q.To + by}
	}
	return closed
}

// burnsThrough says whether a fire of a level that lasts long enough may burn through
// quiet hours: any through an afternoon's, a low one that is not to be watched through a
// calm night.
func (d *Arranger) burnsThrough(q day.Span, lasts bool, levelC float64) bool {
	return lasts && (!q.Night || !d.Watched && levelC <= safety.UnwatchedMostC && !d.Windy(q))
}

// settled are the instants before a night in which a fire is neither lit nor changed that
// may burn through it: ready so many minutes later, its vents would be touched just before
// people go to sleep.
func (d *Arranger) settled(lasts bool, levelC float64, ready int) []sequence.Span {
	var out []sequence.Span
	for _, q := range d.Quiet {
		if q.Night && d.burnsThrough(q, lasts, levelC) {
			out = append(out, sequence.Span{From: q.To, To: q.To + ready + safety.VentsStillMinutes})
		}
	}
	return out
}

// settledBy says whether what goes on at a minute, to cook through quiet hours, does so
// before the vents are set for a night.
func settledBy(q day.Span, on float64) bool {
	return !q.Night || on >= float64(q.To+safety.VentsStillMinutes) || on < float64(q.To)
}

// idleMost is how long a fire may burn with nothing on it through quiet hours, minutes
// (assumption): an afternoon nap, and no night.
const idleMost = 120

// idleLights are the instants before quiet hours at which a fire may not be lit, and
// idleChanges those at which it may not be changed to, because it would burn through
// them for nothing but what goes on after them: as long as nothing can be on it all
// that time, and nothing that is cooked before can wait for their end.
func (d *Arranger) idleLights(p *sequence.Problem, f int, lasts bool, levelC float64) []sequence.Span {
	return d.idle(p, f, lasts, levelC, p.Fires[f].Setup)
}

func (d *Arranger) idleChanges(p *sequence.Problem, f int, lasts bool, levelC float64) []sequence.Span {
	return d.idle(p, f, lasts, levelC, 0)
}

// idle are the instants from which, after so many minutes, a fire would burn idly
// through quiet hours. A fire that does not last them has nothing on all that time.
func (d *Arranger) idle(p *sequence.Problem, f int, lasts bool, levelC float64, setup int) []sequence.Span {
	var out []sequence.Span
	for _, q := range d.Quiet {
		lasts := d.burnsThrough(q, lasts, levelC)
		if q.To > p.Earliest || lasts && q.To-q.From <= idleMost {
			continue
		}
		s, through := sequence.Span{From: q.To, To: q.To + Ever}, false
		for i := range p.Chains {
			for _, r := range runsOn(&p.Chains[i], f) {
				if r.last >= q.To { // done before, and good until they end
					s.To = min(s.To, q.To+setup+r.minutes)
				}
				through = through || lasts && min(r.last, q.From)+r.minutes+r.slack >= q.To
			}
		}
		if !through {
			out = append(out, s)
		}
	}
	return out
}

// Ever is longer than any plan, in minutes.
const Ever = 30 * 24 * 60

// run is one way through a batch that begins on some fire: how many minutes it takes,
// how many more it may lie between its stages, and before which minute it may not be done.
type run struct{ minutes, slack, last int }

func runsOn(c *sequence.Chain, f int) []run {
	var out []run
	last := c.Tasks[len(c.Tasks)-1]
	for i, m := range c.Tasks[0].Modes {
		if !slices.ContainsFunc(m.Places, func(p sequence.Place) bool { return p.Fire == f }) {
			continue
		}
		for _, end := range last.Modes {
			r := run{m.Minutes[0], 0, Ever}
			if end.Gap.Max >= 0 {
				r.last = c.Serve + end.Gap.Max
			}
			if len(c.Tasks) > 1 {
				r.minutes, r.slack = r.minutes+end.Minutes[i], c.Tasks[0].LagMax
			}
			if len(c.Tasks) == 1 || end.Minutes[i] > 0 {
				out = append(out, r)
			}
		}
	}
	return out
}
