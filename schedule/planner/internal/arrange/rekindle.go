package arrange

import (
	"cmp"
	"math"
	"slices"

	"example.com/cookday/schedule/planner/internal/sequence"
)

// outLeast is how long nothing may need the fire before it is let go out and lit anew,
// minutes (assumption): to keep it takes more coals than to build it again. outWhile is
// the least that it is then out.
const (
	outLeast = 240
	outWhile = 60
)

// spell is the time from one instant to a later one, in minutes before the last
// serving instant.
type spell struct{ from, to float64 }

// Rekindle lets the fire go out where nothing is on it for long, as between the supper
// of one day and the lunch of the next. The solver keeps one fire burning from the
// first light on; its plan holds as well without what burns for nothing. What has begun,
// so many phases, stays as it is, and nothing is lit before the minute now.
func (d *Arranger) Rekindle(a *Arrangement, all []*Placed, begun, now int) {
	d.straighten(a, all, begun)
	for _, gap := range idleStretches(a.used(all, begun, now)) {
		from, to := a.burningAt(gap.from), beginsIn(all, gap.to)
		if from < 0 || to < from || to > from && to < begun {
			continue
		}
		next := a.Solution.Phases[to]
		light, ok := d.relight(a, next.Fire, gap)
		if !ok || light > now {
			continue
		}
		next.Begin = light - a.Problem.Fires[next.Fire].Setup
		phases := slices.Clone(a.Solution.Phases[:from+1])
		phases[from].End = int(gap.from)
		a.Solution.Phases = append(append(phases, next), a.Solution.Phases[to+1:]...)
		for _, p := range all {
			if s, ok := p.overFire(); ok && s.from <= gap.to {
				ShiftPhases(p, from+1-to)
			} else if ok {
				p.Phases[0], p.Phases[1] = p.Phases[0].UpTo(from), p.Phases[1].UpTo(from)
			}
		}
	}
}

// straighten leaves out each fire that only stands between two others: what lies on it came
// from the one before and stays for the one after. The solver takes it where those two are
// too alike to be worth a change; the cook goes from one to the other at once, in the time
// that there is for both changes.
func (d *Arranger) straighten(a *Arrangement, all []*Placed, begun int) {
	for k := len(a.Solution.Phases) - 2; k > 0 && k >= begun; k-- {
		before, after := a.Solution.Phases[k-1].Fire, a.Solution.Phases[k+1].Fire
		minutes, ok := d.Grill.ChangeMinutes(a.Hearth.Fires[before], a.Hearth.Fires[after])
		if !ok || before == after || usesPhase(all, k) || a.Solution.Phases[k-1].End-a.Solution.Phases[k+1].Begin < minutes {
			continue
		}
		a.Solution.Phases = slices.Delete(slices.Clone(a.Solution.Phases), k, k+1)
		for _, p := range all {
			for s := range p.Phases {
				if p.Phases[s].First > k {
					p.Phases[s].First--
				}
				if p.Phases[s].Last > k {
					p.Phases[s].Last--
				}
			}
		}
	}
}

// usesPhase says whether anything goes onto a fire or leaves it.
func usesPhase(all []*Placed, k int) bool {
	return slices.ContainsFunc(all, func(p *Placed) bool {
		return slices.ContainsFunc(p.Phases[:], func(s PhaseSpan) bool { return s.First == k || s.Last == k })
	})
}

// Relit says whether phase k is lit anew: the fire before it ends long before a change
// to it would begin, or is the same.
func (a *Arrangement) Relit(k int) bool {
	if k == 0 {
		return false
	}
	before, ph := a.Solution.Phases[k-1], a.Solution.Phases[k]
	return before.Fire == ph.Fire || before.End-ph.Begin > a.Problem.Change[before.Fire][ph.Fire]+outWhile
}

// relight is the minute at which a fire is lit for what goes on at the end of a stretch:
// as late as can be. False where it must be lit so early that the one before might as
// well be kept.
func (d *Arranger) relight(a *Arrangement, f int, gap spell) (light int, ok bool) {
	fire := &a.Problem.Fires[f]
	light = int(gap.to) + fire.Setup
	closed := slices.Concat(d.quiet(), fire.LightClosed, d.lightClosed(a.Hearth.Fires[f])) // a revision's problem has no lights closed
	for {
		i := slices.IndexFunc(closed, func(s sequence.Span) bool { return s.From <= light && light < s.To })
		if i < 0 {
			return light, float64(light) <= gap.from-outWhile
		}
		light = closed[i].To
	}
}

// used is when something is on the fire, the first first. A fire that was lit for what
// is no longer wanted has been of use until now.
func (a *Arrangement) used(all []*Placed, begun, now int) []spell {
	var used []spell
	for _, p := range all {
		if s, ok := p.overFire(); ok {
			used = append(used, s)
		}
	}
	slices.SortFunc(used, func(a, b spell) int { return cmp.Compare(b.from, a.from) })
	if begun > 0 && len(used) > 0 && used[0].from < float64(now) {
		used = slices.Insert(used, 0, spell{float64(a.Solution.Phases[0].Begin), float64(now)})
	}
	return used
}

// idleStretches are the long ones in which nothing is on the fire.
func idleStretches(used []spell) (out []spell) {
	for i := 1; i < len(used); i++ {
		used[i].to = min(used[i].to, used[i-1].to) // what is on longest counts
		if gap := (spell{used[i-1].to, used[i].from}); gap.from-gap.to > outLeast {
			out = append(out, gap)
		}
	}
	return out
}

// overFire is when a batch is on the grate; false where it never is.
func (p *Placed) overFire() (spell, bool) {
	s := spell{p.On, p.Off}
	switch {
	case p.Carried:
		s.to = p.Left
	case p.Oven && !math.IsNaN(p.Wrap):
		s.to = p.Wrap
	}
	return s, p.Phases[0].First >= 0
}

// burningAt is the last phase that has begun by a minute; -1 for none.
func (a *Arrangement) burningAt(at float64) int {
	k := len(a.Solution.Phases) - 1
	for k >= 0 && float64(a.Solution.Phases[k].Begin) < at {
		k--
	}
	return k
}

// beginsIn is the phase in which the fire is used from a minute on; -1 for none.
func beginsIn(all []*Placed, at float64) int {
	first := -1
	for _, p := range all {
		if s, ok := p.overFire(); ok && s.from == at && (first < 0 || p.Phases[0].First < first) {
			first = p.Phases[0].First
		}
	}
	return first
}

// LastUse is when the last batch leaves phase i.
func LastUse(all []*Placed, i int, begin float64) float64 {
	end := begin
	for _, p := range all {
		for s := range p.Stages() {
			if p.Phases[s].Last != i {
				continue
			}
			at := p.Off
			switch {
			case p.Carried:
				at = p.Left
			case s == 0 && p.Stages() == 2:
				at = p.Wrap
			}
			end = math.Min(end, at)
		}
	}
	return end
}
