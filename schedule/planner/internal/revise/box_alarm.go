package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
)

// noteBoxAlarm asks for the surface of what waits in a cooler once its middle was read at its
// alarm or below it: a probe in the middle is an alarm only, and this one rings. A reading just
// under the surface, or of its coldest place, since then answers it.
func (v *Revision) noteBoxAlarm(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	alarm, has := safety.AlarmC(p.It.Piece(p.MassKg))
	if !has || a.heldIn() == schedule.HeldInOven || !a.boxed.set || a.readHold() || a.served.set || a.hotly.set || v.mealPast(a) || a.unshown() || v.firstHold(a) == schedule.HoldOven && a.heldIn() == "" {
		return
	}
	rings, hot := schedule.Entry{}, a.heldFrom() // it was surely above the line then
	for _, e := range v.log {
		if e.Dish != a.batch.It.Dish.ID || e.At.Before(a.heldFrom()) || e.At.After(v.now) {
			continue
		}
		switch e.Kind {
		case schedule.LogCore:
			if e.C > alarm {
				rings, hot = schedule.Entry{}, e.At
			} else if rings.At.IsZero() {
				rings = e
			}
		case schedule.LogOuter, schedule.LogColdest:
			rings = schedule.Entry{}
		}
	}
	if rings.At.IsZero() || rings.C <= safety.DangerHighC { // cold in its middle: that is said
		return
	}
	by := ""
	if at := hot.Add(instant.Minutes(safety.OutLimit(v.day.Air.AirC))); at.After(v.now.Add(reheatLeast)) {
		by = v.clock(at.Truncate(time.Minute))
	}
	for _, o := range slices.Backward(a.outers) { // as it was read there just before
		if rings.At.Sub(o.At) <= 20*time.Minute && o.C > safety.DangerHighC && !o.At.Before(a.heldFrom()) {
			return
		}
	}
	add(about(a, schedule.CodeHoldShort, fmt.Sprintf("Measure %s just under the surface now, and log it (outer): its middle was at %s at %s, and its alarm there is %s. Above %s: it stays there, or goes into an oven at %s. Just down to it: on the table within 1 hr. %s",
		a.batch.It.Dish.Name, v.day.Core(rings.C), v.clock(rings.At), v.day.Core(alarm), v.day.Core(safety.DangerHighC), v.day.Grate(ovenHoldC), v.belowText(by))))
}
