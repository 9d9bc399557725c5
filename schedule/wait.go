package schedule

import (
	"fmt"
	"math"
	"sort"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/safety"
)

// chosenHold is how a batch waits, its open stand settled; false if it does not.
func (d *day) chosenHold(p *placed) (holdOption, bool) {
	if p.hold < 0 {
		return holdOption{}, false
	}
	return d.vented(p, p.options[p.hold], p.longestWait()), true
}

// longestWait is how long it may have to stay hot: done early, served late, or
// eaten after a journey.
func (p *placed) longestWait() float64 { return p.earlyGap() + p.it.travelMinutes() }

// holdAdvice says how a finished batch may wait: what works first, gentlest first.
func (d *day) holdAdvice(p *placed) []HoldAdvice {
	var out []HoldAdvice
	early, needed := p.on-p.way.total().early, p.longestWait()
	for i, o := range p.options {
		o = d.vented(p, o, needed)
		h := HoldAdvice{
			Method: o.method, Chosen: i == p.hold, LimitMinutes: o.minutes, VentMinutes: o.vent, Until: d.at(early - o.minutes),
			Rule: o.rule.Sentence, Text: d.holdText(p, o, p.it.dish.Name),
		}
		d.foresee(p, o, &h)
		out = append(out, h)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].LimitMinutes >= needed && out[j].LimitMinutes < needed })
	return out
}

// courseStep is the grid of a predicted hold, minutes.
const courseStep = 30

// foresee follows a hold from the expected take-off to the table: what a probe in
// the middle shows, what the outer layer has, and what it has at the poor end.
func (d *day) foresee(p *placed, o holdOption, h *HoldAdvice) {
	if p.way.state == nil {
		return
	}
	off := p.on - p.way.total().expected
	whole := off - float64(p.it.serve) + p.it.travelMinutes()
	if whole < 0 {
		return
	}
	usual := follow(p.way.state, d.course(p.way, o.method, p.count, o.vent, expectedEnd))
	poor := follow(p.way.state, d.course(p.way, o.method, p.count, o.vent, poorEnd))
	at := func(m float64) HoldPoint {
		a, b := usual.after(m), poor.after(m)
		return HoldPoint{At: d.at(off - m), CoreC: heat.ProbeCoreC(p.way.pullC, a.CoreC()), OuterC: a.OuterC(), LowC: b.OuterC()}
	}
	if h.Chosen {
		for m := 0.0; m < whole; m += courseStep {
			h.Course = append(h.Course, at(m))
		}
	}
	last := at(whole)
	h.CoreC, h.OuterC, h.OuterLowC = last.CoreC, last.OuterC, last.LowC
	if h.Chosen {
		h.Course = append(h.Course, last)
	}
}

// standText is the open stand before a hold.
func (d *day) standText(p *placed, o holdOption, name string) string {
	if o.vent == 0 {
		return ""
	}
	if p.way.with != "" {
		return fmt.Sprintf("Loosen the wrapping of %s and let stand about %s until it stops cooking. ", name, d.about(o.vent))
	}
	return fmt.Sprintf("Let %s stand open about %s until it stops cooking. ", name, d.about(o.vent))
}

// holdText says how to wait, from the heat on.
func (d *day) holdText(p *placed, o holdOption, name string) string {
	return d.standText(p, o, name) + d.keepText(o, name)
}

// keepText says how to hold what has stood.
func (d *day) keepText(o holdOption, name string) string {
	limit := d.about(shortened(o.minutes))
	switch o.method {
	case HoldBox:
		return fmt.Sprintf("Close %s, wrapped, in an insulated box with towels, warmed with hot water first. Good for about %s off the heat: until it is %s just under the surface.",
			name, limit, d.core(safety.DangerHighC))
	case HoldOven:
		return fmt.Sprintf("Put %s, wrapped, into the oven at %s.", name, d.grate(d.ovenC()))
	case HoldGrill:
		return fmt.Sprintf("Leave %s, wrapped, on the grate and all but shut the vents. Good for about %s.", name, limit)
	case HoldCounter:
		return fmt.Sprintf("Leave %s on the counter, %s at most.", name, limit)
	}
	return fmt.Sprintf("Tent %s loosely with foil. Good for about %s.", name, limit)
}

// shortened is a limit in minutes as a cook says it, never longer: whole quarters of
// an hour, below half an hour fives.
func shortened(m float64) float64 {
	step := 15.0
	if m < 30 {
		step = 5
	}
	return math.Floor(m/step) * step
}

// doneEarly is what to do when a dish is done at the early end of its window. It is
// empty where that is no matter.
func (d *day) doneEarly(p *placed) string {
	o, ok := d.chosenHold(p)
	if !ok || p.earlyGap() < p.it.restMinutes()+earlyMatters {
		return ""
	}
	off := d.at(p.on - p.way.total().early)
	text := fmt.Sprintf("Done early, at about %s? That is as common as late. Take it off. %s", localClock(quarterDown(off)),
		d.holdText(p, o, p.it.dish.Name))
	if until := off.Add(minutes(o.minutes)); until.Before(d.at(float64(p.it.serve) - p.it.travelMinutes())) {
		text += fmt.Sprintf(" That carries it to about %s, not to the table: then it goes into an oven at %s or more, or is eaten.", localClock(quarterDown(until)), d.grate(warmOvenC))
	}
	return text
}

// holdEnds is the look at a piece whose hold is likely to end before it is eaten.
func (it *itinerary) holdEnds(base Step, p *placed, o holdOption, off Window) {
	d, s := it.d, base
	s.Kind, s.Window, s.Attended, s.Minutes = StepLook, shift(off, shortened(o.minutes)), true, 2
	serve := d.at(float64(p.it.serve))
	if !s.Window.Expected.Before(serve.Add(-quarter)) || d.inQuiet(s.Window.Expected) {
		return
	}
	s.Window.Late = earlier(s.Window.Late, serve)
	s.At = s.Window.Expected
	s.Text = fmt.Sprintf("Measure %s just under the surface. Near %s it is at the end of its hold: into an oven at %s or more with it, or eat it.",
		it.name(p), d.core(safety.DangerHighC), d.grate(warmOvenC))
	s.Why = fmt.Sprintf("held like this it is good for about %s", d.about(shortened(o.minutes)))
	it.addSecond(s)
}

// earlyMatters is from how many minutes of waiting on a dish done early needs words.
const earlyMatters = 30

// warmOvenC is the lowest setting that keeps the outer layer above the line.
var warmOvenC = celsius(150)

// quarterDown is the quarter of an hour before an instant: a cook's clock.
func quarterDown(t time.Time) time.Time { return t.Truncate(quarter) }

// noteHolds says it where the early end of a window cannot be held.
func (d *day) noteHolds(all []*placed) {
	told := map[*item]float64{} // the plan tells one limit a dish: that of its first batch
	for _, p := range all {
		if p.it.cut.Style == cut.Timed {
			continue
		}
		limit := p.it.restMinutes() + p.it.slack()
		if p.hold >= 0 {
			limit = p.options[p.hold].minutes
			d.noteGrillHold(p, all)
		}
		if first, ok := told[p.it]; ok {
			limit = math.Min(limit, first)
		} else {
			told[p.it] = limit
		}
		switch {
		case math.Max(p.earlyGap(), p.off-float64(p.it.serve)) > limit+holdTolerance: // a piece may be off for hours
			d.find(finding(codeHoldShort, p.it.path("hold"), p.it, d.shortHoldText(p, p.labelAmong(all), limit)))
		case p.it.travelMinutes() > 0 && p.longestWait() > limit+holdTolerance:
			d.find(finding("travel-short", p.it.path("travel"), p.it, d.travelText(p, limit)))
		}
	}
}

// labelAmong is the name of a batch where others of its dish may have to be told from it.
func (p *placed) labelAmong(all []*placed) string {
	n := 0
	for _, o := range all {
		if o.it == p.it {
			n++
		}
	}
	return p.label(n)
}

// shortHoldText says how far a hold carries that is too short on a fast day, or even on
// an ordinary one.
func (d *day) shortHoldText(p *placed, name string, limit float64) string {
	total, serve := p.way.total(), float64(p.it.serve)
	when, off := "on a fast day", p.on-total.early
	if p.on-total.expected-serve > limit+holdTolerance {
		when, off = "even on an ordinary day", p.on-total.expected
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
