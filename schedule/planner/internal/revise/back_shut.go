package revise

import (
	"fmt"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
)

// shutUnderFood is since when both vents are shut, as told last, with food on the grate that is to be eaten; and a piece that
// went back on it out of the oven since then, where one did.
func (v *Revision) shutUnderFood() (since time.Time, back *liveBatch, ok bool) {
	top, bottom, s, _ := v.ventsTold()
	if top != 0 || bottom != 0 || s.from.IsZero() || s.ended || v.phases < 1 || !v.foodOn() || !v.fireWanted() || v.day.InQuiet(v.now) || v.stormOpens() || v.grate.sinks() {
		return since, nil, false
	}
	if _, dead := v.grate.dead(); dead && !v.airFirst() { // it is built anew
		return since, nil, false
	}
	for _, a := range v.batches {
		if n := len(a.indoors); n > 0 && a.where == cooking && !a.condemned && !v.isIndoors(a) && a.indoors[n-1].to.After(s.from) {
			back = a
		}
	}
	return s.from, back, true
}

// shutStep opens the vents under what was put back over them, and says where it goes if that brings no heat.
func (v *Revision) shutStep(p *schedule.Plan) (schedule.Step, bool) {
	since, back, ok := v.shutUnderFood()
	if !ok || back == nil && v.setsVents() {
		return schedule.Step{}, false
	}
	level := v.grate.levelAt(v.now, v.plannedLevel)
	text := fmt.Sprintf("Both vents have been shut since %s, and food is on the grate: open both fully, wait two minutes before you lift the lid, and stand aside. Read the grate in 15 min. No hotter by then: light a chimney.", v.clock(since))
	if back != nil {
		name, oven := back.batch.It.Dish.Name, v.day.Grate(back.rawOvenC())
		text = fmt.Sprintf("Both vents have been shut since %s, and food is back on the grate: open both fully, wait two minutes before you lift the lid, and stand aside. Read the grate in 15 min. Under %s by then: back into the oven at %s with %s.", v.clock(since), v.day.Grate(safety.LowHeatC), oven, name)
	}
	return v.steerStep(p, schedule.StepSetVents, v.now, 2, level, text, "both vents are shut, and the coals get no air"), true
}
