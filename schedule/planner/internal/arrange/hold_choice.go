package arrange

import (
	"math"
	"slices"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/planner/internal/day"
)

// keepsFor is how long a batch may be planned to wait, its travel taken off: so that a fast
// day can still be held, or, in an oven through a night, an ordinary one; the plan says it
// then. ok is false if the dish has no hold.
func (d *Arranger) keepsFor(b *Batch, w day.Way) (minutes float64, ok bool) {
	t := w.Total()
	for _, o := range d.HoldOptions(b.It, w, b.lot()) {
		held := o.Minutes - b.It.TravelMinutes()
		if ok = ok || held > 0; held <= 0 {
			continue
		}
		minutes = math.Max(minutes, held-(t.Planned-t.Early))
		if o.Night {
			minutes = math.Max(minutes, held-math.Max(t.Planned-t.Expected, 0))
		}
	}
	return minutes, ok
}

// SetHold gives a batch its ways of waiting, and picks one that lasts so many minutes.
func (d *Arranger) SetHold(p *Placed, needed float64) {
	p.Options = d.HoldOptions(p.It, p.Way, p.lot())
	p.Hold, p.holdLong = chooseHold(p.Options, needed)
	if p.It.Cut.Style == cut.Small && needed <= d.StandsFor(p.It) { // it stands for so long, and is eaten
		p.Hold = -1
	}
}

// holdAlike has the batches of a dish wait where all of them keep for as long as each may
// have to, for the plan has one limit for each way of waiting of a dish.
func (d *Arranger) holdAlike(all []*Placed) {
	for _, p := range all {
		least := slices.Clone(p.Options)
		for i := range least {
			for _, q := range all {
				for _, o := range q.Options {
					if q.It == p.It && o.Method == least[i].Method {
						least[i].Minutes = math.Min(least[i].Minutes, o.Minutes)
					}
				}
			}
		}
		if p.Hold >= 0 {
			p.Hold, p.holdLong = chooseHold(least, p.LongestWait())
		}
	}
}

// UseHold is SetHold where it is known how the batch waits.
func (p *Placed) UseHold(method string) {
	if i := slices.IndexFunc(p.Options, func(o day.HoldOption) bool { return o.Method == method }); i >= 0 {
		p.Hold = i
	}
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
	if o.Vent == 0 || p.Way.State == nil || o.Read {
		return o
	}
	s := *p.Way.State
	s.Change(day.Standing(p.Way, math.Min(day.RoomC, d.Night.AirC), day.PoorEnd))
	s.RunFor(day.VentLeast * 60)
	for v := 2.0 * day.VentLeast; v <= day.VentMost && s.MeanC() > day.VentToC; v += day.VentLeast {
		if s.RunFor(day.VentLeast * 60); s.OuterC() < day.VentOuterC {
			break
		}
		longer := d.HoldBy(p.It, p.Way, p.lot(), o.Method, v)
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
	for i, p := range all {
		p.Mates = nil
		for j, o := range all {
			if at, in := o.intoOven(), p.intoOven(); o.It != p.It && (at > in || at == in && j < i) && float64(o.It.Serve) < in {
				p.Mates = append(p.Mates, o)
			}
		}
	}
}

// intoOven is when a batch that is held in the oven is expected there, at the earliest;
// NaN of any other.
func (p *Placed) intoOven() float64 {
	if p.Hold < 0 || p.Options[p.Hold].Method != schedule.HoldOven {
		return math.NaN()
	}
	return p.On - p.Took().Expected
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
