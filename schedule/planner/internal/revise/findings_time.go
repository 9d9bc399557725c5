package revise

import (
	"fmt"
	"slices"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/belief"
)

// What makes a stall (the model's own measure of a slow core is 6 F an hour).
const (
	stallSlowKMin = 6 / 1.8 / 60
	stallLeast    = 45 * time.Minute
)

// creptK is a rise, 5 F, beyond which a core in its stall is not said to stand still.
const creptK = 5 / 1.8

// stalled is the code of a core that stands still and is no fault.
const stalled = "stall"

// stands says how long the last readings have stood still in the range of the stall.
func (v *Revision) stands(a *liveBatch) (run []belief.Reading, ok bool) {
	if a.believed == nil || !a.believed.Stalls {
		return nil, false
	}
	for _, r := range slices.Backward(a.readings) {
		if !r.Counts() {
			continue
		}
		if r.CoreC < belief.StallLowC || r.CoreC > belief.StallHighC {
			break
		}
		if len(run) > 0 && run[0].CoreC-r.CoreC > stallSlowKMin*(run[0].Minute-r.Minute)+belief.ProbeErrorK {
			break
		}
		run = append(run, r)
	}
	return run, len(run) > 1 && instant.Minutes(run[0].Minute-run[len(run)-1].Minute) >= stallLeast
}

// noteStall says that a core that stands still is the stall and no fault.
func (v *Revision) noteStall(a *liveBatch, add func(schedule.Finding)) {
	run, ok := v.stands(a)
	if !ok {
		return
	}
	t, last, first := a.live.Total(), run[0], run[len(run)-1]
	so := fmt.Sprintf("stood near %s for %s", v.day.Core(last.CoreC), v.span(last.Minute-first.Minute))
	if last.CoreC-first.CoreC > creptK {
		so = fmt.Sprintf("crept from %s to %s in %s", v.day.Core(first.CoreC), v.day.Core(last.CoreC), v.span(last.Minute-first.Minute))
	}
	add(about(a, stalled, fmt.Sprintf(
		"%s: %s. That is the stall: water leaving the surface takes the heat. Nothing is wrong with the fire or the probe; these times allow for it: off at about %s, between %s and %s.",
		a.batch.It.Dish.Name, so, v.foretold(a.on.at.Add(instant.Minutes(t.Expected))),
		v.clock(a.on.at.Add(instant.Minutes(t.Early))), v.clock(a.on.at.Add(instant.Minutes(t.Late))))))
}

// inStall says first of a piece whose times move because it stands in its stall that this is no fault.
func (v *Revision) inStall(a *liveBatch) string {
	if _, ok := v.stands(a); !ok {
		return ""
	}
	return "in its stall, and nothing is wrong; "
}

// noteLate says that a piece on the grate may miss its serving, with the chance
// of it; it is late only if it is expected after it.
func (v *Revision) noteLate(a *liveBatch, p *arrange.Placed, add func(schedule.Finding)) {
	code := v.lateness(a, p)
	if code == "" {
		return
	}
	t, rest := a.live.Total(), p.It.RestMinutes()
	if a.outOfReach() {
		within := "within a day"
		if a.neverComes() {
			within = "within two days"
		}
		add(about(a, schedule.NeverDone, fmt.Sprintf("%s: at the heat that it has now it does not come to %s %s. It needs more heat, or the kitchen oven.",
			a.batch.It.Dish.Name, v.day.Core(a.journey.TargetC), within)))
		return
	}
	ready := "expected off and ready at"
	if rest > 0 {
		ready = fmt.Sprintf("expected off at %s and, rested, ready at", v.foretold(a.on.at.Add(instant.Minutes(t.Expected))))
	}
	stall := ""
	if v.attempt.later == 0 { // else it is said with the hour that dinner moves to
		stall = v.inStall(a)
	}
	add(about(a, code, fmt.Sprintf("%s: %s%s %s; on a slow day at %s. Odds for %s: %.0f%%.",
		a.batch.It.Dish.Name, stall, ready, v.clock(a.on.at.Add(instant.Minutes(t.Expected+rest))),
		v.clock(a.on.at.Add(instant.Minutes(t.Late+rest))), v.clock(v.serve(a)), 100*p.Readiness().Chance()*a.fit())))
}

// never says whether an expected take-off, minutes from the put-on, only stands
// for none: the core does not get there.
func (a *liveBatch) never(minute float64) bool {
	return a.journey != nil && minute-a.journey.Now > belief.LongestAhead-1
}

func (v *Revision) lateness(a *liveBatch, p *arrange.Placed) string {
	switch {
	case a.outOfReach():
		return schedule.NeverDone
	case p.On-a.live.Total().Expected-p.It.RestMinutes() < float64(p.It.Serve):
		return schedule.Late
	case p.Readiness().Chance() < v.day.Req.Confidence-lateWorth:
		return schedule.MayBeLate
	}
	return ""
}

// noteEarly says how a piece that is done long before its serving waits, and
// until when it may.
func (v *Revision) noteEarly(l remainder, add func(schedule.Finding)) {
	i, why := v.troubled(l)
	if why != schedule.Early {
		return
	}
	a, p := l.bound[i], l.all[i]
	off := v.day.At(p.On - a.live.Total().Expected)
	text := fmt.Sprintf("%s: expected off at %s, %s before serving.", p.It.Dish.Name, v.foretold(off), v.span(v.serve(a).Sub(off).Minutes()))
	if p.Hold >= 0 {
		o, _ := v.day.ChosenHold(p)
		until := v.day.HeldUntil(p.On-a.live.Total().Expected, o.Minutes)
		if until.Before(v.serve(a)) {
			text += fmt.Sprintf(" It can be held until about %s, which is too short.", v.clock(until))
		} else {
			text += " It can be held until then."
		}
		text += " " + v.day.HoldText(p, o, p.It.Dish.Name)
	}
	add(about(a, schedule.Early, text))
}

// lateWorth is by how much a chance may miss what was asked before it is said.
const lateWorth = 0.01
