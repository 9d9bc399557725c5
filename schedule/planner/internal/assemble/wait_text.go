package assemble

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/say"
	"example.com/cookday/schedule/planner/internal/arrange"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/unit"
)

// standText is the open stand before a hold.
func (d *Assembler) standText(p *arrange.Placed, o day.HoldOption, name string) string {
	if o.Vent == 0 {
		return ""
	}
	if p.Way.With != "" {
		return fmt.Sprintf("%s: open the wrap over a pan, away from the fire, and let it sit about %s, until it stops cooking. ", name, d.About(o.Vent))
	}
	return fmt.Sprintf("%s: let it sit open on a board about %s, until it stops cooking. ", name, d.About(o.Vent))
}

// HoldText says how to wait, from the heat on, if it comes off when expected.
func (d *Assembler) HoldText(p *arrange.Placed, o day.HoldOption, name string) string {
	return d.holdTextFrom(p, o, name, p.On-p.Took().Expected)
}

// holdTextFrom is the same of a piece that comes off at a minute before the last serving.
func (d *Assembler) holdTextFrom(p *arrange.Placed, o day.HoldOption, name string, off float64) string {
	stand, keep := d.standText(p, o, name), d.keepText(p, o, name, off)
	if stand != "" { // which has told the name
		keep = say.Upper(strings.TrimPrefix(keep, name+": "))
	}
	return stand + keep
}

// keepText says how to hold what has stood: where, until when, and how to measure.
func (d *Assembler) keepText(p *arrange.Placed, o day.HoldOption, name string, off float64) string {
	text := d.placeText(p, o, name)
	if !d.Chill {
		text += " " + d.clockText(p, o, off)
	}
	if m := d.measureText(p, o); m != "" {
		text += " " + m
	}
	if len(d.nightsIn(p, o)) > 0 {
		text += " " + d.nightText(p, o, name, off)
	}
	return text
}

// placeText says where it waits.
func (d *Assembler) placeText(p *arrange.Placed, o day.HoldOption, name string) string {
	bird := p.It.Cut.Style == cut.Bird
	switch o.Method {
	case schedule.HoldBox:
		if bird {
			return fmt.Sprintf("%s: in foil, into a cooler warmed with hot water; pack with towels. The skin softens there.", name)
		}
		return fmt.Sprintf("%s: wrapped, into a cooler warmed with hot water; pack with towels.", name)
	case schedule.HoldOven:
		return d.ovenText(p, o, name)
	case schedule.HoldGrill:
		return fmt.Sprintf("%s: leave it, wrapped, on the grate and all but shut the vents.", name)
	case schedule.HoldCounter:
		return fmt.Sprintf("%s: leave it on the counter.", name)
	}
	return fmt.Sprintf("%s: tent loosely with foil.", name)
}

// ovenText says how it waits in the oven, which many cooks have hotter than they set it.
func (d *Assembler) ovenText(p *arrange.Placed, o day.HoldOption, name string) string {
	at, mates := d.Grate(o.OvenC), cooler(p, o.OvenC)
	switch {
	case p.It.Cut.Style == cut.Small && len(mates) > 0:
		return fmt.Sprintf("%s: into the oven, turned up to %s, in one layer. %s can stay in, wrapped.", name, at, say.Listed(mates, "and"))
	case p.It.Cut.Style == cut.Small:
		return fmt.Sprintf("%s: one layer in the oven at %s.", name, at)
	}
	if p.It.Cut.Style == cut.Bird && len(mates) > 0 {
		return fmt.Sprintf("%s: loosely covered, into the oven, turned up to %s, a probe left in the breast. %s can stay in, wrapped.", name, at, say.Listed(mates, "and"))
	}
	if p.It.Cut.Style == cut.Bird {
		return fmt.Sprintf("%s: loosely covered, into the oven at %s, a probe left in the breast.", name, at)
	}
	hottest := o.OvenC // the oven is as hot as the one that wants it hottest
	for _, m := range p.Mates {
		hottest = math.Max(hottest, m.Options[m.Hold].OvenC)
	}
	at = d.Grate(hottest)
	text := fmt.Sprintf("%s: wrapped and in a pan, into the oven at %s.", name, at)
	if p.It.Cut.Style == cut.Tough {
		text += fmt.Sprintf(" The meat should stay at %s to %s: check it with a probe, for many ovens run %s hot.", d.Core(aimLowC), d.Core(aimHighC), d.overText())
	}
	return text
}

// cooler are the dishes that are held in the oven at less than a setting when a batch goes in.
func cooler(p *arrange.Placed, ovenC float64) []string {
	var names []string
	for _, m := range p.Mates {
		if name := m.It.Dish.Name; m.Options[m.Hold].OvenC < ovenC-1 && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// What a tough piece is best held at, and where it dries in some hours (common practice,
// no source; holding_2.csv H34, H35, H37).
var (
	aimLowC, aimHighC = unit.FToC(150), unit.FToC(160)
	driesC            = unit.FToC(165)
)

const driesMinutes = 4 * 60

// overText is by how much many ovens are hotter than they are set.
func (d *Assembler) overText() string {
	if d.Req.Units == unit.Metric {
		return "10 to 15 °C"
	}
	return "20 to 30 °F"
}

// clockText is the one clock of a hold, on the wall: until when it is good, which is when it is
// on the table. Where that is before it is eaten, it says so.
func (d *Assembler) clockText(p *arrange.Placed, o day.HoldOption, off float64) string {
	at := func(m float64) string { return say.LocalClock(d.Req.Units, d.HeldUntil(off, m)) }
	if o.Method == schedule.HoldOven && o.Hot > off-float64(p.It.Serve) && p.It.TravelMinutes() == 0 {
		return fmt.Sprintf("Holds until you serve it; eat it within %s of that.", d.About(o.Rule.EatMinutes))
	}
	served := d.HeldUntil(off, o.Minutes)
	if off-o.Minutes > float64(p.It.Serve)+holdTolerance && off > float64(p.It.Serve) {
		text := fmt.Sprintf("Good until %s, and %s: eat it by then", at(o.Minutes), safety.BeforeEaten)
		if o.Method == schedule.HoldOven || p.Way.PullC < safety.DangerHighC || o.Hot < bestAtOnce {
			return text + "."
		}
		warm, by := warmOvenC, "by "+at(o.Hot)
		if p.It.Cut.Poultry {
			warm = birdOvenC
		}
		if !served.After(d.HeldUntil(off, o.Hot)) {
			by = "before that"
		}
		return text + fmt.Sprintf(", or move it to an oven at %s %s.", d.Grate(warm), by)
	}
	return fmt.Sprintf("Good until %s: on the table by then, and eaten within %s of that.", at(o.Minutes), d.About(o.Eaten-o.Minutes))
}

// HeldUntil is an instant so many minutes after a take-off as a cook says it, never later.
func (d *Assembler) HeldUntil(off, minutes float64) time.Time {
	step := instant.Quarter
	if minutes < 60 {
		step = 5 * time.Minute
	}
	return d.At(off).Add(instant.Minutes(minutes)).Truncate(step)
}

// measureText says where to measure, and what a probe in the middle is good for.
func (d *Assembler) measureText(p *arrange.Placed, o day.HoldOption) string {
	piece := p.It.Piece(p.MassKg)
	hot := d.Core(safety.DangerHighC)
	switch {
	case o.Method == schedule.HoldCounter, o.Rule.Kind == safety.HoldByClock, piece == safety.Portion:
		return ""
	case piece == safety.Bird:
		return fmt.Sprintf("Below %s anywhere: serve at once.", hot)
	case piece == safety.Turkey && o.Method == schedule.HoldBox:
		alarm, _ := safety.AlarmC(piece)
		return fmt.Sprintf("Leave a probe in the breast with its alarm at %s, and look when it rings. Below %s anywhere: serve at once.", d.Core(alarm), hot)
	case piece == safety.Turkey:
		return fmt.Sprintf("Below %s anywhere: serve at once.", hot)
	}
	if alarm, ok := safety.AlarmC(piece); ok && o.Method == schedule.HoldBox {
		return fmt.Sprintf("Measure just under the surface. A probe in the middle is only an alarm: set it to %s, and look when it rings.", d.Core(alarm))
	}
	return "Measure just under the surface: a probe in the middle is only an alarm."
}

// mendText is what becomes of a piece that has fallen below the line: a warm oven is no
// help then.
func (d *Assembler) mendText() string {
	return fmt.Sprintf("Below %s a warm oven is no fix: reheat it to %s in an oven at %s within 2 hr of that, once, or throw it away.",
		d.Core(safety.DangerHighC), d.Core(safety.ReheatMinimum().CoreC), d.Grate(safety.OvenLowC))
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
