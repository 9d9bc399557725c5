package revise

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/spread"
)

// A dish of several pieces is done when its slowest piece is. A reading at the target is of one
// of them, until the others were read too or the coldest of all was.

// eachMeasured is up to how many pieces of a batch each is measured by itself (assumption: what
// is more lies in rows, and is judged by a few).
const eachMeasured = 4

// awaitsOthers says whether one of several pieces was read at the target, and the others were
// not.
func (a *liveBatch) awaitsOthers() bool {
	return a.believed != nil && a.atTarget() && a.unreadAt(a.way().PullC)
}

// unreadAt says whether some of a few pieces were not read at a core yet.
func (a *liveBatch) unreadAt(coreC float64) bool {
	if n := a.batch.Count; n < 2 || n > eachMeasured {
		return false
	}
	read := 0
	for _, e := range a.cores {
		switch {
		case e.C < coreC-sameC:
		case e.Kind == schedule.LogColdest:
			return false
		default:
			read++
		}
	}
	return read > 0 && read < a.batch.Count
}

// lag is how much longer than the piece that was read at a minute the slowest of its dish
// takes, at a standard normal quantile, minutes: at the least none.
func (a *liveBatch) lag(minute, z float64) float64 {
	median, sd := a.way().Spread.BetweenPieces(a.batch.Count)
	return math.Max(minute*(math.Exp(median+sd*z)-1), 0)
}

// withOthers are the minutes of a piece that was read at its target, with those that were not.
func (v *Revision) withOthers(a *liveBatch, done *[4]float64, least float64) {
	read := a.readWhen().Sub(a.on.at).Minutes()
	for i, p := range []float64{0.1, 0.5, 0.9, v.day.Req.Confidence} {
		done[i] = math.Max(read+a.lag(read, spread.NormalQuantile(p)), least)
	}
}

// othersText asks for the pieces that were not read.
func (v *Revision) othersText(a *liveBatch) string {
	others := "the other"
	if a.batch.Count > 2 {
		others = fmt.Sprintf("the other %d", a.batch.Count-1)
	}
	at := a.way().PullC
	if a.way().Sear && len(a.stands) == 0 {
		at = a.way().WrapC // it comes off for the sear
	}
	return fmt.Sprintf("%s: take off the one that reads %s, and measure %s now. Each comes off by its own reading, at %s; log that one off (one off), or the coldest of them (coldest).",
		a.batch.It.Dish.Name, v.day.Core(a.readAt()), others, v.day.Core(at))
}

// someUnread says whether a dish of a few pieces that have to be hot all through came off, and
// not each was read at what it must have shown.
func (a *liveBatch) someUnread() bool {
	return a.leastC() > 0 && a.inner() && a.unreadAt(a.leastC())
}
