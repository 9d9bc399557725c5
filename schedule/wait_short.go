package schedule

import (
	"fmt"
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/unit"
)

// noteHolds says it where the early end of a window cannot be held.
func (d *day) noteHolds(all []*placed) {
	told := map[*item]*placed{} // the plan tells the limits of a dish as they are for its first batch
	for _, p := range all {
		if p.it.cut.Style == cut.Timed {
			continue
		}
		if told[p.it] == nil {
			told[p.it] = p
		}
		limit := d.standsFor(p.it)
		if p.hold >= 0 {
			limit = math.Min(p.options[p.hold].minutes, told[p.it].limitOf(p.options[p.hold].method))
			d.noteGrillHold(p, all)
		}
		switch {
		case math.Max(p.earlyGap(), p.off-float64(p.it.serve)) > limit+holdTolerance: // a piece may be off for hours
			d.find(finding(codeHoldShort, p.it.path("hold"), p.it, d.shortHoldText(p, p.labelAmong(all, d.req.Units), limit)))
		case p.it.travelMinutes() > 0 && p.longestWait() > limit+holdTolerance:
			d.find(finding("travel-short", p.it.path("travel"), p.it, d.travelText(p, limit)))
		}
	}
}

// limitOf is how long a way of waiting is good for, without end where a piece has no such way.
func (p *placed) limitOf(method string) float64 {
	for _, o := range p.options {
		if o.method == method {
			return o.minutes
		}
	}
	return math.Inf(1)
}

// labelAmong is the name of a batch where others of its dish may have to be told from it.
func (p *placed) labelAmong(all []*placed, u unit.System) string {
	n := 0
	for _, o := range all {
		if o.it == p.it {
			n++
		}
	}
	return p.label(n, u)
}

// shortHoldText says how far a hold carries that is too short on a fast day, or even on
// an ordinary one.
func (d *day) shortHoldText(p *placed, name string, limit float64) string {
	serve := float64(p.it.serve)
	when, off := "on a fast day", p.on-p.took().early
	if p.on-p.took().expected-serve > limit+holdTolerance {
		when, off = "even on an ordinary day", p.on-p.took().expected
	}
	if limit < bestAtOnce {
		return fmt.Sprintf("%s: %s done at %s, %s before it is served, and best eaten at once.%s",
			name, when, localClock(d.at(off)), d.about(off-serve), d.holdHelp(p))
	}
	return fmt.Sprintf("%s: %s done at %s, and then good until about %s, not until %s.%s",
		name, when, localClock(d.at(off)), localClock(quarterDown(d.at(off-limit))), localClock(d.at(serve)), d.holdHelp(p))
}

// bestAtOnce is the limit in minutes below which a piece is hardly held at all.
const bestAtOnce = 15

// looseConfidence is the chance below which asking for less is no advice (assumption).
const looseConfidence = 0.65

// holdHelp is what would help a dish that may be done too early: a way of waiting that
// the request does not have, or a later start at a smaller chance.
func (d *day) holdHelp(p *placed) string {
	var help []string
	if d.req.Oven == nil && p.hold >= 0 {
		help = append(help, "a warm oven")
	}
	if sure := d.req.Confidence; sure > looseConfidence && p.way.believed == nil { // it is not on yet
		help = append(help, fmt.Sprintf("asking for less than %.0f %%, so that it goes on later", 100*sure))
	}
	if len(help) == 0 {
		return ""
	}
	return " What helps: " + listed(help, "or") + "."
}

func (d *day) travelText(p *placed, limit float64) string {
	name := p.it.dish.Name
	if p.hold < 0 {
		return fmt.Sprintf("%s is no food to travel hot: it keeps %s and the way takes %s. Cook it there, or carry it cold.", name, d.about(shortened(limit)), d.about(p.it.travelMinutes()))
	}
	return fmt.Sprintf("On a fast day %s waits and travels %s in all, and the box is good for about %s. Measure on arrival; a warm oven before you leave would help.",
		name, d.about(p.longestWait()), d.about(shortened(limit)))
}

// noteGrillHold says it where the fire is still needed by others while something is
// to be held over it.
func (d *day) noteGrillHold(p *placed, all []*placed) {
	if p.options[p.hold].method != HoldGrill {
		return
	}
	last := p.off
	for _, o := range all {
		last = math.Min(last, o.off)
	}
	if last < p.off-holdTolerance {
		d.find(finding("hold-grill-busy", p.it.path("hold"), p.it, fmt.Sprintf(
			"The fire is needed until %s, so %s cannot be held over it from %s on: use a box or the oven.", localClock(d.at(last)), p.it.dish.Name, localClock(d.at(p.off)))))
	}
}

// holdTolerance is how far, in minutes, the early end may overrun a hold before
// it is worth saying.
const holdTolerance = 0.5
