package assemble

import (
	"fmt"
	"math"
	"sort"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// holdAdvice says how a finished batch may wait: what works first, gentlest first.
func (d *Assembler) holdAdvice(p *arrange.Placed) []schedule.HoldAdvice {
	var out []schedule.HoldAdvice
	early, needed := p.On-p.Took().Early, p.LongestWait()
	for i, o := range p.Options {
		o = d.Vented(p, o, needed)
		h := schedule.HoldAdvice{
			Method: o.Method, Chosen: i == p.Hold, LimitMinutes: o.Minutes, VentMinutes: o.Vent, Until: d.At(early - o.Minutes),
			Rule: o.Rule.Sentence, Text: d.HoldText(p, o, p.It.Dish.Name),
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
func (d *Assembler) foresee(p *arrange.Placed, o day.HoldOption, h *schedule.HoldAdvice) {
	if p.Way.State == nil {
		return
	}
	off := p.On - p.Way.Total().Expected
	whole := off - float64(p.It.Serve) + p.It.TravelMinutes()
	if whole < 0 {
		return
	}
	usual := day.Follow(p.Way.State, d.Course(p.Way, o.Method, p.Count, o.Vent, day.ExpectedEnd))
	poor := day.Follow(p.Way.State, d.Course(p.Way, o.Method, p.Count, o.Vent, day.PoorEnd))
	at := func(m float64) schedule.HoldPoint {
		a, b := usual.After(m), poor.After(m)
		return schedule.HoldPoint{At: d.At(off - m), CoreC: heat.ProbeCoreC(p.Way.PullC, a.CoreC()), OuterC: a.OuterC(), LowC: b.OuterC()}
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
func (d *Assembler) standText(p *arrange.Placed, o day.HoldOption, name string) string {
	if o.Vent == 0 {
		return ""
	}
	if p.Way.With != "" {
		return fmt.Sprintf("Loosen the wrapping of %s and let stand about %s until it stops cooking. ", name, d.About(o.Vent))
	}
	return fmt.Sprintf("Let %s stand open about %s until it stops cooking. ", name, d.About(o.Vent))
}

// HoldText says how to wait, from the heat on.
func (d *Assembler) HoldText(p *arrange.Placed, o day.HoldOption, name string) string {
	return d.standText(p, o, name) + d.keepText(o, name)
}

// keepText says how to hold what has stood.
func (d *Assembler) keepText(o day.HoldOption, name string) string {
	limit := d.About(shortened(o.Minutes))
	switch o.Method {
	case schedule.HoldBox:
		return fmt.Sprintf("Close %s, wrapped, in an insulated box with towels, warmed with hot water first. Good for about %s off the heat: until it is %s just under the surface.",
			name, limit, d.Core(safety.DangerHighC))
	case schedule.HoldOven:
		return fmt.Sprintf("Put %s, wrapped, into the oven at %s.", name, d.Grate(d.OvenC()))
	case schedule.HoldGrill:
		return fmt.Sprintf("Leave %s, wrapped, on the grate and all but shut the vents. Good for about %s.", name, limit)
	case schedule.HoldCounter:
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
func (d *Assembler) doneEarly(p *arrange.Placed) string {
	o, ok := d.ChosenHold(p)
	if !ok || p.EarlyGap() < p.It.RestMinutes()+earlyMatters {
		return ""
	}
	off := d.At(p.On - p.Way.Total().Early)
	text := fmt.Sprintf("Done early, at about %s? That is as common as late. Take it off. %s", say.LocalClock(instant.QuarterDown(off)),
		d.HoldText(p, o, p.It.Dish.Name))
	if until := off.Add(instant.Minutes(o.Minutes)); until.Before(d.At(float64(p.It.Serve) - p.It.TravelMinutes())) {
		text += fmt.Sprintf(" That carries it to about %s, not to the table: then it goes into an oven at %s or more, or is eaten.", say.LocalClock(instant.QuarterDown(until)), d.Grate(warmOvenC))
	}
	return text
}

// holdEnds is the look at a piece whose hold is likely to end before it is eaten.
func (it *Itinerary) holdEnds(base schedule.Step, p *arrange.Placed, o day.HoldOption, off schedule.Window) {
	d, s := it.D, base
	s.Kind, s.Window, s.Attended, s.Minutes = schedule.StepLook, plans.Shift(off, shortened(o.Minutes)), true, 2
	serve := d.At(float64(p.It.Serve))
	if !s.Window.Expected.Before(serve.Add(-instant.Quarter)) || d.InQuiet(s.Window.Expected) {
		return
	}
	s.Window.Late = instant.Earlier(s.Window.Late, serve)
	s.At = s.Window.Expected
	s.Text = fmt.Sprintf("Measure %s just under the surface. Near %s it is at the end of its hold: into an oven at %s or more with it, or eat it.",
		it.name(p), d.Core(safety.DangerHighC), d.Grate(warmOvenC))
	s.Why = fmt.Sprintf("held like this it is good for about %s", d.About(shortened(o.Minutes)))
	it.addSecond(s)
}

// earlyMatters is from how many minutes of waiting on a dish done early needs words.
const earlyMatters = 30

// warmOvenC is the lowest setting that keeps the outer layer above the line.
var warmOvenC = unit.FToC(150)
