package assemble

import (
	"fmt"
	"slices"
	"sort"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
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
// It is told of the first batch of the dish, with the limits that hold for all of them.
func (d *Assembler) holdAdvice(p *arrange.Placed, batches []*arrange.Placed) []schedule.HoldAdvice {
	var out []schedule.HoldAdvice
	held := func(b *arrange.Placed) bool { return b.Hold >= 0 }
	if p.It.Cut.Style == cut.Small && !slices.ContainsFunc(batches, held) {
		return nil // it is eaten from the grill
	}
	early, needed := p.On-p.Took().Early, p.LongestWait()
	for i, o := range p.Options {
		o = d.Vented(p, o, needed)
		least := d.leastHold(batches, o.Method)
		h := schedule.HoldAdvice{
			Method: o.Method, Chosen: i == p.Hold, LimitMinutes: least.Minutes, HotMinutes: least.Hot, EatenMinutes: least.Eaten,
			VentMinutes: o.Vent, BoxMinutes: least.Boxed, OvenC: o.OvenC, Until: d.At(early - least.Minutes),
			Rule: o.Rule.Sentence(), Text: d.HoldText(p, o, p.It.Dish.Name),
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
	o.Boxed = boxedOf(p, o, off)
	usual := day.Follow(p.Way.State, d.Course(p.Way, o.Waiting, day.ExpectedEnd))
	poor := day.Follow(p.Way.State, d.Course(p.Way, o.Waiting, day.PoorEnd))
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

// doneEarly is what to do when a dish is done at the early end of its window. It is
// empty where that is no matter.
func (d *Assembler) doneEarly(p *arrange.Placed) string {
	o, ok := d.ChosenHold(p)
	if !ok || p.EarlyGap() < p.It.RestMinutes()+earlyMatters {
		return ""
	}
	early := p.On - p.Way.Total().Early
	off := d.At(early)
	text := fmt.Sprintf("Done early, at about %s? That is as common as late. Take it off. %s", say.LocalClock(d.Req.Units, instant.QuarterDown(off)),
		d.holdTextFrom(p, o, p.It.Dish.Name, early))
	if until := off.Add(instant.Minutes(o.Minutes)); until.Before(d.At(float64(p.It.Serve) - p.It.TravelMinutes())) {
		text += fmt.Sprintf(" That carries it to about %s, not to the table: then it goes into an oven at %s or more, or is eaten.", say.LocalClock(d.Req.Units, instant.QuarterDown(until)), d.Grate(warmOvenC))
	}
	return text
}

// holdEnds is the look at a piece that is likely to come near the line before it is eaten. What
// rests under a tent for a while has no such line but its clock, and neither has what is below it
// as it comes off.
func (it *Itinerary) holdEnds(base schedule.Step, p *arrange.Placed, o day.HoldOption, off schedule.Window) {
	d, s := it.D, base
	good := o.Hot
	if good == 0 {
		good = o.Minutes
	}
	if p.Way.PullC < safety.DangerHighC || o.Method == schedule.HoldTent && p.On-p.Took().Expected-float64(p.It.Serve) <= o.Minutes {
		return
	}
	s.Kind, s.Window, s.Attended, s.Minutes = schedule.StepLook, plans.Shift(off, shortened(good)), true, 2
	serve := d.At(float64(p.It.Serve))
	if !s.Window.Expected.Before(serve.Add(-instant.Quarter)) || d.InQuiet(s.Window.Expected) {
		return
	}
	s.Window.Late = instant.Earlier(s.Window.Late, serve)
	s.At = s.Window.Expected
	hot := d.Core(safety.DangerHighC)
	s.Text = fmt.Sprintf("%s: measure just under the surface. %s or more: into an oven at %s, or eat it now.", it.name(p), hot, d.Grate(warmOvenC))
	if o.Rule.AddedMinutes > 0 {
		s.Text = fmt.Sprintf("%s: measure just under the surface. Above %s: leave it, or move it to an oven at %s. Just down to %s: on the table within %s.",
			it.name(p), hot, d.Grate(warmOvenC), hot, d.About(o.Rule.AddedMinutes))
	}
	s.Text += " " + d.mendText()
	s.Why = fmt.Sprintf("held like this it is hot throughout for about %s", d.About(shortened(good)))
	it.addSecond(s)
}

// earlyMatters is from how many minutes of waiting on a dish done early needs words.
const earlyMatters = 30

// warmOvenC is a setting that keeps the outer layer above the line in an oven that is
// cooler than it is set to.
var warmOvenC = unit.FToC(170)

// birdOvenC is that for a bird (judgment).
var birdOvenC = unit.FToC(200)
