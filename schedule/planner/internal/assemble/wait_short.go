package assemble

import (
	"fmt"
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
	"example.com/cookday/schedule/unit"
)

// noteHolds says it where the early end of a window cannot be held.
func (d *Assembler) noteHolds(all []*arrange.Placed) {
	limits := d.holdLimits(all)
	d.noteBox(all)
	for _, p := range all {
		limit := limits[p].Good
		if p.It.Cut.Style == cut.Timed {
			if p.Off-float64(p.It.Serve) > limit+holdTolerance { // it is on, and dinner is later than it was to be
				d.find(schedule.CodeHoldShort, p.It.Path("hold"), p.It, d.shortHoldText(p, labelAmong(p, all, d.Req.Units), limit))
			}
			continue
		}
		if p.Hold >= 0 {
			d.noteGrillHold(p, all)
			d.noteOven(p)
		}
		loose := d.Loose && p.Way.Z < d.Z
		if loose {
			d.find(schedule.MayBeLate, "confidence", p.It, fmt.Sprintf("%s: on at %s, and %.0f%% sure to be ready at %s. Sooner it could go on only over a fire that burns unwatched while you sleep: for that write overnight: true.",
				labelAmong(p, all, d.Req.Units), say.LocalClock(d.Req.Units, d.At(p.On)), 100*spread.NormalCDF(p.Way.Z), say.LocalClock(d.Req.Units, d.At(float64(p.It.Serve)))))
		}
		switch {
		case p.Way.Z < d.Z && p.Way.Sear && !loose:
			d.find(schedule.MayBeLate, "confidence", p.It, d.searedLateText(p, labelAmong(p, all, d.Req.Units)))
		case p.Way.Z < d.Z && !loose:
			d.find(schedule.CodeHoldShort, p.It.Path("hold"), p.It, d.betweenText(p, labelAmong(p, all, d.Req.Units), limit))
		case math.Max(p.EarlyGap(), p.Off-float64(p.It.Serve)) > limit+holdTolerance: // a piece may be off for hours
			d.find(schedule.CodeHoldShort, p.It.Path("hold"), p.It, d.shortHoldText(p, labelAmong(p, all, d.Req.Units), limit))
		case p.It.TravelMinutes() > 0 && p.LongestWait() > limit+holdTolerance:
			d.find("travel-short", p.It.Path("travel"), p.It, d.travelText(p, limit))
		}
	}
}

// noteBox says it where a box that is called good counts as a usual one.
func (d *Assembler) noteBox(all []*arrange.Placed) {
	if b := d.Req.Box; b == nil || b.Kind != schedule.BoxGood || b.Proven() {
		return
	}
	for _, p := range all {
		if p.Hold >= 0 && p.Options[p.Hold].Method == schedule.HoldBox {
			d.findings.Add(schedule.NewFinding("box-unproven", "box", fmt.Sprintf(
				"The cooler is called good, and counts as a usual one until you have measured a hold of it: note what a probe in the middle of a wrapped shoulder or brisket still shows after 6 hr, and write logged: {after: 6h, core: %s}. It is a good one from %s on.",
				d.Core(safety.GoodBoxC(6)+1), d.Core(safety.GoodBoxC(6)))))
			return
		}
	}
}

// holdLimits are how long each batch may wait: as the plan tells it of its dish.
func (d *Assembler) holdLimits(all []*arrange.Placed) map[*arrange.Placed]arrange.Keeps {
	limits := map[*arrange.Placed]arrange.Keeps{}
	for _, p := range all {
		limits[p] = d.Stands(p.It)
		if p.Hold >= 0 {
			m := d.leastHold(batchesOf(p.It, all), p.Options[p.Hold].Method).Minutes
			limits[p] = arrange.Keeps{Good: m, Most: m}
		}
	}
	return limits
}

// countEarly takes from the chance of each batch that it is done too early for its hold.
func (d *Assembler) countEarly(all []*arrange.Placed) {
	for p, k := range d.holdLimits(all) {
		if p.It.Cut.Style != cut.Timed && !d.Chill {
			p.Over = p.TooEarly(k, holdTolerance)
		}
	}
}

// leastHold is a way of waiting as it holds for every batch of a dish: for the one that
// keeps least long.
func (d *Assembler) leastHold(batches []*arrange.Placed, method string) day.HoldOption {
	least := day.HoldOption{Minutes: math.Inf(1)}
	for _, p := range batches {
		for _, o := range p.Options {
			if o.Method != method {
				continue
			}
			if o = d.Vented(p, o, p.LongestWait()); o.Minutes < least.Minutes {
				least = o
			}
		}
	}
	return least
}

// labelAmong is the name of a batch where others of its dish may have to be told from it.
func labelAmong(p *arrange.Placed, all []*arrange.Placed, u unit.System) string {
	n := 0
	for _, o := range all {
		if o.It == p.It {
			n++
		}
	}
	return p.Label(n, u)
}

// shortHoldText says how far a hold carries that is too short on a fast day, or even on
// an ordinary one.
func (d *Assembler) shortHoldText(p *arrange.Placed, name string, limit float64) string {
	serve := float64(p.It.Serve)
	when, off := fastDay, p.On-p.Took().Early
	if p.On-p.Took().Expected-serve > limit+holdTolerance {
		when, off = "even on an ordinary day", p.On-p.Took().Expected
	}
	if limit < bestAtOnce {
		return fmt.Sprintf("%s: %s done at %s, %s before it is served, and best eaten at once.",
			name, when, say.LocalClock(d.Req.Units, d.At(off)), d.About(off-serve))
	}
	text := "%s: done as early as %s? Good only until about %s, not until %s: eat by then."
	if when != fastDay {
		text = "%s: " + when + " done at %s, and then good until about %s, not until %s."
	}
	return fmt.Sprintf(text, name, say.LocalClock(d.Req.Units, d.At(off)), say.LocalClock(d.Req.Units, d.HeldUntil(off, limit)), say.LocalClock(d.Req.Units, d.At(serve)))
}

const fastDay = "on a fast day"

// bestAtOnce is the limit in minutes below which a piece is hardly held at all.
const bestAtOnce = 15

// betweenText says of a batch that nothing keeps for as long as its cook may be off when it
// was chosen to go on, and what becomes of it on a fast day and on a slow one.
func (d *Assembler) betweenText(p *arrange.Placed, name string, limit float64) string {
	serve := float64(p.It.Serve)
	fast, slow := p.On-p.Took().Early, p.On-p.Took().Late-p.It.RestMinutes()
	at := func(u float64) string { return say.LocalClock(d.Req.Units, d.At(u)) }
	text := fmt.Sprintf("%s: it goes on when it is likeliest to be both in time and still good, for its cook may be off by more than it keeps. On a fast day it is done at %s and good until", name, at(fast))
	if until := fast - limit; until > serve+holdTolerance {
		text += fmt.Sprintf(" about %s, not until %s", say.LocalClock(d.Req.Units, d.HeldUntil(fast, limit)), at(serve))
	} else {
		text += " it is eaten"
	}
	switch late := serve - slow; {
	case late >= tellLate:
		text += fmt.Sprintf("; on a slow day it is ready at %s, %s late.", at(slow), d.About(late))
	default:
		text += "; on a slow day it is still in time."
	}
	return text
}

// searedLateText says how sure a piece is that goes on so that it hardly stands before its sear.
func (d *Assembler) searedLateText(p *arrange.Placed, name string) string {
	return fmt.Sprintf("%s: on at %s, so that it stands no longer than %d min before its sear, and %.0f%% sure to be ready at %s. Sooner it would stand longer, off the heat and below its minimum; if it is slow, eat a little later.",
		name, say.LocalClock(d.Req.Units, d.At(p.On)), day.SearStandMinutes, 100*spread.NormalCDF(p.Way.Z), say.LocalClock(d.Req.Units, d.At(float64(p.It.Serve))))
}

// tellLate is from how many minutes a slow day counts as late (assumption).
const tellLate = 5

func (d *Assembler) travelText(p *arrange.Placed, limit float64) string {
	name := p.It.Dish.Name
	if p.Hold < 0 {
		return fmt.Sprintf("%s: not for travel hot. It keeps %s, and the way takes %s. Cook it there, or carry it cold.", name, d.About(shortened(limit)), d.About(p.It.TravelMinutes()))
	}
	return fmt.Sprintf("%s: on a fast day it waits and travels %s in all, and the cooler is good for about %s. Measure on arrival; a warm oven before you leave would help.",
		name, d.About(p.LongestWait()), d.About(shortened(limit)))
}

// noteGrillHold says it where the fire is still needed by others while something is
// to be held over it.
func (d *Assembler) noteGrillHold(p *arrange.Placed, all []*arrange.Placed) {
	if p.Options[p.Hold].Method != schedule.HoldGrill {
		return
	}
	last := p.Off
	for _, o := range all {
		last = math.Min(last, o.Off)
	}
	if last < p.Off-holdTolerance {
		d.find("hold-grill-busy", p.It.Path("hold"), p.It, fmt.Sprintf(
			"The fire is needed until %s, so %s cannot be held over it from %s on: use a cooler or the oven.", say.LocalClock(d.Req.Units, d.At(last)), p.It.Dish.Name, say.LocalClock(d.Req.Units, d.At(p.Off))))
	}
}

// holdTolerance is how far, in minutes, the early end may overrun a hold before
// it is worth saying.
const holdTolerance = 0.5
