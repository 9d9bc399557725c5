package revise

import (
	"math"
	"slices"
	"time"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/assemble"
)

// attempt is one way to meet what is left of the day.
type attempt struct {
	later   int  // minutes that serving is moved by
	halfway bool // what is on the grate is counted at its expected end, not at the asked chance
	all     bool // and so is what is not on yet
	forced  bool // nothing later is tried: what came off too late to rest does not stand in the way
	aside   bool // what is on the grate and will not be done in time makes room now
	alone   bool // nothing goes on any more
}

// delays are how much later than the least that may do serving is tried, minutes.
var delays = []int{0, 20, 40, 60, 90, 120, 180, 240, 360, longestDelay}

// longestDelay is the most minutes that serving is moved by for what is not on yet.
const longestDelay = 480

// soonEnough is by how many minutes more than it must serving moves for the asked chance
// before what is expected counts (assumption).
const soonEnough = 60

// longestSameDay is by how many minutes more than what is on the fire is expected to take
// dinner moves on the same day, for what goes on after it (assumption).
const longestSameDay = 240

// longestSure is the most minutes that dinner moves only to be as sure as was asked
// (assumption).
const longestSure = 360

// longestWait is the most minutes that serving is moved by for what is on the fire
// (assumption: beyond a day it is another meal).
const longestWait = 24 * 60

// attempts are in the order in which they are taken: dinner is moved last, and by as
// little as it can. It moves where what is on the fire is expected too late for it, to
// where that has the asked chance.
func (v *Revision) attempts() []attempt {
	if v.surely {
		return []attempt{{}}
	}
	likely := v.delay(false)
	sure := min(v.delay(true), max(longestWait, likely))
	var out []attempt
	if v.likely {
		out = []attempt{{later: likely, halfway: true, all: true}}
	}
	if likely == 0 {
		out = []attempt{{}, {halfway: true}, {halfway: true, all: true}}
		sure = 0
	}
	var surely, likelier []attempt
	for _, more := range delays {
		if sure+more > 0 && more <= soonEnough {
			surely = append(surely, attempt{later: sure + more})
		}
		if likely > 0 && more <= longestSameDay { // before dinner waits for the next day
			likelier = append(likelier, attempt{later: likely + more, halfway: true, all: true})
		}
	}
	if sure > longestSure { // nobody waits for so long only to be sure
		surely, likelier = likelier, surely
	}
	out = append(append(out, surely...), likelier...)
	for _, more := range delays {
		if more > soonEnough {
			out = append(out, attempt{later: sure + more, forced: more == longestDelay})
		}
	}
	if likely == 0 { // what is not on yet has no hour of the evening at the asked chance
		for _, more := range delays[1:] {
			out = append(out, attempt{later: more, halfway: true, all: true})
		}
	}
	for _, more := range []int{0, 40, 90, 240} {
		out = append(out, attempt{later: likely + more, halfway: likely+more == 0, all: likely+more == 0, aside: true})
	}
	return out
}

// delayStep is what serving is moved by, minutes: hours that are easily kept in mind.
const delayStep = 5

// slackMinutes is what rounding makes of an instant.
const slackMinutes = 1

// delay is by how many minutes serving must move for what is on the fire to be ready at
// the asked chance, or else as expected.
func (v *Revision) delay(asked bool) int {
	most := 0.0
	for _, a := range v.batches {
		if a.where == cooking && !a.condemned && !a.outOfReach() {
			most = math.Max(most, v.readyAfter(a, asked).Sub(v.serve(a)).Minutes()-slackMinutes)
			if most > 0 { // and what comes off now is rested
				most = math.Max(most, v.soonestReady(a).Sub(v.serve(a)).Minutes())
			}
		}
	}
	return int(math.Ceil(most/delayStep)) * delayStep
}

// readyAfter is when a piece on the fire is rested, at the asked chance or as expected.
func (v *Revision) readyAfter(a *liveBatch, asked bool) time.Time {
	t := a.live.Total()
	minutes := t.Expected
	if asked {
		minutes = t.Planned
	}
	return a.on.at.Add(instant.Minutes(minutes + a.batch.It.RestMinutes()))
}

// neverComes says whether a piece on the fire does not come to its target at all, as things
// stand.
func (a *liveBatch) neverComes() bool {
	return a.believed != nil && a.believed.OutOfReach() || a.never(a.live.Total().Expected)
}

// outOfReach says whether a piece on the fire is not done within a day as things stand:
// no meal waits for it.
func (a *liveBatch) outOfReach() bool {
	if a.where != cooking || a.journey == nil {
		return false
	}
	t := a.live.Total()
	return a.neverComes() || t.Expected-a.journey.Now > longestWait
}

// tooLateToRest says whether something came off, or can come off at the earliest, or is
// expected off, too late to be rested by its serving.
func (v *Revision) tooLateToRest() bool {
	return slices.ContainsFunc(v.batches, func(a *liveBatch) bool {
		rest := instant.Minutes(a.batch.It.RestMinutes())
		switch {
		case a.where == waiting, a.served.set, a.condemned && a.where == cooking: // for what is thrown away nobody waits
			return false
		case a.where == off:
			return a.off.at.Add(rest).After(v.serve(a))
		case !a.condemned && !a.outOfReach() && v.readyAfter(a, false).After(v.serve(a).Add(slackMinutes*time.Minute)):
			return true
		}
		return v.soonestReady(a).After(v.serve(a))
	})
}

// soonestReady is when what is on the fire is rested if it comes off at once.
func (v *Revision) soonestReady(a *liveBatch) time.Time {
	return v.now.Add(2 * assemble.LeastLeft * time.Minute).Add(instant.Minutes(a.batch.It.RestMinutes()))
}
