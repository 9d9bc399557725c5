package assemble

import (
	"fmt"
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
)

// nightsIn are the nights that a batch is in the oven for, as it is expected to come off.
func (d *Assembler) nightsIn(p *arrange.Placed, o day.HoldOption) []day.Span {
	if o.Method != schedule.HoldOven {
		return nil
	}
	var out []day.Span
	off := p.On - p.Took().Expected
	in := off - o.Vent - boxedOf(p, o, off)
	for _, n := range d.Stretches() {
		n.From = max(n.From, d.Minute(d.upFor(p))+1) // who eats in the night is up
		lasts := n.To - n.From
		if float64(n.To) > off && float64(n.From) < off { // it comes off at night, and whoever took it off sleeps on
			n.To, lasts = int(in)-sleepsAgain, int(math.Ceil(in))-n.From
		}
		if float64(n.To) <= off && lasts > safety.NightMinutes {
			out = append(out, n)
		}
	}
	return out
}

// sleepsAgain is how long, in minutes, a cook is up with what went into the oven at night (assumption).
const sleepsAgain = 10

// intoOven is the minute before the last serving from which on a batch may be in the oven
// through a night: sooner it would be there for longer than is practised.
func intoOven(p *arrange.Placed) float64 { return float64(p.It.Serve) + safety.OvernightMostMinutes }

// boxedOf is how long a batch that comes off at a minute waits in a box before that.
func boxedOf(p *arrange.Placed, o day.HoldOption, off float64) float64 {
	if !o.Night {
		return 0
	}
	return math.Min(math.Max(off-o.Vent-intoOven(p), 0), o.Boxed)
}

// boxStep is the box before the oven, for a piece that is expected so early. It returns the
// window in which the piece goes into the oven, off being that of its leaving the fire or
// the open stand.
func (it *Itinerary) boxStep(s schedule.Step, p *arrange.Placed, o day.HoldOption, off schedule.Window) schedule.Window {
	d := it.D
	if !o.Night || o.Boxed == 0 {
		return off
	}
	from := d.At(intoOven(p))
	if off.Expected.Before(from) {
		s.Kind, s.Attended, s.Minutes, s.Window, s.At = schedule.StepBox, true, 5, off, off.Expected
		s.Window.Late = instant.Earlier(off.Late, from)
		s.Text = d.boxFirstText(it.name(p), from)
		s.Why = "so long in the oven is the end of what is practised"
		it.add(s)
	}
	return schedule.Window{Early: instant.Later(off.Early, from), Expected: instant.Later(off.Expected, from), Late: instant.Later(off.Late, from)}
}

func (d *Assembler) boxFirstText(name string, from time.Time) string {
	return fmt.Sprintf("%s: wrapped, into a cooler warmed with hot water, packed with towels, until %s: %s in the oven is enough. It must still be above %s just under the surface then.",
		name, say.LocalClock(d.Req.Units, from), d.About(safety.OvernightMostMinutes), d.Core(safety.OvernightIntoC))
}

// nightSteps are the look at a piece before a night in the oven, and on waking.
func (it *Itinerary) nightSteps(base schedule.Step, p *arrange.Placed, o day.HoldOption) {
	d, name := it.D, it.name(p)
	off := p.On - p.Took().Expected
	in := d.At(off - o.Vent - boxedOf(p, o, off))
	for _, n := range d.nightsIn(p, o) {
		sleep, wake := d.At(float64(n.To-1)), d.At(float64(n.From-1))
		s := base
		s.Kind, s.Attended, s.Minutes = schedule.StepCheckOven, true, 5
		s.At = instant.Later(sleep.Add(-day.BeforeSleep*time.Minute), in)
		if after := s.At.Add(time.Minute); s.At.Equal(in) && after.Before(sleep) { // it is in by then
			s.At = after
		}
		if !s.At.Before(sleep) { // it goes in as sleep begins
			s.At = sleep.Add(-time.Minute)
		}
		s.Text, s.Why = d.sleepText(name), "nobody looks at it until morning"
		it.add(s)
		s = base
		s.Kind, s.Attended, s.Minutes, s.At, s.CoreC = schedule.StepCheckOven, true, 2, wake, safety.DangerHighC
		s.Text, s.Why = d.wakeText(name), "nobody has looked at it since last night"
		it.add(s)
	}
}

// sleepText is what is settled before everybody sleeps.
func (d *Assembler) sleepText(name string) string {
	ask := fmt.Sprintf("Does the oven switch itself off after some hours? If you do not know, turn it off and on again now: then it is good for %s.", d.About(safety.UnwatchedMinutes))
	if d.Req.Oven != nil && d.Req.Oven.StaysOn {
		ask = "See that the oven is on, and that no timer of it runs."
	}
	return fmt.Sprintf("Before you sleep, %s in the oven: a probe in the middle, its alarm at %s and loud enough to wake you. %s", name, d.Core(safety.OvernightAlarmC), ask)
}

// wakeText is the first thing after waking.
func (d *Assembler) wakeText(name string) string {
	text := fmt.Sprintf("Before anything else read the probe in %s. Below %s, nobody knows how long it has been there: then it is not served and not kept.", name, d.Core(safety.DangerHighC))
	if d.Req.Oven != nil && d.Req.Oven.StaysOn {
		return text
	}
	return text + " Else turn the oven off and on again, so that it stays on, and leave it in."
}

// nightText is what a piece that stays in the oven for a night wants as it goes in.
func (d *Assembler) nightText(p *arrange.Placed, o day.HoldOption, name string, off float64) string {
	first := ""
	if from := d.At(intoOven(p)); boxedOf(p, o, p.On-p.Took().Early) > 0 && !d.At(off-o.Vent).Before(from) {
		first = fmt.Sprintf("Off before %s? %s ", say.LocalClock(d.Req.Units, from), d.boxFirstText(name, from))
	}
	return first + fmt.Sprintf("It goes in while it is still above %s just under the surface, and %s to %s in the middle; never let it cool to %s first. The setting is %s or more, unless you have read a thermometer in the oven.",
		d.Core(safety.OvernightIntoC), d.Core(nightCoreLowC), d.Core(nightCoreHighC), d.Core(safety.DangerHighC), d.Grate(safety.OvernightOvenC))
}

// What its middle has as it goes in: 165 to 175 F (common practice, no source).
const (
	nightCoreLowC  = (165.0 - 32) * 5 / 9
	nightCoreHighC = (175.0 - 32) * 5 / 9
)

// noteOven says it where a tough piece is held hotter than is good for it, and for long.
func (d *Assembler) noteOven(p *arrange.Placed) {
	if p.Hold < 0 || p.It.Piece(p.MassKg) != safety.Shoulder && p.It.Piece(p.MassKg) != safety.Ribs {
		return
	}
	o, _ := d.ChosenHold(p)
	off := p.On - p.Took().Expected
	wait := off - o.Vent - boxedOf(p, o, off) - float64(p.It.Serve)
	if o.Method == schedule.HoldOven && o.OvenC > driesC && wait > driesMinutes {
		d.find(schedule.CodeOvenDries, p.It.Path("hold"), p.It, fmt.Sprintf(
			"%s: in the oven for about %s at %s or more. Above %s for more than %s it dries: many ovens run %s over, so read a thermometer beside the meat, and keep it wrapped, in a pan with a little water.",
			p.It.Dish.Name, d.About(math.Floor(wait)), d.Grate(o.OvenC), d.Core(driesC), d.About(driesMinutes), d.overText()))
	}
}
