package plans

import (
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
)

// TableAt is when everything is on the table: the last serving, also of what was
// only warmed in the oven.
func TableAt(p schedule.Plan) time.Time {
	last := p.ServeAt
	for _, s := range p.Steps {
		if s.Kind == schedule.StepServe && s.At.After(last) {
			last = s.At
		}
	}
	return last
}

func FixedWindow(t time.Time) schedule.Window { return schedule.Window{Early: t, Expected: t, Late: t} }

func WindowNotBefore(w schedule.Window, t time.Time) schedule.Window {
	return schedule.Window{Early: instant.Later(w.Early, t), Expected: instant.Later(w.Expected, t), Late: instant.Later(w.Late, t)}
}

func Shift(w schedule.Window, byMinutes float64) schedule.Window {
	by := instant.Minutes(byMinutes)
	add := func(t time.Time) time.Time { return t.Add(by).Round(time.Minute) }
	return schedule.Window{Early: add(w.Early), Expected: add(w.Expected), Late: add(w.Late)}
}
