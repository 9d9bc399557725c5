package revise

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// reheatC is what brings back a hold that has fallen below its line, once, within the time that
// it may be there: 165 F (usda_danger_zone).
var reheatC = unit.FToC(165)

// reheatLeast is the least time in which a cold piece can be made hot: sliced, in one layer, covered
// (assumption).
const reheatLeast = 20 * time.Minute

// slicedWithin is the time to the end of its clock within which a piece is reheated in slices
// only, for whole it takes longer (assumption).
const slicedWithin = 75 * time.Minute

// openForHours is a wait in the open that is longer than any, minutes.
const openForHours = 600

// cooksFromC is an oven that cooks, where a cooler one holds: 225 F.
var cooksFromC = unit.FToC(225)

// reheatBy is by when a hold that was read below its line must be hot again, and since when it
// may have been below: from the earliest that it crossed the line, as such a piece cools. What
// cooled faster than that, or in an oven that failed, did so at any time since it was last
// known to be above.
func (v *Revision) reheatBy(a *liveBatch, p *arrange.Placed, cold safety.Sample) (by, since time.Time) {
	since = a.off.at
	if a.boxed.set {
		since = a.boxed.at
	}
	for _, e := range v.log {
		if e.Dish == a.batch.It.Dish.ID && e.Kind == schedule.LogOuter && e.C > safety.DangerHighC && e.At.After(since) && e.At.Sub(a.on.at).Minutes() < cold.Minute {
			since = e.At
		}
	}
	if p.Hold >= 0 && p.Options[p.Hold].Read && p.Options[p.Hold].Method != schedule.HoldOven {
		hot := a.off.at.Add(instant.Minutes(math.Max(p.Options[p.Hold].Hot, 0))).Truncate(time.Minute)
		if hot.Before(a.on.at.Add(instant.Minutes(cold.Minute))) {
			since = instant.Later(since, hot)
		}
	}
	if p.Way.State != nil && a.boxed.set && a.boxed.at.Sub(a.off.at).Minutes() <= placeAskedFrom { // no box cools faster than the open
		open := a.off.at.Add(instant.Minutes(v.day.HotFor(p.Way, day.Waiting{Method: schedule.HoldTent, Pieces: a.batch.Count, Vent: openForHours}))).Truncate(time.Minute)
		if open.Before(a.on.at.Add(instant.Minutes(cold.Minute))) {
			since = instant.Later(since, open)
		}
	}
	return since.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC))), since
}

// reheated is the reading that shows that a hold which was read below its line was hot again in
// time; false where none does, or it has fallen again.
func (v *Revision) reheated(a *liveBatch, p *arrange.Placed, rule safety.HoldRule, samples []safety.Sample) (hot safety.Sample, ok bool) {
	var by time.Time
	for _, s := range samples {
		switch {
		case s.C < rule.LimitC && ok:
			return hot, false
		case s.C < rule.LimitC && by.IsZero():
			by, _ = v.reheatBy(a, p, s)
		case !by.IsZero() && !ok && s.C >= reheatC-sameC && !a.on.at.Add(instant.Minutes(s.Minute)).After(by):
			hot, ok = s, true
		}
	}
	return hot, ok
}

// madeHot says whether a hold that was read below its line was reheated in time.
func (v *Revision) madeHot(a *liveBatch, p *arrange.Placed) bool {
	if p.Hold < 0 || len(a.outers)+len(a.cores) == 0 {
		return false
	}
	held := a.outers
	if len(held) == 0 {
		held = a.cores
	}
	samples := slices.DeleteFunc(v.samples(a, held, a.readings), func(s safety.Sample) bool {
		return a.on.at.Add(instant.Minutes(s.Minute)).Before(a.off.at)
	})
	_, ok := v.reheated(a, p, p.Options[p.Hold].Rule, v.withColdest(a, samples))
	return ok
}

// noteHotly says of what was done through in an oven that cooks that it comes out and is served.
func (v *Revision) noteHotly(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	if !a.hotly.set || a.served.set || a.condemned || v.mealPast(a) || v.madeHot(a, p) {
		return
	}
	for _, e := range slices.Backward(a.cores) {
		if e.Kind != schedule.LogColdest || e.At.Before(a.hotly.at) {
			continue
		}
		if e.C >= a.leastC()-sameC {
			add(about(a, schedule.HoldRead, fmt.Sprintf("%s: out of the oven, and serve it. It was at %s in its coldest place at %s. Eat it now; the oven off, or at %s if it waits.",
				a.batch.It.Dish.Name, v.day.Core(e.C), v.clock(e.At), v.day.Grate(v.keepC(a)))))
		}
		return
	}
}

// eatNow says of whole muscle in a box that was read below its line, and may still come to the
// table within its time, by when; false where it may not.
func (v *Revision) eatNow(a *liveBatch, p *arrange.Placed, rule safety.HoldRule) (text string, ok bool) {
	if p.Hold < 0 || !p.Options[p.Hold].Read || p.Options[p.Hold].Hot <= 0 || rule.AddedMinutes <= 0 || a.hotly.set || len(a.outers) == 0 {
		return "", false
	}
	last := a.outers[len(a.outers)-1]
	hot, served, eaten := v.heldClocks(a, p.Options[p.Hold])
	if last.C >= safety.DangerHighC || last.At.Before(a.boxed.at) || !served.After(v.now) {
		return "", false
	}
	return fmt.Sprintf("%s: serve it now. On the table by %s, eaten by %s, and keep nothing of it. It was at %s just under its surface at %s, and may have been below %s since %s. Later than that: an oven at %s until it reads 165 °F (74 °C) everywhere, by %s, once, or throw it away.",
		a.batch.It.Dish.Name, v.clock(served), v.clock(eaten), v.day.Core(last.C), v.clock(last.At), v.day.Core(safety.DangerHighC), v.clock(hot), v.day.Grate(undoneOvenC), v.clock(eaten)), true
}

// withColdest are readings of a hold with those of the coldest place of all, in order.
func (v *Revision) withColdest(a *liveBatch, samples []safety.Sample) []safety.Sample {
	out := slices.Clone(samples)
	for _, e := range a.cores {
		if s := (safety.Sample{Minute: e.At.Sub(a.on.at).Minutes(), C: e.C}); e.Kind == schedule.LogColdest && !e.At.Before(a.off.at) && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	slices.SortStableFunc(out, func(a, b safety.Sample) int { return cmp.Compare(a.Minute, b.Minute) })
	return out
}
