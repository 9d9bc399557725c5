package revise

import (
	"fmt"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
)

// slowOver is the code of a bird that was read below 140 °F after more than 4 h.
const slowOver = "slow-over"

// slowThrough is the code of one that is in the zone of danger for longer than it should be.
const slowThrough = "slow-through-danger-zone"

// slowOverOf says for how many minutes, 0 for no such, and by what reading, a bird was below 140 °F for longer than 4 h: at the last reading below that,
// and on the line from there to the next. A forecast condemns nothing; more heat helps as long as the hours last, and is asked
// for until then.
func (v *Revision) slowOverOf(a *liveBatch) (late schedule.Entry, spent float64) {
	if a.batch.It.Category != safety.Poultry || a.where == waiting || !a.on.set || a.believed == nil && a.where == cooking {
		return late, 0
	}
	_, raw := v.rawOut(a)
	from := -raw
	if b := a.believed; b != nil && !b.OutOfReach() {
		from, _ = v.zoneOf(a, b, 0.5)
	}
	until := 0.0
	for i, e := range a.cores {
		if i >= len(a.readings) || !a.readings[i].Counts() || a.off.set && e.At.After(a.off.at) {
			continue
		}
		m := e.At.Sub(a.on.at).Minutes()
		switch {
		case e.C < safety.DangerHighC:
			late, until = e, m
		case !late.At.IsZero() && until == late.At.Sub(a.on.at).Minutes():
			until += (m - until) * (safety.DangerHighC - late.C) / (e.C - late.C)
		}
	}
	if until-from < safety.DangerWarnMinutes {
		return late, 0
	}
	return late, until - from
}

// noteSlowOver says that nothing brings such a bird to the table any more.
func (v *Revision) noteSlowOver(a *liveBatch, add func(schedule.Finding)) {
	if a.slowFor == 0 {
		return
	}
	a.verdict = slices.DeleteFunc(slices.Clone(a.verdict), func(f safety.Finding) bool { return f.Code == slowThrough })
	before := ""
	if _, raw := v.rawOut(a); raw > 0 {
		before = fmt.Sprintf(" with the %s that it lay raw and out", v.span(raw))
	}
	what := "Throw it away, however hot it is by now."
	if a.served.set {
		what = "Stop eating, and throw away what is left."
	}
	add(about(a, slowOver, fmt.Sprintf("%s: over 4 hr between 40 and 140 °F. It was at %s at %s, which makes %s of it%s, and 4 hr is the limit for birds. %s",
		a.batch.It.Dish.Name, v.day.Core(a.late.C), v.clock(a.late.At), v.span(a.slowFor), before, what)))
}
