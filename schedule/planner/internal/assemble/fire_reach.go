package assemble

import (
	"fmt"
	"math"
	"strings"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/internal/safety"
	"example.com/cookday/schedule/internal/steer"
)

// weakK is how far under its level a fire must stay, all open, to be called too weak: more than 25 F is not good enough
// (common practice, no source).
const weakK = 20 / 1.8

// helpsK is what a change must bring to be worth a word (assumption).
const helpsK = 10 / 1.8

// noteWeak says of a cooker whose coals lie in one way only that it is not likely to hold a level.
func (d *Assembler) noteWeak(ph *schedule.Phase, f fire.Fire) {
	hours := d.WeatherBetween(ph.From, ph.To)
	if d.Grill.Lays() || !d.grows(f) || len(hours) == 0 {
		return
	}
	s := d.startOf(f, hours[0].Weather)
	if open := s.Open(); open.Middle < f.LevelC-weakK {
		d.find("fire-weak", "", nil, d.weakText(s, open, ph.Burn.Chimneys > fullChimney))
	}
}

// fullChimney is so much of one that no fuller is advised (judgment).
const fullChimney = 0.8

// weakText is of a cooker that is not likely to hold a level: what it is likely to hold, what would bring more, and what to
// do with the food.
func (d *Assembler) weakText(s steer.Start, open steer.Range, full bool) string {
	text := fmt.Sprintf("With all vents open a cooker like this one stays near %s in this weather, not at %s; cookers differ, and it may be anything from %s to %s.",
		d.Grate(open.Middle), d.Grate(s.LevelC), d.Grate(open.Low), d.Grate(open.High))
	var ways []string
	try := func(change func(*steer.Start), way string) {
		other := s
		change(&other)
		if c := other.Open().Middle; c > open.Middle+helpsK {
			ways = append(ways, fmt.Sprintf(way, d.Grate(c)))
		}
	}
	if s.Grill.WaterPan {
		try(func(o *steer.Start) { o.Grill.WaterPan = false }, "leave the pan dry (water_pan: false), near %s")
	}
	if !s.Weather.Sheltered {
		try(func(o *steer.Start) { o.Weather.Sheltered = true }, "stand it out of the wind (sheltered: true in the weather), near %s")
	}
	if !full {
		ways = append(ways, "light a full chimney at once")
	}
	ways = append(ways, "cook at a lower heat")
	text += " What helps: " + strings.Join(ways, "; ") + "."
	if d.Req.Oven != nil {
		text += fmt.Sprintf(" More than %s short an hour after the food went on? Finish it in the kitchen oven.", d.Slack())
	}
	return text
}

// nightShare says how many of ten such fires stay between their alarms while nobody watches them, where that is not nearly all.
func (d *Assembler) nightShare(p *schedule.Plan) string {
	for _, ph := range p.Phases {
		f := fire.Fire{Layout: fire.Layout(ph.Layout), LevelC: ph.LevelC}
		if !d.Grill.Lays() {
			f.Layout = fire.Other
		}
		if ph.Burn == nil || !d.grows(f) || len(d.Unwatched([]schedule.Phase{ph})) == 0 {
			continue
		}
		low, high := safety.AlarmLowC, safety.AlarmHighC
		in := int(math.Round(10 * d.startOf(f, d.Night).Share(steer.Vents{Top: ph.TopOpen, Bottom: ph.LowOpen}, low, high)))
		text := fmt.Sprintf(" Untouched, about %d such fires in ten go below %s or above %s in the night.", 10-in, d.Grate(low), d.Grate(high))
		switch {
		case in >= sureOfTen:
			return ""
		case in < leaveOfTen:
			return text + " That is no night to sleep through: somebody stays up, or it is cooked by day or in the oven."
		}
		return text + fmt.Sprintf(" Set both alarms, and expect to be woken. Go to bed only if it held %s for %s at these vents.", d.Grate(ph.LevelC), d.About(safety.VentsStillMinutes))
	}
	return ""
}

// Of ten fires, how many must stay between their alarms to need no word, and to be left at all (judgment).
const (
	sureOfTen  = 8
	leaveOfTen = 4
)
