package sequence

import (
	"slices"
)

// day is a Problem made ready for searching: defaults filled in, holes merged,
// identical chains found.
type day struct {
	*Problem
	phases  int   // most phases in a day
	class   []int // class of each chain; chains of a class are alike
	sample  []int // one chain of each class
	size    []int // chains of each class
	quiet   []Span
	partial bool          // chains may be left out at a price
	longest []int         // chains, the longest first
	dearest []int         // chains whose holds cost, the dearest first
	stages  [][][][]stage // by class, task, mode of the task before
	places  [][][]bool    // by class, task: fires with a place, the oven last
	used    []bool        // by fire: some task has a place
	windows [][][]window  // by class, task, fire: what is known of it whatever the sequence
	bars    [][][]Span    // when each fire may not begin: after each other one, and as the first
	store   *store
}

func prepare(p *Problem, in *store) *day {
	d := &day{Problem: p, phases: p.MaxPhases, quiet: merge(slices.Clone(p.Quiet)), store: in}
	if d.phases == 0 {
		d.phases = DefaultPhases
	}
	for c := range p.Chains {
		k := slices.IndexFunc(d.sample, func(s int) bool { return alike(&p.Chains[s], &p.Chains[c]) })
		if k < 0 {
			k = len(d.sample)
			d.sample, d.size = append(d.sample, c), append(d.size, 0)
		}
		d.size[k]++
		d.class = append(d.class, k)
		d.longest = append(d.longest, c)
	}
	minutes := make([]int, len(p.Chains))
	for c := range p.Chains {
		minutes[c] = leastMinutes(&p.Chains[c])
	}
	slices.SortStableFunc(d.longest, func(a, b int) int { return minutes[b] - minutes[a] })
	for c := range p.Chains {
		if p.Chains[c].HoldCost > 0 {
			d.dearest = append(d.dearest, c)
		}
	}
	slices.SortStableFunc(d.dearest, func(a, b int) int { return p.Chains[b].HoldCost - p.Chains[a].HoldCost })
	d.newStages()
	d.newWindows()
	d.newBarred()
	return d
}

// changes is the cost of the changes between fires that follow each other.
func (p *Problem) changes(fires []int) int {
	cost := p.FurtherCost * max(0, len(fires)-1-p.FewChanges)
	for k := 1; k < len(fires); k++ {
		if p.ChangeCosts != nil {
			cost += p.ChangeCosts[fires[k-1]][fires[k]]
		} else {
			cost += p.ChangeCost
		}
	}
	return cost
}

// leastMinutes sums the shortest length of each task.
func leastMinutes(c *Chain) int {
	sum := 0
	for j := range c.Tasks {
		least := limit
		for m := range c.Tasks[j].Modes {
			for _, v := range c.Tasks[j].Modes[m].Minutes {
				if v > 0 {
					least = min(least, v)
				}
			}
		}
		sum += least
	}
	return sum
}

// merge sorts intervals and joins those that touch, so that a value lifted over
// one of them is in none. It works in place.
func merge(spans []Span) []Span {
	slices.SortStableFunc(spans, func(a, b Span) int { return a.From - b.From })
	out := spans[:0]
	for _, s := range spans {
		switch n := len(out); {
		case s.From >= s.To:
		case n > 0 && s.From <= out[n-1].To:
			out[n-1].To = max(out[n-1].To, s.To)
		default:
			out = append(out, s)
		}
	}
	return out
}

// appendShifted appends the spans moved toward later by d minutes.
func appendShifted(out, spans []Span, d int) []Span {
	for _, s := range spans {
		out = append(out, Span{s.From - d, s.To - d})
	}
	return out
}

// alike says that two chains ask for the same, whatever their groups.
func alike(a, b *Chain) bool {
	return a.Serve == b.Serve && a.HoldCost == b.HoldCost && slices.EqualFunc(a.Tasks, b.Tasks, alikeTasks)
}

func alikeTasks(a, b Task) bool {
	return a.LagMin == b.LagMin && a.LagMax == b.LagMax && a.StartHands == b.StartHands && a.EndHands == b.EndHands &&
		slices.EqualFunc(a.Modes, b.Modes, alikeModes)
}

func alikeModes(a, b Mode) bool {
	return a.Area == b.Area && a.Cost == b.Cost && a.Gap == b.Gap && slices.Equal(a.Minutes, b.Minutes) &&
		slices.Equal(a.Places, b.Places) && slices.Equal(a.Closed, b.Closed)
}
