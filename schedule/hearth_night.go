package schedule

import (
	"slices"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/sequence"
)

// lightClosed are the instants from which a light would bring the pouring of its
// coals into quiet hours.
func (d *day) lightClosed(f fire.Fire) []sequence.Span {
	return d.quietMoved(d.grill.PourMinutes(f))
}

// changeClosed are the instants at which the fire may not be changed to this one,
// because the chimney for it would have to be lit in quiet hours.
func (d *day) changeClosed(f fire.Fire) []sequence.Span {
	return d.quietMoved(-d.grill.PourMinutes(f))
}

// quietMoved are the quiet hours, earlier by so many minutes.
func (d *day) quietMoved(by int) []sequence.Span {
	if by == 0 {
		return nil
	}
	closed := make([]sequence.Span, len(d.quiet))
	for i, q := range d.quiet {
		closed[i] = sequence.Span{From: q.From + by, To: q.To + by}
	}
	return closed
}

// idleLights are the instants at which a fire that does not last the quiet hours may
// not be lit, because it would be for what goes on after them: those before quiet
// hours, but for as early as something can be cooked before them and wait for them
// to end.
func (d *day) idleLights(p *sequence.Problem, f int) []sequence.Span {
	var out []sequence.Span
	for _, q := range d.quiet {
		if q.To > p.Earliest {
			continue
		}
		s := sequence.Span{From: q.To, To: q.To + ever}
		for i := range p.Chains {
			if m := minutesBefore(&p.Chains[i], f, q.To); m > 0 {
				s.To = min(s.To, q.To+p.Fires[f].Setup+m)
			}
		}
		out = append(out, s)
	}
	return out
}

// ever is longer than any plan, in minutes.
const ever = 30 * 24 * 60

// minutesBefore is how long a batch takes that begins on a fire and is done by
// minute u, where it can wait for its serving from then on; 0 where it cannot.
func minutesBefore(c *sequence.Chain, f, u int) int {
	least := 0
	last := c.Tasks[len(c.Tasks)-1]
	for i, m := range c.Tasks[0].Modes {
		if !slices.ContainsFunc(m.Places, func(p sequence.Place) bool { return p.Fire == f }) {
			continue
		}
		for _, end := range last.Modes {
			minutes := m.Minutes[0]
			if len(c.Tasks) > 1 {
				minutes += end.Minutes[i]
			}
			if (len(c.Tasks) == 1 || end.Minutes[i] > 0) && c.Serve+end.Gap.Max >= u && (least == 0 || minutes < least) {
				least = minutes
			}
		}
	}
	return least
}
