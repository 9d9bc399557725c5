package revise

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// overCoalsShare is the spread of the rest of a cook over the coals, of the spread of the
// whole: the pace that brought a piece to its reading does not foretell the pace after it
// (assumption, as for what cooks beside the coals).
const overCoalsShare = 1.3

// read says whether a piece over the coals goes by its core, and that was measured.
func (a *liveBatch) read() bool {
	w := a.way()
	return w.Direct && w.Stages() == 1 && w.State != nil && w.ModelDone > 0 && a.batch.It.Cut.Style != cut.Timed && a.lastRead() >= 0
}

// lastRead is the place among its cores of the newest that was read while it was on and is
// not doubted; -1 for none.
func (a *liveBatch) lastRead() int {
	for i := len(a.cores) - 1; i >= 0; i-- {
		if i < len(a.readings) && a.readings[i].Doubt != "" {
			continue
		}
		if !a.cores[i].At.Before(a.on.at) {
			return i
		}
	}
	return -1
}

// coalsWay is the way of a piece over the coals whose core was read: from there it takes
// what the model takes from that temperature on, be it late or early so far.
func (v *Revision) coalsWay(a *liveBatch) day.Way {
	w, e := a.way(), a.cores[a.lastRead()]
	read := e.At.Sub(a.on.at).Minutes()
	const errorK = belief.ProbeErrorK + belief.PlaceErrorK
	m := v.day.MinutesToCores(a.batch.It, a.batch.MassKg, w, e.C-errorK, e.C, w.PullC)
	usual := math.Exp(w.Spread.Median)
	rest, longer := math.Max(m[2]-m[1], 0)*usual, math.Max(m[1]-m[0], 0)*usual
	least := v.now.Sub(a.on.at).Minutes() + assemble.LeastLeft
	own := w.Spread
	at := func(z float64) float64 {
		wide := overCoalsShare * own.S
		if z > 0 {
			wide += overCoalsShare * own.Late
		}
		off := math.Hypot(rest*(math.Exp(wide*math.Abs(z))-1), longer*math.Abs(z))
		if z < 0 {
			off = -math.Hypot(rest*(1-math.Exp(-wide*math.Abs(z))), longer*math.Abs(z))
		}
		if e.C >= w.PullC { // it is done
			off = 0
		}
		return math.Max(read+math.Max(rest+off, 0), least)
	}
	w.First = spread.Pace{Early: at(-spread.ZTenth), Expected: at(0), Late: at(spread.ZTenth), Planned: at(v.day.Z)}
	whole := func(minutes float64) float64 { return math.Log(minutes / w.ModelDone) }
	w.Spread = spread.Between(whole(w.First.Early), whole(w.First.Expected), whole(w.First.Late))
	w.Spread.Grate = math.Min(own.Grate, 0.95*w.Spread.S)
	return w
}
