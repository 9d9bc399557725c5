package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/unit"
)

// offReading is how long before it came off a reading still tells how a piece came off
// (assumption).
const offReading = 10 * time.Minute

// undoneFor is how long a piece that is not done may lie off the heat before it is past
// saving (usda_danger_zone: 2 hours).
const undoneFor = 2 * time.Hour

// undoneOvenC is the oven that takes what is below its minimum: 325 F, which poultry, ground
// and stuffed meat need and others may have (common practice, no source).
var undoneOvenC = unit.FToC(325)

// leastC is the core that a piece must have shown before it is eaten, degC: its published
// minimum, or what was asked of it where that is lower; 0 for none.
func (a *liveBatch) leastC() float64 {
	it := a.batch.It
	if it.TargetC == 0 || it.Verdict.Minimum.CoreC == 0 {
		return 0
	}
	return math.Min(a.way().PullC, it.Verdict.Minimum.CoreC)
}

// noteUndone says of a piece that came off and was never read at what it must have shown
// that it is not done, or not known to be; true where nothing else is to be said of it. What
// was never read at all is the cook's to know.
func (v *Revision) noteUndone(a *liveBatch, add func(schedule.Finding)) bool {
	least, n := a.leastC(), len(a.cores)
	if !a.off.logged || least == 0 || n == 0 {
		return false
	}
	const sameC = 0.3 // half a degree Fahrenheit: as it is printed
	for _, e := range a.cores {
		if e.C >= least-sameC {
			return false
		}
	}
	last, name, min := a.cores[n-1], a.batch.It.Dish.Name, v.day.Core(least)
	switch {
	case last.At.Before(a.off.at.Add(-offReading)) || a.way().Sear && last.At.Before(a.off.at):
		switch {
		case a.served.set && v.now.Sub(a.served.at) <= undoneFor:
			add(about(a, schedule.OffUnread, fmt.Sprintf("%s: stop eating, and measure what is left. It was last read at %s at %s and then served, and it needs %s everywhere. Under that nobody eats more of it.", name, v.day.Core(last.C), v.clock(last.At), min)))
		case !a.served.set && !v.mealPast(a):
			add(about(a, schedule.OffUnread, fmt.Sprintf("%s: last read at %s at %s, before it came off. Measure it before you cut it: not under %s anywhere. Under that, back on the heat.",
				name, v.day.Core(last.C), v.clock(last.At), min)))
		}
		return false
	case a.served.set:
		add(about(a, schedule.OffUndone, fmt.Sprintf("Stop eating %s. It came off at %s inside and was served at %s, and was never read at the %s that it needs. Your local food authority can say more.",
			name, v.day.Core(last.C), v.clock(a.served.at), min)))
	case v.now.Sub(instant.Later(a.off.at, a.on.at)) > undoneFor:
		add(about(a, schedule.OffUndone, fmt.Sprintf("Do not serve %s, and throw it away. It came off at %s, %s inside, and was never read at the %s that it needs.",
			name, v.clock(a.off.at), v.day.Core(last.C), min)))
	default:
		add(about(a, schedule.OffUndone, fmt.Sprintf("%s: not done. It came off at %s inside, and it needs %s. Do not cut or serve it. Put it back on the hot grate now, or into an oven at %s, and log each reading; once it reads %s everywhere it may be served.",
			name, v.day.Core(last.C), min, v.day.Grate(undoneOvenC), min)))
	}
	return true
}

// mealPast says whether the meal of a piece is past.
func (v *Revision) mealPast(a *liveBatch) bool { return v.now.After(v.serve(a).Add(undoneFor)) }

// keepForUndone leaves the fire to what has to go back on it.
func (v *Revision) keepForUndone(p *schedule.Plan, found []schedule.Finding) {
	if !slices.ContainsFunc(found, func(f schedule.Finding) bool { return f.Code == schedule.OffUndone || f.Code == schedule.OffUnread }) {
		return
	}
	for i, s := range p.Steps {
		if s.Kind == schedule.StepCloseDown && !s.Done {
			p.Steps[i].Text = "Only once nothing has to go back on the grate: " + say.Lower(s.Text)
		}
	}
}
