package revise

import (
	"cmp"
	"context"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/sequence"
)

// join puts what is past, what cooks and what waits into one arrangement, in
// minutes before the last serving of the revised day.
func (v *Revision) join(ctx context.Context, s sequence.Solution, p sequence.Problem, order []*liveBatch) (remainder, error) {
	l := remainder{a: arrange.Arrangement{Hearth: v.hearth, Problem: p, Solution: s}}
	past := max(v.phases-1, 0)
	l.a.Solution.Phases = v.pastPhases(s, past)
	if v.phases > 0 {
		l.a.Solution.Light = v.shifted(v.firstA.Solution.Light) - int(v.lateOf(0).Minutes())
		l.a.Solution.Light = max(l.a.Solution.Light, l.a.Solution.Phases[0].Begin)
		l.a.Solution.WhyLight = v.firstA.Solution.WhyLight
	}
	place := func(a *liveBatch, p *arrange.Placed) {
		if a.where != waiting { // when it goes on is no choice any more
			p.Way.Z = v.day.Z
		}
		v.setHold(a, p)
		v.holdAsRead(a, p)
		l.all, l.bound = append(l.all, p), append(l.bound, a)
	}
	var open []*arrange.Batch
	for _, a := range order {
		if a.where == waiting {
			open = append(open, a.open)
			l.a.Batches = append(l.a.Batches, a.open)
			continue
		}
		l.a.Batches = append(l.a.Batches, a.batch)
	}
	sub := arrange.Arrangement{Hearth: v.hearth, Batches: open, Solution: s}
	ahead, err := v.day.Place(ctx, sub)
	if err != nil {
		return remainder{}, err
	}
	for i, p := range ahead {
		arrange.ShiftPhases(p, past)
		place(order[i], p)
	}
	for i := len(open); i < len(order); i++ {
		place(order[i], v.placedNow(order[i], s.Chains[i], past))
	}
	for _, a := range v.batches {
		if a.where == off {
			l.a.Batches = append(l.a.Batches, a.batch)
			place(a, v.placedBefore(a, len(l.a.Solution.Phases)))
		}
	}
	v.day.OneOven(l.all)
	for i, p := range l.all {
		if l.bound[i].where != waiting {
			byInstants(p, l.a.Solution.Phases)
		}
		for i := range p.Reasons {
			if p.Reasons[i].Chain >= len(order) {
				p.Reasons[i].Chain = -1
			}
		}
	}
	for i, p := range l.all {
		if l.bound[i].where == waiting {
			p.Grate = nil // chosen beside what is on
		}
	}
	l.stacked = v.day.Stack(v.hearth, l.a.Solution.Phases, l.all)
	v.day.Rekindle(&l.a, l.all, v.phases, v.day.Minute(v.now))
	l.sort()
	return l, nil
}

// byInstants gives the stages of a batch the phases that burn while they last. A
// stage that ends while the fire is being changed belongs to the next one too.
func byInstants(p *arrange.Placed, phases []sequence.Phase) {
	in := func(u float64, ends bool) int {
		for k, ph := range phases {
			if u > float64(ph.End) || ends && u == float64(ph.End) {
				return k
			}
		}
		return len(phases) - 1
	}
	if len(phases) == 0 || p.Phases[0].First < 0 {
		return
	}
	to := p.Off
	if p.Stages() == 2 {
		to = p.Wrap
		if p.Way.Sear { // it comes off for it before that
			to = math.Max(to, p.On-p.Way.First.Planned)
		}
		if p.Phases[1].First >= 0 {
			p.Phases[1] = arrange.PhaseSpan{First: in(p.Wrap, false), Last: in(p.Off, true)}
		}
	}
	p.Phases[0] = arrange.PhaseSpan{First: in(p.On, false), Last: in(to, true)}
	if n := p.Phases[0].Last; p.Way.Sear && n > p.Phases[0].First && to > float64(phases[n].Begin) {
		p.Phases[0].Last = n - 1 // and stands while the fire for it is made
	}
}

// sort orders the batches as the menu does.
func (l *remainder) sort() {
	index := make([]int, len(l.all))
	for i := range index {
		index[i] = i
	}
	slices.SortStableFunc(index, func(i, j int) int {
		a, b := l.all[i], l.all[j]
		return cmp.Or(cmp.Compare(a.It.Index, b.It.Index), cmp.Compare(a.Number, b.Number))
	})
	all, bound := make([]*arrange.Placed, len(index)), make([]*liveBatch, len(index))
	for k, i := range index {
		all[k], bound[k] = l.all[i], l.bound[i]
	}
	l.all, l.bound = all, bound
}

// shifted is a minute of the first plan's day in the revised one.
func (v *Revision) shifted(u int) int {
	return u + int(v.day.End.Sub(v.base.End).Minutes())
}

// pastPhases are the phases that are over, and those of the solution; the fire
// that burns keeps the instant at which it was ready.
func (v *Revision) pastPhases(s sequence.Solution, past int) []sequence.Phase {
	var out []sequence.Phase
	for k := range past {
		ph := v.firstA.Solution.Phases[k]
		ph.Begin, ph.End = v.shifted(ph.Begin), v.shifted(ph.End)
		ph.Begin -= int(v.lateOf(k).Minutes())
		out = append(out, ph)
	}
	out = append(out, s.Phases...)
	if v.phases > 0 && len(out) > past {
		out[past].Begin = v.shifted(v.firstA.Solution.Phases[past].Begin) - int(v.lateOf(past).Minutes())
	}
	for _, a := range v.batches {
		if k := v.phaseOn(a); a.where != waiting && k >= 0 && k < len(out) && k < v.phases {
			out[k].Begin = max(out[k].Begin, v.day.Minute(a.on.at)) // it went on: the fire was there
			if k > 0 {
				out[k-1].End = max(out[k-1].End, out[k].Begin) // and the one before was over
			}
		}
	}
	return out
}

// phaseOn is the phase that a batch was put on in; -1 if it was none.
func (v *Revision) phaseOn(a *liveBatch) int {
	if a.first == nil {
		return -1
	}
	return a.first.Phases[0].First
}

// u is an instant in minutes before the last serving, with its fraction.
func (v *Revision) u(t time.Time) float64 { return v.day.End.Sub(t).Minutes() }

// placedNow is a batch on the grate.
func (v *Revision) placedNow(a *liveBatch, chain []sequence.Placed, past int) *arrange.Placed {
	p := &arrange.Placed{Batch: a.batch, Way: v.counted(a, a.live), On: v.u(a.on.at), Wrap: math.NaN(), Reasons: []sequence.Reason{{Kind: sequence.LastServing, Chain: -1}, {Kind: sequence.TaskBefore, Chain: -1}}}
	last := chain[len(chain)-1]
	wayCutTo(&p.Way, p.On-float64(last.End))
	p.Off = p.On - p.Way.Total().Planned
	if p.Way.Stages() > 1 {
		p.Wrap = p.On - p.Way.First.Planned
	}
	p.Phases[0] = arrange.PhaseSpan{First: chain[0].FirstPhase, Last: chain[0].LastPhase}
	p.Phases[1] = arrange.PhaseSpan{First: last.FirstPhase, Last: last.LastPhase}
	arrange.ShiftPhases(p, past)
	if v.inOven(a) {
		p.Carried, p.Left, p.CarriedC = a.oven.set, v.u(a.oven.at), a.carriedC()
		p.Oven, p.Phases[1] = true, arrange.PhaseSpan{First: -1, Last: -1}
		p.Phases[0] = arrange.PhaseSpan{First: past, Last: past}
	}
	if p.Way.Sear && len(chain) > 1 {
		p.Wrap, p.Off = float64(chain[1].Start), float64(chain[1].End)
		p.Way.First.Planned = math.Min(p.Way.First.Planned, p.On-p.Wrap)
	}
	if a.first != nil {
		p.Grate = a.first.Grate
		p.Zones, p.Oven = a.first.Zones, p.Oven || a.first.Oven && p.Way.Stages() > 1
		if p.Zones[1] == "" && p.Way.Stages() > 1 && !p.Oven { // it was to stay bare, or to go indoors
			p.Zones[1] = p.Zones[0]
		}
		if p.Phases[0].First < 0 { // the solver was asked for the oven alone
			p.Phases[0] = arrange.PhaseSpan{First: past, Last: past}
		}
		if a.first.Phases[0].First >= 0 {
			p.Phases[0].First = min(a.first.Phases[0].First, p.Phases[0].First)
		}
		if p.Way.Stages() > 1 && len(chain) == 1 && !v.inOven(a) {
			p.Phases[0].Last = max(min(p.Phases[0].Last, past), p.Phases[0].First)
		}
	} else {
		for _, z := range v.hearth.Zones[v.fireNow()] {
			if z.Direct == p.Way.Direct {
				p.Zones = [2]string{z.Name, z.Name}
			}
		}
	}
	return p
}

// cutTo cuts what the plan counts with to what serving leaves; the window and the
// chance say how likely that is enough.
func wayCutTo(w *day.Way, minutes float64) {
	over := w.Total().Planned - minutes
	switch {
	case over <= 0:
	case w.Stages() == 1:
		w.First.Planned -= over
	case w.Sear && w.First.Planned-over > assemble.LeastLeft: // its minutes are by the clock
		w.First.Planned -= over
	case over < w.Second.Planned-assemble.LeastLeft:
		w.Second.Planned -= over
	default:
		w.Second.Planned = assemble.LeastLeft
		w.First.Planned = minutes - assemble.LeastLeft
	}
}

// placedBefore is a batch that is off.
func (v *Revision) placedBefore(a *liveBatch, phases int) *arrange.Placed {
	var p arrange.Placed
	if a.first != nil {
		p = *a.first
		on := v.u(a.on.at) // a fire that was lit late has moved it
		p.Wrap += on - p.On
		p.On, p.Off = on, v.u(a.off.at)
	}
	p.Batch, p.Way = a.batch, a.pastWay()
	if a.on.logged || a.off.logged || a.wrap.logged || a.gone || a.leftBare() || a.first == nil {
		p.On, p.Off, p.Wrap = v.u(a.on.at), v.u(a.off.at), math.NaN()
		if p.Way.Stages() > 1 {
			p.Wrap = p.On - p.Way.First.Planned
		}
	}
	if p.Oven && p.Way.Stages() == 1 { // it was to end in the oven, wrapped, and never went there
		p.Oven = false
	}
	if a.oven.set && a.oven.at.Before(a.off.at) && a.first != nil { // it was carried indoors
		p.Carried, p.Left, p.CarriedC, p.Oven = true, v.u(a.oven.at), a.carriedC(), true
		p.Phases[0].Last, p.Phases[1] = p.Phases[0].First, arrange.PhaseSpan{First: -1, Last: -1}
	}
	if a.first == nil {
		p.Reasons = []sequence.Reason{{Chain: -1}, {Chain: -1}}
		p.Phases = [2]arrange.PhaseSpan{{First: max(v.phases-1, 0), Last: max(v.phases-1, 0)}}
	}
	for i := range p.Phases {
		p.Phases[i] = p.Phases[i].UpTo(phases - 1)
	}
	return &p
}
