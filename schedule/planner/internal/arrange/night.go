package arrange

import (
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
// may burn through it: ready so many minutes later, it would not have settled at its level
// when people go to sleep.
func (d *Arranger) settled(lasts bool, levelC float64, ready int) []sequence.Span {
	var out []sequence.Span
	for _, q := range d.Quiet {
		if q.Night && d.burnsThrough(q, lasts, levelC) {
			out = append(out, sequence.Span{From: q.To, To: q.To + ready + d.settleMinutes()})
		}
	}
	return out
}

// settleMinutes is how long a fire has been ready when people sleep beside it. A deep cooker full of coals that catch one from
// another shows late whether it holds its level (judgment; of reports several ran away hours after they stood at it).
func (d *Arranger) settleMinutes() int {
	if d.Grill.SteersBottom() {
		return deepSettles
	}
	return safety.SettleMinutes
}

const deepSettles = 120

// settledBy says whether what goes on at a minute, to cook through quiet hours, does so
// before the vents are left alone for a night.
func settledBy(q day.Span, on float64) bool {
	return !q.Night || on >= float64(q.To+safety.VentsStillMinutes) || on < float64(q.To)
}

// idleMost is how long a fire may burn at the most with nothing on it, minutes
// (assumption): an afternoon nap, and no night.
const idleMost = 120

// Ever is longer than any plan, in minutes.
const Ever = 30 * 24 * 60
