package revise

import (
	"fmt"
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
)

// noteSlowAhead says of a piece whose inside may be dangerous, while there is time to mend it,
// that it will be in the zone of danger for longer than it should be, at the heat that it has.
func (v *Revision) noteSlowAhead(a *liveBatch, add func(schedule.Finding)) {
	it, b := a.batch.It, a.believed
	if a.where != cooking || b == nil || a.condemned || !safety.DangerApplies(it.Category, it.Prep) || v.isIndoors(a) {
		return
	}
	if slices.ContainsFunc(a.verdict, func(f safety.Finding) bool { return f.Code == slowThrough || f.Severity == safety.Danger }) {
		return // it has been
	}
	if _, dead := v.grate.dead(); dead {
		return // its own clock is graver
	}
	from, to := v.zoneOf(a, b, 0.5)
	comes := "comes to 140 °F (60 °C) at about %s"
	if to-from <= safety.DangerWarnMinutes && len(b.Nodes) > 0 { // while there is time: where it is likely enough
		from, to = v.zoneOf(a, b, slowWarned)
		comes = "may come to 140 °F (60 °C) only at about %s"
	}
	if to-from <= safety.DangerWarnMinutes {
		return
	}
	at := func(m float64) string { return v.clock(a.on.at.Add(instant.Minutes(m))) }
	hot := fmt.Sprintf(comes, at(to))
	if math.IsInf(to, 1) {
		hot = "does not come to 140 °F (60 °C)"
	}
	heat := fmt.Sprintf("bring the grate to %s now", v.day.Grate(hottestC))
	if v.grate.levelAt(v.now, v.plannedLevel) > hottestC-offLevelK {
		heat = fmt.Sprintf("more heat now, or into an oven at %s", v.day.Grate(undoneOvenC))
	}
	c, _ := safety.Lookup(slowThrough)
	by := "by " + at(from+safety.DangerWarnMinutes)
	if from+safety.DangerWarnMinutes <= b.Journey.Now {
		by = "and that was by " + at(from+safety.DangerWarnMinutes)
	}
	add(ofCatalogue(a, c, fmt.Sprintf("%s: %s. At this heat its middle %s; such a piece should be there within %s of 40 °F (4 °C), %s.",
		it.Dish.Name, heat, hot, v.span(safety.DangerWarnMinutes), by)))
}

// slowNow says of such a piece that still cooks, and was in the zone of danger for longer than it should be, what
// to do now, and since when it should have been through.
// What is thrown away goes nowhere.
func (v *Revision) slowNow(a *liveBatch, f safety.Finding) (text string, ok bool) {
	if f.Code != slowThrough || a.where != cooking || a.condemned || a.believed == nil || v.isIndoors(a) || len(a.cores) == 0 || a.cores[len(a.cores)-1].C >= safety.DangerHighC {
		return "", false
	}
	from, _ := v.zoneOf(a, a.believed, 0.5)
	by := a.on.at.Add(instant.Minutes(from + safety.DangerWarnMinutes))
	return fmt.Sprintf("%s: into an oven at %s now, and measure it in three places before it is eaten. Its middle should have been through 140 °F (60 °C) by %s: %s",
		a.batch.It.Dish.Name, v.day.Grate(undoneOvenC), v.clock(by), f.Sentence), true
}

// slowWarned is the quantile of a cook that is warned of: three in ten are as slow (judgment).
const slowWarned = 0.7

// zoneOf are the minutes at which the core of a piece came, or comes, to 40 °F and to 140, as it
// was read and is expected at a quantile of its cook; the second is +Inf where that is not within
// two days. What lay raw and out of the refrigerator before it went on has been in the zone since then.
func (v *Revision) zoneOf(a *liveBatch, b *belief.Belief, quantile float64) (from, to float64) {
	const step = 5.0
	if b.OutOfReach() {
		return 0, math.Inf(1)
	}
	end := b.Quantile(quantile)
	for b.CoreC(from, quantile) < safety.DangerLowC && from < end {
		from += step
	}
	if _, raw := v.rawOut(a); raw > 0 {
		from = -raw
	}
	for to = max(from, 0); b.CoreC(to, quantile) < safety.DangerHighC && to < end; {
		to += step
	}
	return from, to
}
