package revise

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
)

// lagsK is how much colder than nine in ten such cooks a core is that heat alone does not explain, K (judgment).
const lagsK = 2.0

// noteUnwatched asks after a fire that nobody read for hours and that was weak then, and under which
// a piece was far colder than hours of heat leave any: it may have been without heat since long before
// the weak fire was seen, whatever a fire that dies at once would show. What was read later takes
// nothing back; what the grate showed meanwhile does.
func (v *Revision) noteUnwatched(a *liveBatch, add func(schedule.Finding)) {
	if a.where == waiting || a.condemned || v.isIndoors(a) {
		return
	}
	weak, since, ok := v.weakAfterNobody(a)
	if !ok || v.toldOut(weak.at) {
		return
	}
	for _, core := range a.cores {
		if core.At.Sub(weak.at).Abs() > freshWeak || core.C >= safety.DangerHighC {
			continue
		}
		if slow, known := v.slowestHeated(a, core.At); !known || core.C > slow-lagsK {
			continue
		}
		add(about(a, "unwatched-heat", fmt.Sprintf("%s may have been without heat for hours: it was at %s after %s, colder than nine in ten such cooks, and nobody read the grate from %s to %s. If an alarm or a graph shows 200 °F (93 °C) or more all that time, log what it showed, such as grate 230 at 3:00 AM. If not: over 2 hr between 40 and 140 °F without heat it is thrown away.",
			a.batch.It.Dish.Name, v.day.Core(core.C), v.span(core.At.Sub(a.on.at).Minutes()), v.clock(since), v.clock(weak.at))))
		return
	}
}

// toldOut says whether a fire was told to be out at an instant: since when is asked and reckoned then.
func (v *Revision) toldOut(at time.Time) bool {
	return slices.ContainsFunc(v.grate.outages, func(o outage) bool { return !o.seen && !o.from.After(at) && !o.to.Before(at) })
}

// longUnread is how long nobody reads a grate and its fire may have been weak for more than a clock
// allows, and burned on weakly: less is dated by how a fire cools (judgment).
const longUnread = 3 * time.Hour

// freshWeak is within what a reading of a weak grate and one of a core go together (judgment).
const freshWeak = time.Hour

// weakAfterNobody is the first reading of the grate under a piece that is below the 200 °F of half a
// clock's speed after nobody had read it for long, and since when nobody had.
func (v *Revision) weakAfterNobody(a *liveBatch) (weak grateReading, since time.Time, ok bool) {
	since = a.on.at
	for _, r := range v.grate.readings {
		if r.gauge || !r.at.After(a.on.at) || a.where == off && r.at.After(a.off.at) {
			continue
		}
		if r.c < safety.HalfHeatC && r.at.Sub(since) >= longUnread && v.grate.levelAt(r.at, v.plannedLevel) > safety.HalfHeatC {
			return r, since, true
		}
		since = r.at
	}
	return weak, since, false
}

// slowestHeated is the core that nine in ten such cooks have by an instant over a fire at its level.
func (v *Revision) slowestHeated(a *liveBatch, at time.Time) (c float64, known bool) {
	x := *v
	x.grate = grateHistory{d: v.grate.d, levels: v.grate.levels}
	b, err := belief.New(context.Background(), x.journeyOf(a), x.standOf(a), nil)
	if err != nil || b.OutOfReach() {
		return 0, false
	}
	return b.CoreC(at.Sub(a.on.at).Minutes(), slowestTenth), true
}

// slowestTenth is the quantile of a cook that nine in ten are faster than.
const slowestTenth = 0.9
