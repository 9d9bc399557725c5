package arrange

import (
	"math"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/planner/internal/day"
)

// longestHold is the longest any way of waiting lasts, less the travel; 0 if
// the dish has no hold.
func (d *Arranger) longestHold(b *Batch, w day.Way) float64 {
	longest := 0.0
	for _, o := range d.HoldOptions(b.It, w, b.Count) {
		longest = math.Max(longest, o.Minutes)
	}
	return math.Max(longest-b.It.TravelMinutes(), 0)
}

// SetHold gives a batch its ways of waiting, and picks one that lasts so many minutes.
func (d *Arranger) SetHold(p *Placed, needed float64) {
	p.Options = d.HoldOptions(p.It, p.Way, p.Count)
	p.Hold, p.holdLong = chooseHold(p.Options, needed)
}

// chooseHold picks the gentlest way that lasts the minutes needed, else the
// longest; ok says whether it lasts.
func chooseHold(options []day.HoldOption, needed float64) (chosen int, ok bool) {
	chosen = -1
	for i, o := range options {
		if o.Minutes >= needed {
			return i, true
		}
		if chosen < 0 || o.Minutes > options[chosen].Minutes {
			chosen = i
		}
	}
	return chosen, false
}

// Vented is the option with as long an open stand as the piece wants and as the
// hold, needed for some minutes, leaves room for.
func (d *Arranger) Vented(p *Placed, o day.HoldOption, needed float64) day.HoldOption {
	if o.Vent == 0 || p.Way.State == nil {
		return o
	}
	s, most := *p.Way.State, o.Minutes
	s.Change(day.Standing(p.Way, math.Min(day.RoomC, d.Night.AirC), day.PoorEnd))
	s.RunFor(day.VentLeast * 60)
	for v := 2.0 * day.VentLeast; v <= day.VentMost && s.MeanC() > day.VentToC; v += day.VentLeast {
		if s.RunFor(day.VentLeast * 60); s.OuterC() < day.VentOuterC {
			break
		}
		longer := o
		longer.Vent, longer.Minutes = v, math.Min(d.HotFor(p.Way, o.Method, p.Count, v), most)
		if longer.Minutes < needed {
			break
		}
		o = longer
	}
	return o
}

// ChosenHold is how a batch waits, its open stand settled; false if it does not.
func (d *Arranger) ChosenHold(p *Placed) (day.HoldOption, bool) {
	if p.Hold < 0 {
		return day.HoldOption{}, false
	}
	return d.Vented(p, p.Options[p.Hold], p.LongestWait()), true
}

// LongestWait is how long it may have to stay hot: done early, served late, or
// eaten after a journey.
func (p *Placed) LongestWait() float64 { return p.EarlyGap() + p.It.TravelMinutes() }

// oneOvenK is how far two settings of the oven may lie apart and be one, K (assumption).
const oneOvenK = 3

// OneOven has nothing held in an oven that is wanted at another heat for what cooks in it:
// what may be done by then waits another way.
func (d *Arranger) OneOven(all []*Placed) {
	for _, p := range all {
		if p.Hold < 0 || p.Options[p.Hold].Method != schedule.HoldOven || !d.ovenBusy(all, p) {
			continue
		}
		var others []day.HoldOption
		for _, o := range p.Options {
			if o.Method != schedule.HoldOven {
				others = append(others, o)
			}
		}
		p.Options = others
		p.Hold, p.holdLong = chooseHold(others, p.EarlyGap())
	}
}

// ovenBusy says whether the oven is at another heat while a batch may wait in it.
func (d *Arranger) ovenBusy(all []*Placed, p *Placed) bool {
	for _, o := range all {
		if !o.Oven || o == p || o.It == p.It || math.Abs(o.Way.LevelC-d.OvenC()) <= oneOvenK {
			continue
		}
		in := o.On
		if o.Stages() == 2 {
			in = o.On - o.Way.First.Early
		}
		if out := o.On - o.Took().Late; math.Min(out, o.Off) < p.On-p.Took().Early && float64(p.It.Serve) < in {
			return true
		}
	}
	return false
}
