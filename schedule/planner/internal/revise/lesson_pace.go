package revise

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/steer"
	"example.com/cookday/schedule/planner/internal/spread"
)

// LeanOf is the pace that a record has.
func LeanOf(own *schedule.OwnGrill) spread.Lean {
	if f, ok := own.Figure(schedule.OwnPace); ok {
		return spread.Lean{Mean: math.Log(f.Times), SD: f.Spread}
	}
	return spread.Unknown()
}

// undoneK is how far below its target a piece may come off and still be one that was cooked to its end.
const undoneK = 6.0

// lessonPace is what the pieces of a finished day teach of the pace of this grill's cooks: one cook, however many pieces lay on
// its grate.
func (v *Revision) lessonPace(l spread.Lean) (after spread.Lean, taught bool) {
	off, sd, n := 0.0, 0.0, 0.0
	for _, a := range v.batches {
		if !v.teachesPace(a) {
			continue
		}
		w := a.first.Way
		off += math.Log(a.off.at.Sub(a.on.at).Minutes() / w.Total().Expected)
		wide := w.Spread.S + w.Spread.Late/2
		sd += math.Sqrt(math.Max(wide*wide-l.SD*l.SD, wide*wide/4))
		n++
	}
	if n == 0 {
		return l, false
	}
	return l.After(l.Mean+off/n, sd/n), true
}

// teachesPace says whether a piece cooked beside the coals from its put-on to its target, as logged.
func (v *Revision) teachesPace(a *liveBatch) bool {
	if a.first == nil || !a.on.logged || !a.off.logged || a.gone || a.condemned || len(a.stands) > 0 || v.inOven(a) {
		return false
	}
	w := a.first.Way
	if w.Direct || w.Sear || w.Spread.S <= 0 || a.batch.It.Cut.Style == cut.Timed || !(a.off.at.Sub(a.on.at).Minutes() > 1) {
		return false
	}
	n := len(a.cores)
	return n == 0 || a.batch.It.TargetC == 0 || a.cores[n-1].C >= a.batch.It.TargetC-undoneK
}

// withPace is a record of one more cook whose pace was learned; counted says whether its fire taught, too.
func withPace(r *steer.Record, counted bool) *steer.Record {
	switch {
	case counted:
		return r
	case r == nil:
		return &steer.Record{Cooks: 1, Figures: map[string]steer.Figure{}}
	}
	next := *r
	next.Cooks++
	return &next
}

// PaceWords say by how much cooks take longer on this grill, empty where that is next to nothing.
func PaceWords(l spread.Lean) string {
	const worth = 0.01
	switch {
	case l.Mean > worth:
		return fmt.Sprintf("Low cooks take %.0f percent longer here than usual.", 100*(math.Exp(l.Mean)-1))
	case l.Mean < -worth:
		return fmt.Sprintf("Low cooks take %.0f percent less time here than usual.", 100*(1-math.Exp(l.Mean)))
	}
	return ""
}
