package revise

import (
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/planner/internal/surprise"
)

// showing is what the log shows of the coldest place of a piece.
type showing int

const (
	shownDone  showing = iota // it was read at what it must have shown, or nothing is asked of it
	shownLow                  // it was read, and not at that
	shownNever                // nobody read it
)

// Figures of what a reading shows (judgment but where said otherwise).
const (
	sameC      = 0.3              // half a degree Fahrenheit: as it is printed
	placesFor  = 30 * time.Minute // for so long the coldest of two places stands against a warmer one
	lookFor    = 5 * time.Minute  // and of a piece that is whole, and carries nothing inside: one look
	pushedFor  = 12 * time.Hour   // and one of a probe pushed through the piece, which was near its minimum
	nearMinK   = 15.0             // as near as this
	carryK     = 5 / 1.8          // a whole piece rises by as much once it is off (common practice, no source)
	unreadMost = 0.9              // the most that a piece may be trusted that nobody read
	// coolsAnHour is how fast a bare bird of coolsKg cools, as a share of what it is above the
	// air: 147 to 143 F in 10 min (a turkey); smaller ones as their thickness.
	coolsAnHour, coolsKg = 0.33, 6.0
)

// inner says whether the inside of a piece may carry what is otherwise only on its surface.
func (a *liveBatch) inner() bool { return safety.SurfaceInside(a.batch.It.Category, a.batch.It.Prep) }

// mustShow says whether only a reading tells that a piece is done: one whose inside may be
// dangerous, and any that is only taken to be off, as planned, but what cooks for so long that
// its minimum is hours behind it.
func (a *liveBatch) mustShow() bool {
	return a.inner() || a.where == off && !a.off.logged && !a.gone && (a.batch.It.Cut.Style != cut.Tough || a.on.logged)
}

// shows says whether a piece was read at what it must have shown, in its coldest place: the
// newest reading counts, and of two places that were read within half an hour the colder one.
// A warmer place elsewhere finishes nothing, and what a probe pushed through the piece found
// near its minimum, and under it, only such a probe clears.
func (v *Revision) shows(a *liveBatch) showing {
	least := a.leastC()
	if least == 0 {
		return shownDone
	}
	all := v.showsOf(a)
	switch {
	case len(all) == 0 && a.mustShow():
		return shownNever
	case len(all) == 0:
		return shownDone // the cook's to know
	case !v.coldestAt(a, all, least-a.wishSlackK()):
		return shownLow
	}
	return shownDone
}

// wishSlackK is how far below what the cook asked of it a piece may come off and rise to it: only
// where that is a wish, below the published minimum, of a whole piece. A minimum has no slack.
func (a *liveBatch) wishSlackK() float64 {
	if a.inner() || !a.off.logged || a.way().PullC > a.batch.It.Verdict.Minimum.CoreC-2*sameC {
		return 0
	}
	return carryK
}

// showsOf are the readings of a piece that may be its core: one that is too warm to be it
// shows nothing.
func (v *Revision) showsOf(a *liveBatch) (all []schedule.Entry) {
	for i, e := range a.cores {
		if i < len(a.readings) && !a.readings[i].Counts() && !a.coldSign(i) {
			continue
		}
		all = append(all, e)
	}
	if len(all) == 0 && a.off.logged {
		return a.coldAsItCameOff()
	}
	return all
}

// coldAsItCameOff are the readings below what a piece must have shown, of about its take-off and
// since, where no reading counts: left out they may be, but nothing else tells that it is done.
func (a *liveBatch) coldAsItCameOff() (all []schedule.Entry) {
	for i, e := range a.cores {
		least := a.leastC() - sameC
		meant := slices.ContainsFunc(a.signs, func(s surprise.Verdict) bool { return s.Index == i && s.Main() == surprise.Unit && meantC(s) >= least })
		if e.C < least && !e.At.Before(a.off.at.Add(-offReading)) && !meant { // what was meant hot enough is asked for
			all = append(all, e)
		}
	}
	return all
}

// noteColdPlace says of a piece on the fire that a warmer reading elsewhere does not finish it:
// a probe pushed through it found a place under its minimum.
func (v *Revision) noteColdPlace(a *liveBatch, add func(schedule.Finding)) {
	least, n := a.leastC(), len(a.cores)
	if _, _, apart := v.oneIsDone(a); apart {
		return // one comes off, and the other is told to go on
	}
	if !a.colder || a.condemned || n == 0 || a.cores[n-1].Kind == schedule.LogColdest || a.cores[n-1].C < least-sameC {
		return
	}
	for i := n - 1; i >= 0; i-- {
		if cold := a.cores[i]; cold.Kind == schedule.LogColdest {
			add(about(a, schedule.ProbeHot, fmt.Sprintf("%s: leave it on. It showed %s, but its coldest place was at %s at %s, and it needs %s everywhere. Measure that place before it comes off (coldest).",
				a.batch.It.Dish.Name, v.day.Core(a.cores[n-1].C), v.day.Core(cold.C), v.clock(cold.At), v.day.Core(least))))
			return
		}
	}
}

// coldSign says whether a reading that is left out is a cold one: the meat may be as cold there.
func (a *liveBatch) coldSign(index int) bool {
	for _, s := range a.signs {
		if s.Index == index {
			return s.Cold && s.Main() != "out" && s.Main() != "unit"
		}
	}
	return false
}

// coldestAt says whether readings, in order, have their coldest place at a core.
func (v *Revision) coldestAt(a *liveBatch, all []schedule.Entry, least float64) (done bool) {
	hot := false
	var until time.Time // until then a warmer place elsewhere finishes nothing
	place := ""         // which was the cold one, where somebody named it
	for _, e := range all {
		pushed := e.Kind == schedule.LogColdest
		switch {
		case e.C >= least-sameC:
			same := place != "" && e.Value == place // the cold place itself
			hot, done = true, pushed || same || e.At.After(until)
			if pushed || same {
				until, place = time.Time{}, "" // nowhere is it colder
			}
		case done && v.onlyCooled(a, e, least):
		default:
			done = false
			if !a.inner() { // its inside is as clean as it was: the newest reading counts
				until = instant.Later(until, e.At.Add(lookFor))
				break
			}
			if e.C < least-sameC-belief.ProbeErrorK && (hot || pushed) {
				until, place = instant.Later(until, e.At.Add(placesFor)), e.Value
			}
			wasOff := a.off.set && !e.At.Before(a.off.at.Add(-offReading)) // and it was to be eaten
			if pushed && e.C < least-sameC && (e.C > least-nearMinK || wasOff) {
				until, place = instant.Later(until, e.At.Add(pushedFor)), e.Value
			}
		}
	}
	return done
}

// onlyCooled says whether a piece that had come to a core may have cooled to a reading since
// it came off.
func (v *Revision) onlyCooled(a *liveBatch, e schedule.Entry, least float64) bool {
	since := e.At.Sub(a.off.at)
	if !a.off.set || since <= 0 || since > placesFor {
		return a.off.set && since > placesFor
	}
	perHour := coolsAnHour * math.Max(1, math.Cbrt(coolsKg/math.Max(a.batch.MassKg, 0.05)))
	air := v.day.Air.AirC
	return e.C >= air+(least-air)*math.Exp(-perHour*since.Hours())-belief.ProbeErrorK
}

// lowestOf is the reading by which a piece that was read has not shown what it must have: the
// newest, or the colder one of two places.
func (v *Revision) lowestOf(a *liveBatch) schedule.Entry {
	all, least := v.showsOf(a), a.leastC()
	out := all[len(all)-1]
	if out.C < least-sameC {
		return out
	}
	from := out.At.Add(-placesFor)
	for _, e := range all {
		if !e.At.Before(from) && e.C < out.C {
			out = e
		}
	}
	return out
}

// undoneChance is how likely it is that a piece is off and not done, or comes to its serving
// undone over a fire that failed, for all that was read of it: 0 where it was read at what it
// must have shown, and where the model follows it.
func (v *Revision) undoneChance(a *liveBatch) float64 {
	if _, lies := a.lies(v.now); lies {
		return 1 // for as long as it lies there
	}
	if a.where == off && a.wasFrozen() && a.placesLeft() > 0 {
		return 1 - unreadMost
	}
	if a.where == waiting || a.gone || !a.mustShow() || v.shows(a) == shownDone {
		return 0
	}
	end := a.off.at
	if a.where == cooking {
		if a.believed != nil || a.read() || v.inOven(a) || !v.heatFailed(a, a.on.at, v.now) {
			return 0
		}
		end = v.serve(a)
		if _, dead := v.grate.dead(); dead || v.heatFailed(a, v.now.Add(-recent), v.now) {
			end = v.now
		}
	}
	took := end.Sub(a.on.at).Minutes()
	for _, o := range v.grate.outages {
		took -= math.Max(instant.Earlier(o.to, end).Sub(instant.Later(o.since(), a.on.at)).Minutes(), 0)
	}
	return 1 - math.Min(spread.NormalCDF(a.way().Total().QuantileOf(math.Max(took, 1))), unreadMost)
}

// unshown says whether a piece is off, and nothing shows that it is done.
func (a *liveBatch) unshown() bool { return a.where == off && a.undone > 0 }

// heatFailed says whether the fire of a piece died or starved between two instants, as far as
// thermometers and the cook have told: then it is not done as planned.
func (v *Revision) heatFailed(a *liveBatch, from, to time.Time) bool {
	for _, o := range v.grate.outages {
		if o.since().Before(to) && (o.open || o.to.After(from)) {
			return true
		}
	}
	if d := v.grate.dying; !d.from.IsZero() && d.from.Before(to) {
		return true
	}
	level := func(time.Time) float64 { return a.way().AirC }
	low := false
	for _, r := range v.grate.readings {
		if r.at.After(from) && r.at.Before(to) {
			low = v.grate.levelAt(r.at, level)-r.c > dyingK
		}
	}
	return low || v.grate.sinks() && v.grate.sinking.at.Before(to)
}

// overDeadFire says whether a piece is on the grate, and its fire is out.
func (v *Revision) overDeadFire(a *liveBatch) bool {
	_, dead := v.grate.dead()
	return dead && a.where == cooking && !v.inOven(a)
}

// backWithin is how long a piece that is not done lies off the heat on its way back
// (judgment).
const backWithin = 15 * time.Minute

// lies says since when a piece that is not done has lain off the heat, for longer than it takes
// to be put back.
func (a *liveBatch) lies(now time.Time) (since time.Time, ok bool) {
	n := len(a.stands)
	if n == 0 || a.where != cooking || a.condemned || !a.stands[n-1].open || a.stands[n-1].kind != schedule.LogStopped {
		return since, false
	}
	within := backWithin
	if a.stands[n-1].sears {
		within = max(within, day.SearLagMinutes*time.Minute)
	}
	return a.stands[n-1].from, now.Sub(a.stands[n-1].from) > within
}

// stillOn puts back what was taken as done as planned, and whose fire failed before that: it
// is on, and not known to be done. It says whether there was any.
func (v *Revision) stillOn() bool {
	found := false
	for _, a := range v.batches {
		if a.where == off && !a.off.logged && !a.gone && !v.inOven(a) && v.heatFailed(a, a.on.at, instant.Earlier(a.off.at, v.now)) {
			a.off, a.where, found = known{}, cooking, true
		}
	}
	return found
}
