package revise

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/unit"
)

// From here on a piece that tenderness decides of may be done, whatever the clock says: a rack
// in the range in which it usually bends, a joint within three degrees of its target, which is
// what a probe is off by (common practice, no source).
const (
	feltWithinK = 3 / 1.8
	feltAgain   = 20 * time.Minute
	feelOrdinal = 90 // of the step among the looks at a piece, which are counted from one
)

var (
	bendsFromC = unit.FToC(195) // as schedule.BendText has it
	tenderC    = unit.FToC(190) // no target of tenderness lies below
)

// feltFromC is the core from which a piece is felt, degC; infinite where the thermometer decides.
func (a *liveBatch) feltFromC() float64 {
	switch it := a.batch.It; {
	case it.ByTheBend():
		return bendsFromC
	case it.Cut.Style == cut.Tough && a.way().PullC >= tenderC:
		return a.way().PullC - feltWithinK
	}
	return math.Inf(1)
}

// mayBeDone says whether a piece on the fire was read lately where tenderness decides, and not
// yet at its target.
func (v *Revision) mayBeDone(a *liveBatch) bool {
	return a != nil && a.where == cooking && !a.colder && !a.suspect && !a.condemned && a.believed != nil && len(a.believed.Nodes) > 0 &&
		!a.atTarget() && !a.way().Sear && a.readAt() >= a.feltFromC() && v.now.Sub(a.readWhen()) <= stillThere
}

// feelSteps ask for the bend, or for the feel of the probe, of what may be done now.
func (v *Revision) feelSteps(p *schedule.Plan, l remainder) (out []schedule.Step) {
	for _, a := range l.bound {
		if !v.mayBeDone(a) {
			continue
		}
		it, does, done := a.batch.It, "feel it now with the probe", "it slides in and out with no pull"
		if it.ByTheBend() {
			does, done = "bend it now", "the rack bends and its surface cracks"
		}
		text := fmt.Sprintf("%s: it is at %s, %s. If %s, it is done: take it off. If not", it.Dish.Name, v.day.Core(a.readAt()), does, done)
		if at := a.readWhen().Add(feltAgain); at.After(v.now) {
			text += fmt.Sprintf(", look again at %s.", v.clock(at))
		} else {
			text += fmt.Sprintf(", look again in %s.", v.span(feltAgain.Minutes()))
		}
		if a.batch.Count > 1 {
			text += " Each piece by itself."
		}
		out = append(out, schedule.Step{
			ID: plans.StepID(p.ID, it.Dish.ID, a.batch.Number, schedule.StepLook, feelOrdinal), At: v.now, Window: plans.FixedWindow(v.now), Kind: schedule.StepLook,
			Dish: it.Dish.ID, Batch: a.batch.Number, Attended: true, Minutes: measureMinutes, Text: text, Why: "tenderness decides, not the number",
		})
	}
	return out
}
