package revise

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/spread"
)

// A dish of several pieces is done when its slowest piece is. A reading at the target is of one
// of them, until the others were read too or the coldest of all was.

// eachMeasured is up to how many pieces of a batch each is measured by itself. Of more the first, the
// thickest and the one farthest from the coals are (judgment).
const (
	eachMeasured = 4
	ofMany       = 3
)

// awaitsOthers says whether one of several pieces, or one place of it, was read at the target, and the
// others were not.
func (a *liveBatch) awaitsOthers() bool {
	return a.atTarget() && (a.unreadAt(a.way().PullC) || a.placesLeft() > 0)
}

// measured is how many pieces of a batch are read before all of it comes off.
func (a *liveBatch) measured() int {
	if a.batch.Count > eachMeasured {
		return ofMany
	}
	return a.batch.Count
}

// unreadAt says whether some of the pieces that are to be read were not read at a core yet.
func (a *liveBatch) unreadAt(coreC float64) bool {
	if a.batch.Count < 2 {
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
	return read > 0 && read < a.measured()
}

// lag is how much longer than the piece that was read at a minute the slowest of its dish
// takes, at a standard normal quantile, minutes: at the least none.
func (a *liveBatch) lag(minute, z float64) float64 {
	n := a.batch.Count
	if a.placesLeft() > 0 {
		n = max(n, threePlaces) // the coldest of some places lags as the slowest of as many pieces does (assumption)
	}
	median, sd := a.way().Spread.BetweenPieces(n)
	return math.Max(minute*(math.Exp(median+sd*z)-1), 0)
}

// withOthers are the minutes of a piece that was read at its target, with those that were not.
func (v *Revision) withOthers(a *liveBatch, done *[4]float64, least float64) {
	read := a.readWhen().Sub(a.on.at).Minutes()
	for i, p := range []float64{0.1, 0.5, 0.9, v.day.Req.Confidence} {
		done[i] = math.Max(read+a.lag(read, spread.NormalQuantile(p)), least)
	}
}

// othersText asks for the pieces and places that were not read.
func (v *Revision) othersText(a *liveBatch) string {
	if a.placesLeft() > 0 {
		return v.placesText(a)
	}
	if a.batch.Count > eachMeasured {
		return v.manyText(a)
	}
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

// manyText asks for the slowest of many pieces.
func (v *Revision) manyText(a *liveBatch) string {
	return fmt.Sprintf("%s: check the others before they come off: the thickest and the one farthest from the coals. One of %d was read, at %s. Each comes off by its own reading, at %s; log the coldest of them (coldest).",
		a.batch.It.Dish.Name, a.batch.Count, v.day.Core(a.readAt()), v.day.Core(a.way().PullC))
}

// someUnread says whether a dish that has to be hot all through came off, and some of its pieces or
// places were not read at what they must have shown.
func (a *liveBatch) someUnread() bool {
	return a.leastC() > 0 && (a.inner() && a.unreadAt(a.leastC()) || a.placesLeft() > 0)
}

// othersUnreadText asks for them before anybody cuts it.
func (v *Revision) othersUnreadText(a *liveBatch) string {
	name, least := a.batch.It.Dish.Name, v.day.Core(a.leastC())
	switch {
	case a.placesLeft() > 0:
		return fmt.Sprintf("%s: do not cut it yet. It was not read at %s in enough places, and %s. Measure at least two more now%s: %s. Log the lowest (coldest). Under %s, back on the heat.",
			name, least, a.otherPlaces(), a.ofEach(), say.Listed(a.whichPlaces(), "and"), least)
	case a.batch.Count > eachMeasured:
		return fmt.Sprintf("%s: %d pieces, and too few were read at %s. Measure the thickest and the one that lay farthest from the coals before you cut them, and log the coldest (coldest). Under that, back on the heat.", name, a.batch.Count, least)
	}
	return fmt.Sprintf("%s: %d pieces, and not each was read at %s. Measure the others before you cut them, and log the coldest (coldest). Under that, back on the heat.", name, a.batch.Count, least)
}
