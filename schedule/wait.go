package schedule

import (
	"fmt"
	"math"
	"sort"
	"time"

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
	early, needed := p.on-p.took().early, p.longestWait()
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
