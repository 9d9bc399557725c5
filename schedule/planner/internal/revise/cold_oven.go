package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/belief"
)

// Figures of an oven that does not hold (assumptions): its thermometer so far below its
// setting, or the meat so far below that and still falling, K.
const (
	ovenCoolK = 10 / 1.8
	meatFellK = 4 / 1.8
	soakedMin = 90 // minutes after which the outside of what lies in an oven is near its air
)

// noteOven says of a piece that waits in an oven that the oven does not hold: by its own
// thermometer, or for the meat falls below what the oven is set to.
func (v *Revision) noteOven(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	if a.where != off || !a.boxed.set || a.heldIn() != schedule.HeldInOven || a.served.set || a.hotly.set || a.condemned || a.readHold() || v.mealPast(a) {
		return
	}
	setC := v.day.OvenC()
	if p.Hold >= 0 && p.Options[p.Hold].OvenC > 0 {
		setC = p.Options[p.Hold].OvenC
	}
	if setC == 0 {
		setC = ovenHoldC
	}
	why := ""
	e, ok := v.ovenRead(a)
	if at, off := v.ovenOff(a); off {
		why = fmt.Sprintf("The oven went off at %s: it does not hold.", v.clock(at))
	} else if ok && e.C < safety.DangerHighC+ovenCoolK {
		why = fmt.Sprintf("The oven was at %s at %s: it does not hold.", v.day.Grate(e.C), v.clock(e.At))
	} else if from, to, falls := falling(v.heldReadings(a)); falls && to.C < setC-ovenCoolK && !ok {
		why = fmt.Sprintf("It fell from %s to %s in an oven that is set to %s: it may have switched itself off.", v.day.Core(from.C), v.day.Core(to.C), v.day.Grate(setC))
	} else if last, outer := v.outside(a); outer && last.C < setC-ovenCoolK && !(ok && last.At.Sub(e.At) < soakedMin*time.Minute) {
		why = fmt.Sprintf("It is at %s outside, after %s in an oven that is set to %s: it may have switched itself off.", v.day.Core(last.C), v.day.About(last.At.Sub(a.heldFrom()).Minutes()), v.day.Grate(setC))
	}
	if why == "" {
		return
	}
	add(about(a, schedule.CodeHoldShort, fmt.Sprintf("Measure %s just under the surface now, and look at the oven: is it on? %s At %s or more: oven on, at %s, and measure again in 30 min. Below that: reheat it to 165 °F (74 °C) in an oven at %s within 2 hr of falling there, once, or throw it away.",
		a.batch.It.Dish.Name, why, v.day.Core(safety.DangerHighC), v.day.Grate(setC), v.day.Grate(undoneOvenC))))
}

// ovenRead is what the oven's thermometer showed last since a piece waits in it.
func (v *Revision) ovenRead(a *liveBatch) (last schedule.Entry, ok bool) {
	for _, e := range v.log {
		if e.Kind == schedule.LogOven && !e.At.Before(a.heldFrom()) {
			last, ok = e, true
		}
	}
	return last, ok
}

// ovenOff is when the oven in which a piece waits went off; false where nobody said so, or its
// thermometer has shown heat since.
func (v *Revision) ovenOff(a *liveBatch) (at time.Time, off bool) {
	for _, e := range v.log {
		switch {
		case e.At.Before(a.boxed.at):
		case e.Kind == schedule.LogOvenOff:
			at, off = e.At, true
		case e.Kind == schedule.LogOven && e.C > safety.DangerHighC+ovenCoolK:
			off = false
		}
	}
	return at, off
}

// outside is what the outside of a piece last showed, long enough after it went into an oven.
func (v *Revision) outside(a *liveBatch) (last schedule.Entry, ok bool) {
	for _, e := range v.log {
		if e.Kind == schedule.LogOuter && e.Dish == a.batch.It.Dish.ID && e.At.Sub(a.heldFrom()).Minutes() >= soakedMin {
			last, ok = e, true
		}
	}
	return last, ok
}

// falling are the last two readings of one place, where the newer is well below the older.
func falling(all []belief.Held) (from, to belief.Held, falls bool) {
	for _, outer := range []bool{true, false} {
		n := 0
		for _, h := range slices.Backward(all) {
			switch {
			case h.Outer != outer:
				continue
			case n == 0:
				to = h
			case h.C-to.C > meatFellK:
				return h, to, true
			}
			if n++; n == 2 {
				break
			}
		}
	}
	return from, to, false
}
