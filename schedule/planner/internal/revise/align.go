package revise

import (
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
)

// align moves the first plan as a whole to where the log says that the day began: of a
// day that could not be had as asked, nothing but the log says when anything was done.
func (v *Revision) align() {
	by, ok := v.began()
	if !ok {
		return
	}
	minutes := math.Round(by.Minutes())
	for _, p := range v.placed {
		p.On, p.Off, p.Wrap = p.On-minutes, p.Off-minutes, p.Wrap-minutes
	}
	v.firstA.Solution.Phases = slices.Clone(v.firstA.Solution.Phases) // the solver's answer is kept for others
	v.firstA.Solution.Light -= int(minutes)
	by = time.Duration(minutes) * time.Minute
	for k := range v.first.Phases {
		ph, solved := &v.first.Phases[k], &v.firstA.Solution.Phases[k]
		ph.SetupFrom, ph.From, ph.To = ph.SetupFrom.Add(by), ph.From.Add(by), ph.To.Add(by)
		solved.Begin, solved.End = solved.Begin-int(minutes), solved.End-int(minutes)
	}
	for i := range v.first.Steps {
		s := &v.first.Steps[i]
		s.At = s.At.Add(by)
		s.Window = schedule.Window{Early: s.Window.Early.Add(by), Expected: s.Window.Expected.Add(by), Late: s.Window.Late.Add(by)}
	}
}

// began is by how much later than planned the day began, by the first word of the log of
// a put-on, or else of a light; false for none.
func (v *Revision) began() (time.Duration, bool) {
	for _, e := range v.log {
		for _, p := range v.placed {
			if e.Kind == schedule.LogOn && e.Dish == p.It.Dish.ID {
				return e.At.Sub(v.base.At(p.On)), true
			}
		}
	}
	if lit := v.told(schedule.LogLit); len(lit) > 0 && len(v.first.Phases) > 0 {
		return lit[0].Sub(v.first.Phases[0].SetupFrom), true
	}
	return 0, false
}
