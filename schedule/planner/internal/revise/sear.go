package revise

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/day"
)

// A piece that is seared at the end comes off twice: for the sear, below what it is eaten at, and
// done. A log has one word for both.

// searWaits is for how long a piece that came off for its sear is taken to wait for it, where the
// plan has it no later (judgment).
const searWaits = 45 * time.Minute

// offForSear says whether a piece that comes off at an instant does so to be seared: it was just
// read, below what it is done at, and came off for no sear before.
func (a *liveBatch) offForSear(at time.Time) bool {
	n, w := len(a.cores), a.way()
	if !w.Sear || a.off.set || n == 0 {
		return false
	}
	for _, s := range a.stands {
		if s.sears {
			return false
		}
	}
	last := a.cores[n-1]
	return at.Sub(last.At) <= offReading && last.C < w.PullC-sameC
}

// waitsForSear is since when a piece has been off to be seared, and is.
func (a *liveBatch) waitsForSear() (since time.Time, ok bool) {
	n := len(a.stands)
	if n == 0 || !a.stands[n-1].open || !a.stands[n-1].sears {
		return since, false
	}
	return a.stands[n-1].from, true
}

// searFrom is the core at which a piece came off that waits for its sear, degC: by the cook's own
// hand its first stage is over, whatever the plan wanted there. +Inf for one that does not wait.
func (a *liveBatch) searFrom() float64 {
	since, waits := a.waitsForSear()
	from := math.Inf(1)
	for _, e := range a.cores {
		if waits && e.Kind == schedule.LogCore && !e.At.After(since) {
			from = e.C
		}
	}
	return from
}

// searedBy takes a reading at what it is done at of a piece that came off for its sear as told
// after it: it is off, and was seared.
func (a *liveBatch) searedBy(e schedule.Entry) {
	if since, ok := a.waitsForSear(); ok && e.C >= a.way().PullC-sameC {
		a.seared(since)
	}
}

// seared takes a piece to be off since it came off for its sear: nobody notes the few minutes of it.
func (a *liveBatch) seared(since time.Time) {
	a.off = known{at: since, set: true, logged: true}
	a.stands = a.stands[:len(a.stands)-1]
}

// searOver takes a piece to be seared whose sear was due some time ago.
func (v *Revision) searOver(a *liveBatch) {
	since, ok := a.waitsForSear()
	if !ok {
		return
	}
	due := since.Add(searWaits)
	if p := a.first; p != nil && !v.loose && p.Way.Sear {
		due = instant.Later(due, v.base.At(p.Off).Add(lidSettles))
	}
	if v.now.After(due) {
		a.seared(since)
		a.searTaken = true
	}
}

// searUntold says whether a piece that came off for its sear is taken to be seared, and nothing was
// read of it since, nor told of where it is.
func (v *Revision) searUntold(a *liveBatch) bool {
	n := len(a.cores)
	return a.searTaken && a.where == off && !a.served.set && !v.mealPast(a) && len(a.outers) == 0 && len(a.waits()) == 0 && n > 0 && !a.cores[n-1].At.After(a.off.at)
}

// noteSearUntold asks of such a piece whether it was seared, and says what becomes of it if not.
func (v *Revision) noteSearUntold(a *liveBatch, add func(schedule.Finding)) bool {
	if !v.searUntold(a) {
		return false
	}
	by := a.off.at.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC) - v.spentBefore(a, a.off.at)))
	not := fmt.Sprintf("Not seared: onto a hot fire, or into an oven at %s in a rimmed pan, by %s; past that it is thrown away.", v.day.Grate(a.rawOvenC()), v.clock(by))
	if v.now.After(by) {
		not = fmt.Sprintf("Not seared: throw it away, its time without heat was over at %s.", v.clock(by))
	}
	add(about(a, schedule.OffUnread, fmt.Sprintf("%s: was it seared? It came off for that at %s, at %s inside, and nothing was logged since. Seared: measure it before you cut it, log that, and when it came off; it needs %s. %s",
		a.batch.It.Dish.Name, v.clock(a.off.at), v.day.Core(a.cores[len(a.cores)-1].C), v.day.Core(a.leastC()), not)))
	return true
}

// noteSearWaits says of a piece that waits for its sear how it waits: hot, and over no dead fire.
func (v *Revision) noteSearWaits(a *liveBatch, since, by time.Time, add func(schedule.Finding)) {
	name := a.batch.It.Dish.Name
	add(about(a, schedule.StandsOpen, fmt.Sprintf("%s: sear it next, and leave the coals burning. It has been off the heat since %s; longer than %s wait for the sear: back on the side away from the coals, or into an oven at %s in a rimmed pan. It cooks on there: measure it again before the sear. Seared already? Then log what it reads now. In heat by %s at the very latest; past that it is thrown away.",
		name, v.clock(since), v.span(day.SearLagMinutes), v.day.Grate(a.rawOvenC()), v.clock(by))))
}
