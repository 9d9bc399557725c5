package revise

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// What came off and of which nothing was logged for a while stood without heat in that time,
// for all that is known: what is logged hours later does not join on to the take-off. A hold
// that was planned and never logged is asked about, and covers what it would have lasted for.

// gap is a stretch off the fire of which nobody told where the piece was; ended by an entry
// of that kind, or open.
type gap struct {
	from, to time.Time
	by       schedule.EntryKind // empty as long as nothing ended it
}

// gapOf is the stretch after the take-off of a piece up to where it was put next. A place that
// was read at 140 °F or more under its surface, or in its coldest place, begins it anew.
func (v *Revision) gapOf(a *liveBatch) (gap, bool) {
	if a.where != off || !a.off.logged || a.off.at.After(v.now) {
		return gap{}, false
	}
	g := gap{from: a.off.at, to: v.now}
	ends := func(at time.Time, by schedule.EntryKind) {
		if !at.Before(a.off.at) && (at.Before(g.to) || g.by == "") {
			g.to, g.by = at, by
		}
	}
	if a.served.set {
		ends(a.served.at, schedule.LogServed)
	}
	if a.boxed.set {
		ends(a.boxed.at, schedule.LogBoxed)
	}
	for _, s := range a.stands {
		ends(s.from, s.kind)
	}
	for _, e := range v.log {
		hot := e.Kind == schedule.LogOuter || e.Kind == schedule.LogColdest
		if hot && e.Dish == a.batch.It.Dish.ID && e.C >= safety.DangerHighC && e.At.After(g.from) && !e.At.After(g.to) {
			g.from = e.At
		}
	}
	return g, g.to.After(g.from)
}

// openGap is such a stretch where it counts as one without heat: before a counter always, and
// else where it is longer than the limit and no hold that was planned covers it.
func (v *Revision) openGap(a *liveBatch) (gap, bool) {
	g, ok := v.gapOf(a)
	switch {
	case !ok || g.by == "":
		return g, false
	case g.by == schedule.LogCounter:
		return g, true
	case g.to.Sub(g.from).Minutes() <= safety.OutLimit(v.day.Air.AirC):
		return g, false
	case g.by == schedule.LogServed:
		return g, !g.to.Before(v.coveredUntil(a))
	}
	return g, true
}

// coveredUntil is until when a piece that came off may be eaten if it waits as planned; by the
// limit of what stands without heat where nothing is planned.
func (v *Revision) coveredUntil(a *liveBatch) time.Time {
	bare := a.off.at.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC)))
	if a.first == nil || a.first.Hold < 0 {
		return bare
	}
	o, _ := v.day.ChosenHold(a.first)
	_, _, eaten := v.heldClocks(a, o)
	return instant.Later(bare, eaten)
}

// askOpen is after how long without a word it is asked where a piece waits (assumption).
const askOpen = 30 * time.Minute

// noteGap asks where a piece is that came off some time ago, and says what becomes of it if it
// stood without heat; true where the end of that is past.
func (v *Revision) noteGap(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) bool {
	g, ok := v.gapOf(a)
	if !ok || g.by != "" || a.condemned || a.unshown() {
		return false
	}
	name, by := a.batch.It.Dish.Name, g.from.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC))).Truncate(time.Minute)
	place := "in an oven or a cooler"
	if p.Hold >= 0 && p.Options[p.Hold].Method == schedule.HoldOven {
		place = "in the oven"
	}
	off, over := v.clock(g.from), !by.After(v.now)
	switch {
	case over && (v.now.After(v.serve(a)) || v.now.After(v.coveredUntil(a))):
		add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: was it eaten? Off the fire at %s, and nothing was logged since. What stood without heat since then was to be thrown away from %s on. Log served, with its time.", name, off, v.clock(by))))
	case over:
		add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: where is it? Off the fire at %s, and nothing was logged since. Was it %s all the time? Then log that, with its time (boxed), and measure it just under the surface: %s or more. If it stood without heat, throw it away: its %s were over at %s.",
			name, off, place, v.day.Core(safety.DangerHighC), v.span(safety.OutLimit(v.day.Air.AirC)), v.clock(by))))
	case v.now.Sub(g.from) > askOpen && v.serve(a).Sub(v.now) > askOpen:
		add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: is it %s since %s? Nothing was logged: log it, with its time (boxed). If it stands without heat, measure it just under the surface: at %s or more into an oven at %s now; else eat it by %s.",
			name, place, off, v.day.Core(safety.DangerHighC), v.day.Grate(ovenHoldC), v.clock(by))))
	}
	return over
}
