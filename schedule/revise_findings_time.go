package schedule

import (
	"fmt"
	"slices"
	"time"
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
func (v *revision) stands(a *afoot) (run []reading, ok bool) {
	if a.believed == nil || !a.believed.stalls {
		return nil, false
	}
	for _, r := range slices.Backward(a.readings) {
		if !r.counts() {
			continue
		}
		if r.coreC < stallLowC || r.coreC > stallHighC {
			break
		}
		if len(run) > 0 && run[0].coreC-r.coreC > stallSlowKMin*(run[0].minute-r.minute)+probeErrorK {
			break
		}
		run = append(run, r)
	}
	return run, len(run) > 1 && minutes(run[0].minute-run[len(run)-1].minute) >= stallLeast
}

// noteStall says that a core that stands still is the stall and no fault.
func (v *revision) noteStall(a *afoot, add func(Finding)) {
	run, ok := v.stands(a)
	if !ok {
		return
	}
	t, last, first := a.live.total(), run[0], run[len(run)-1]
	so := fmt.Sprintf("has stood near %s for %s", v.day.core(last.coreC), v.span(last.minute-first.minute))
	if last.coreC-first.coreC > creptK {
		so = fmt.Sprintf("has crept from %s to %s in %s", v.day.core(first.coreC), v.day.core(last.coreC), v.span(last.minute-first.minute))
	}
	add(about(a, stalled, Info, fmt.Sprintf(
		"%s %s. That is the stall: water leaving the surface takes the heat. It is no fault of fire or probe, and these times count with it: off at about %s, between %s and %s.",
		a.batch.it.dish.Name, so, v.clock(a.on.at.Add(minutes(t.expected))),
		v.clock(a.on.at.Add(minutes(t.early))), v.clock(a.on.at.Add(minutes(t.late))))))
}

// noteLate says that a piece on the grate may miss its serving, with the chance
// of it; it is late only if it is expected after it.
func (v *revision) noteLate(a *afoot, p *placed, add func(Finding)) {
	code := v.lateness(a, p)
	if code == "" {
		return
	}
	t, rest := a.live.total(), p.it.restMinutes()
	if a.never(t.expected) {
		add(about(a, code, Warning, fmt.Sprintf("%s: at the heat that it has now it does not come to %s within two days.",
			a.batch.it.dish.Name, v.day.core(a.journey.targetC))))
		return
	}
	add(about(a, code, Warning, fmt.Sprintf(
		"%s: expected off at %s and, rested, ready at %s; on a slow day at %s. The chance for %s is about %.0f %%.",
		a.batch.it.dish.Name, v.clock(a.on.at.Add(minutes(t.expected))), v.clock(a.on.at.Add(minutes(t.expected+rest))),
		v.clock(a.on.at.Add(minutes(t.late+rest))), v.clock(v.serve(a)), 100*p.readiness().chance())))
}

// never says whether an expected take-off, minutes from the put-on, only stands
// for none: the core does not get there.
func (a *afoot) never(minute float64) bool {
	return a.journey != nil && minute-a.journey.now > longestAhead-1
}

// Codes of a piece that may not be ready.
const (
	late      = "late"        // expected after its serving
	mayBeLate = "may-be-late" // expected before it, but not at the asked chance
)

func (v *revision) lateness(a *afoot, p *placed) string {
	switch {
	case p.on-a.live.total().expected-p.it.restMinutes() < float64(p.it.serve):
		return late
	case p.readiness().chance() < v.day.req.Confidence-lateWorth:
		return mayBeLate
	}
	return ""
}

// early is the code of a piece that will have to wait for long.
const early = "early"

// noteEarly says how a piece that is done long before its serving waits, and
// until when it may.
func (v *revision) noteEarly(l left, add func(Finding)) {
	i, why := v.troubled(l)
	if why != early {
		return
	}
	a, p := l.bound[i], l.all[i]
	off := v.day.at(p.on - a.live.total().expected)
	text := fmt.Sprintf("%s: expected off at %s, %s before serving.", p.it.dish.Name, v.clock(off), v.span(v.serve(a).Sub(off).Minutes()))
	if p.hold >= 0 {
		o, _ := v.day.chosenHold(p)
		until := off.Add(minutes(o.minutes))
		if until.Before(v.serve(a)) {
			text += fmt.Sprintf(" It can be held until about %s, which is too short.", v.clock(until))
		} else {
			text += " It can be held until then."
		}
		text += " " + v.day.holdText(p, o, p.it.dish.Name)
	}
	add(about(a, early, Info, text))
}

// lateWorth is by how much a chance may miss what was asked before it is said.
const lateWorth = 0.01
