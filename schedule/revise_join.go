package schedule

import (
	"cmp"
	"context"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/sequence"
)

// join puts what is past, what cooks and what waits into one arrangement, in
// minutes before the last serving of the revised day.
func (v *revision) join(ctx context.Context, s sequence.Solution, p sequence.Problem, order []*afoot) (left, error) {
	l := left{a: arrangement{hearth: v.hearth, problem: p, solution: s}}
	past := max(v.phases-1, 0)
	l.a.solution.Phases = v.pastPhases(s, past)
	if v.phases > 0 {
		l.a.solution.Light = v.shifted(v.firstA.solution.Light) - int(v.litLate().Minutes())
		l.a.solution.Light = max(l.a.solution.Light, l.a.solution.Phases[0].Begin)
		l.a.solution.WhyLight = v.firstA.solution.WhyLight
	}
	place := func(a *afoot, p *placed) {
		v.day.setHold(p, p.earlyGap())
		l.all, l.bound = append(l.all, p), append(l.bound, a)
	}
	var open []*batch
	for _, a := range order {
		if a.where == waiting {
			open = append(open, a.open)
			l.a.batches = append(l.a.batches, a.open)
			continue
		}
		l.a.batches = append(l.a.batches, a.batch)
	}
	sub := arrangement{hearth: v.hearth, batches: open, solution: s}
	ahead, err := v.day.place(ctx, sub)
	if err != nil {
		return left{}, err
	}
	for i, p := range ahead {
		shiftPhases(p, past)
		place(order[i], p)
	}
	for i := len(open); i < len(order); i++ {
		place(order[i], v.placedNow(order[i], s.Chains[i], past))
	}
	for _, a := range v.afoot {
		if a.where == off {
			l.a.batches = append(l.a.batches, a.batch)
			place(a, v.placedBefore(a, len(l.a.solution.Phases)))
		}
	}
	for i, p := range l.all {
		if l.bound[i].where != waiting {
			p.byInstants(l.a.solution.Phases)
		}
		for i := range p.reasons {
			if p.reasons[i].Chain >= len(order) {
				p.reasons[i].Chain = -1
			}
		}
	}
	v.day.rekindle(&l.a, l.all, v.phases, v.day.minute(v.now))
	l.sort()
	return l, nil
}

// byInstants gives the stages of a batch the phases that burn while they last. A
// stage that ends while the fire is being changed belongs to the next one too.
func (p *placed) byInstants(phases []sequence.Phase) {
	in := func(u float64, ends bool) int {
		for k, ph := range phases {
			if u > float64(ph.End) || ends && u == float64(ph.End) {
				return k
			}
		}
		return len(phases) - 1
	}
	if len(phases) == 0 || p.phases[0][0] < 0 {
		return
	}
	to := p.off
	if p.stages() == 2 {
		to = p.wrap
		if p.phases[1][0] >= 0 {
			p.phases[1] = [2]int{in(p.wrap, false), in(p.off, true)}
		}
	}
	p.phases[0] = [2]int{in(p.on, false), in(to, true)}
}

// sort orders the batches as the menu does.
func (l *left) sort() {
	index := make([]int, len(l.all))
	for i := range index {
		index[i] = i
	}
	slices.SortStableFunc(index, func(i, j int) int {
		a, b := l.all[i], l.all[j]
		return cmp.Or(cmp.Compare(a.it.index, b.it.index), cmp.Compare(a.number, b.number))
	})
	all, bound := make([]*placed, len(index)), make([]*afoot, len(index))
	for k, i := range index {
		all[k], bound[k] = l.all[i], l.bound[i]
	}
	l.all, l.bound = all, bound
}

// shifted is a minute of the first plan's day in the revised one.
func (v *revision) shifted(u int) int {
	return u + int(v.day.end.Sub(v.base.end).Minutes())
}

// pastPhases are the phases that are over, and those of the solution; the fire
// that burns keeps the instant at which it was ready.
func (v *revision) pastPhases(s sequence.Solution, past int) []sequence.Phase {
	var out []sequence.Phase
	for k := range past {
		ph := v.firstA.solution.Phases[k]
		ph.Begin, ph.End = v.shifted(ph.Begin), v.shifted(ph.End)
		ph.Begin -= int(v.lateOf(k).Minutes())
		out = append(out, ph)
	}
	out = append(out, s.Phases...)
	if v.phases > 0 && len(out) > past {
		out[past].Begin = v.shifted(v.firstA.solution.Phases[past].Begin) - int(v.lateOf(past).Minutes())
	}
	for _, a := range v.afoot {
		if k := v.phaseOn(a); a.where != waiting && k >= 0 && k < len(out) && k < v.phases {
			out[k].Begin = max(out[k].Begin, v.day.minute(a.on.at)) // it went on: the fire was there
		}
	}
	return out
}

// phaseOn is the phase that a batch was put on in; -1 if it was none.
func (v *revision) phaseOn(a *afoot) int {
	if a.first == nil {
		return -1
	}
	return a.first.phases[0][0]
}

func shiftPhases(p *placed, by int) {
	for i := range p.phases {
		for j := range p.phases[i] {
			if p.phases[i][j] >= 0 {
				p.phases[i][j] += by
			}
		}
	}
}

// u is an instant in minutes before the last serving, with its fraction.
func (v *revision) u(t time.Time) float64 { return v.day.end.Sub(t).Minutes() }

// placedNow is a batch on the grate.
func (v *revision) placedNow(a *afoot, chain []sequence.Placed, past int) *placed {
	p := &placed{batch: a.batch, way: v.counted(a, a.live), on: v.u(a.on.at), wrap: math.NaN(), reasons: []sequence.Reason{{Kind: sequence.LastServing, Chain: -1}, {Kind: sequence.TaskBefore, Chain: -1}}}
	last := chain[len(chain)-1]
	p.way.cutTo(p.on - float64(last.End))
	p.off = p.on - p.way.total().planned
	if p.way.stages() > 1 {
		p.wrap = p.on - p.way.first.planned
	}
	p.phases[0] = [2]int{chain[0].FirstPhase, chain[0].LastPhase}
	p.phases[1] = [2]int{last.FirstPhase, last.LastPhase}
	shiftPhases(p, past)
	if v.inOven(a) {
		p.oven, p.phases[1] = true, [2]int{-1, -1}
		p.phases[0] = [2]int{past, past}
	}
	if p.way.sear && len(chain) > 1 {
		p.wrap, p.off = float64(chain[1].Start), float64(chain[1].End)
	}
	if a.first != nil {
		p.zones, p.oven = a.first.zones, p.oven || a.first.oven && p.way.stages() > 1
		if p.phases[0][0] < 0 { // the solver was asked for the oven alone
			p.phases[0] = [2]int{past, past}
		}
		if a.first.phases[0][0] >= 0 {
			p.phases[0][0] = min(a.first.phases[0][0], p.phases[0][0])
		}
		if p.way.stages() > 1 && len(chain) == 1 && !v.inOven(a) {
			p.phases[0][1] = max(min(p.phases[0][1], past), p.phases[0][0])
		}
	} else {
		for _, z := range v.hearth.zones[v.fireNow()] {
			if z.Direct == p.way.direct {
				p.zones = [2]string{z.Name, z.Name}
			}
		}
	}
	return p
}

// cutTo cuts what the plan counts with to what serving leaves; the window and the
// chance say how likely that is enough.
func (w *way) cutTo(minutes float64) {
	over := w.total().planned - minutes
	switch {
	case over <= 0:
	case w.stages() == 1:
		w.first.planned -= over
	case over < w.second.planned-leastLeft:
		w.second.planned -= over
	default:
		w.second.planned = leastLeft
		w.first.planned = minutes - leastLeft
	}
}

// placedBefore is a batch that is off.
func (v *revision) placedBefore(a *afoot, phases int) *placed {
	var p placed
	if a.first != nil {
		p = *a.first
		on := v.u(a.on.at) // a fire that was lit late has moved it
		p.wrap += on - p.on
		p.on, p.off = on, v.u(a.off.at)
	}
	p.batch, p.way = a.batch, a.pastWay()
	if a.on.logged || a.off.logged || a.wrap.logged || a.gone || a.first == nil {
		p.on, p.off, p.wrap = v.u(a.on.at), v.u(a.off.at), math.NaN()
		if p.way.stages() > 1 {
			p.wrap = p.on - p.way.first.planned
		}
	}
	if a.first == nil {
		p.reasons = []sequence.Reason{{Chain: -1}, {Chain: -1}}
		p.phases = [2][2]int{{max(v.phases-1, 0), max(v.phases-1, 0)}}
	}
	for i := range p.phases {
		for j := range p.phases[i] {
			p.phases[i][j] = min(p.phases[i][j], phases-1)
		}
	}
	return &p
}
