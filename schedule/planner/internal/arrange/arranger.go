package arrange

import (
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// Arranger states a day as a problem over integers, has it solved, and reads the
// answer back.
type Arranger struct {
	*day.Day
	Effort
	Watched bool // no fire burns while people sleep
	AsAsked bool // all is put on in time for the asked chance, whether a fast day keeps or not
	Loose   bool // less sure than asked will do, for each batch that has less time
	Unheard bool // layouts that are asked for do not count: the day cannot be had with them
}

// Effort is how hard a search tries. The zero value is that of a full plan.
type Effort struct {
	Nodes     int            // nodes; 0 stands for the solver's own
	Allowance *Allowance     // what all searches for one answer may spend; nil is without end
	Room      *sequence.Room // in which they search, one after another; nil for one of its own each
	NoClash   bool           // do not look for the reason of an infeasible day
	FirstPlan bool           // only whether the day can be had
	Lifted    []string       // rules that do not bind: nothing is planned so, only asked
}

// quiet are the quiet hours as the solver takes them.
func (d *Arranger) quiet() []sequence.Span {
	out := make([]sequence.Span, len(d.Quiet))
	for i, q := range d.Quiet {
		out[i] = sequence.Span{From: q.From, To: q.To}
	}
	return out
}

// Only is the same day with one of its dishes.
func (d *Arranger) Only(item int) *Arranger {
	one := *d.Day
	one.Items = d.Items[item : item+1]
	return &Arranger{Day: &one, Effort: d.Effort, Watched: d.Watched, AsAsked: d.AsAsked, Loose: d.Loose, Unheard: d.Unheard}
}
