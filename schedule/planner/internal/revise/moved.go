package revise

import (
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// followMoves moves what was planned along with serving: what had not begun when
// dinner was moved is taken to have followed it, for want of another word. A move
// to an earlier hour that leaves no time for that moves nothing.
func (v *Revision) followMoves() {
	serve := v.base.Clock(nil)
	for _, e := range v.log {
		if e.Kind != schedule.LogServingMoved || e.Dish != "" {
			continue
		}
		to, err := time.Parse(time.RFC3339, e.Value)
		if err != nil {
			continue // amend has refused it
		}
		if by := to.Sub(serve).Truncate(time.Minute); !v.wentOnBefore(e.At, by) && (by > 0 || !v.firstAfter(e.At).Add(by).Before(e.At)) {
			v.shiftPlanned(e.At, by)
			serve = to
		}
	}
}

// wentOnBefore says whether the log puts something on before the fire that it would
// wait for after a move: the cook kept to the plan as it was.
func (v *Revision) wentOnBefore(after time.Time, by time.Duration) bool {
	for _, e := range v.log {
		for _, p := range v.placed {
			k := p.Phases[0].First
			if e.Kind != schedule.LogOn || e.Dish != p.It.Dish.ID || !e.At.After(after) || k < 0 {
				continue
			}
			if from := v.first.Phases[k].SetupFrom; from.After(after) && e.At.Before(from.Add(by)) {
				return true
			}
		}
	}
	return false
}

// follows says whether a batch of the first plan moves with the main serving.
func follows(p *arrange.Placed) bool { return p.It.Dish.Serve == nil }

// firstAfter is the first instant after another at which the first plan begins
// something that moves with serving.
func (v *Revision) firstAfter(at time.Time) time.Time {
	first := v.base.End
	for _, ph := range v.first.Phases {
		if ph.SetupFrom.After(at) && ph.SetupFrom.Before(first) {
			first = ph.SetupFrom
		}
	}
	for _, p := range v.placed {
		if on := v.base.At(p.On); follows(p) && on.After(at) && on.Before(first) {
			first = on
		}
	}
	return first
}

// shiftPlanned moves what begins after an instant.
func (v *Revision) shiftPlanned(after time.Time, by time.Duration) {
	moved := map[string]bool{}
	for _, p := range v.placed {
		if follows(p) && v.base.At(p.On).After(after) {
			p.On, p.Off, p.Wrap = p.On-by.Minutes(), p.Off-by.Minutes(), p.Wrap-by.Minutes()
			moved[p.It.Dish.ID] = true
		}
	}
	waits := len(v.first.Phases) // the first phase that had not begun
	if !slices.ContainsFunc(v.placed, func(p *arrange.Placed) bool { return !follows(p) }) {
		waits = v.shiftPhases(after, by)
	}
	for i := range v.first.Steps {
		if s := &v.first.Steps[i]; s.At.After(after) && (moved[s.Dish] || s.Dish == "" && s.Phase > waits) || s.Dish == "" && s.Phase == waits+1 && v.unlit(waits, after) {
			s.At = s.At.Add(by)
			s.Window = schedule.Window{Early: s.Window.Early.Add(by), Expected: s.Window.Expected.Add(by), Late: s.Window.Late.Add(by)}
		}
	}
}

// unlit says whether the fire of a phase, lit anew, is not ready at an instant and was not
// lit by then as far as is told, in a log that tells when fires are lit.
func (v *Revision) unlit(k int, at time.Time) bool {
	if k == 0 || k >= len(v.first.Phases) || !v.first.Phases[k].Relit || !v.first.Phases[k].From.After(at) || v.first.Phases[k].SetupFrom.After(at) {
		return false
	}
	told := v.told(schedule.LogLit)
	return len(told) > 0 && !slices.ContainsFunc(told, func(lit time.Time) bool { return !lit.After(at) && v.lights(lit) == k })
}

// shiftPhases moves the phases that begin after an instant, and says which is the
// first of them. The fire before them burns on until then.
func (v *Revision) shiftPhases(after time.Time, by time.Duration) (first int) {
	solved := slices.Clone(v.firstA.Solution.Phases) // the solver's answer is kept for others
	v.firstA.Solution.Phases = solved
	minutes := int(math.Round(by.Minutes()))
	first = len(solved)
	for k := range v.first.Phases {
		ph := &v.first.Phases[k]
		if !ph.SetupFrom.After(after) && !v.unlit(k, after) {
			continue
		}
		first = min(first, k)
		ph.SetupFrom, ph.From, ph.To = ph.SetupFrom.Add(by), ph.From.Add(by), ph.To.Add(by)
		solved[k].Begin, solved[k].End = solved[k].Begin-minutes, solved[k].End-minutes
		if k == 0 {
			v.firstA.Solution.Light -= minutes
		}
	}
	if k := first - 1; k >= 0 && !v.unlit(first, after) {
		v.first.Phases[k].To = v.first.Phases[k].To.Add(by)
		solved[k].End -= minutes
	}
	return first
}
