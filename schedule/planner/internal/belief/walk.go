package belief

import "math"

// Instant is what a piece was like at a minute.
type Instant struct {
	Minute                float64
	CoreC, ColdestC, AirC float64 // the coldest cell, inside or out; the air beside it
}

// walkMinutes is how finely a past is looked at.
const walkMinutes = 5.0

// Walk goes through the past of the piece as it is believed, up to now.
func (b *Belief) Walk(visit func(from, to Instant)) { b.walk(0, visit) }

// slowSd is by how many standard deviations of its pace a piece is slow of which one in ten
// is slower.
const slowSd = 1.28

// SlowWalk is Walk of a piece that is slow in all that was not read of it: from its newest
// reading on, or from the put-on.
func (b *Belief) SlowWalk(visit func(from, to Instant)) { b.walk(slowSd, visit) }

func (b *Belief) walk(sd float64, visit func(from, to Instant)) {
	c := b.Journey
	read := math.Inf(1)
	pace, after := b.Spread.Median+sd*paceFromPutOn, b.Spread.Median+sd*paceFromReading
	if n := len(b.Nodes); n > 0 {
		read, pace = b.Nodes[n-1].Minute, b.pace
	}
	var r ride
	r.set(c, pace, false)
	at := Instant{CoreC: r.sim.CoreC(), ColdestC: r.sim.ColdestC(), AirC: c.Past[0].In.AirC}
	for i, seg := range c.Past {
		end := c.Now
		if i+1 < len(c.Past) {
			end = math.Min(c.Past[i+1].From, c.Now)
		}
		for at.Minute < end-1e-6 {
			to := math.Min(at.Minute+walkMinutes, end)
			if at.Minute < read-1e-6 && to > read {
				to = read
			}
			r.passes(seg.In, to-at.Minute)
			next := Instant{Minute: to, CoreC: r.sim.CoreC(), ColdestC: r.sim.ColdestC(), AirC: seg.In.AirC}
			at.AirC = seg.In.AirC
			visit(at, next)
			if at = next; to == read {
				r.goesOnAt(after)
				if off := b.Nodes[len(b.Nodes)-1].CoreC - r.sim.CoreC(); math.Abs(off) > 1e-9 {
					r.sim.Shift(off)
					at.CoreC, at.ColdestC = r.sim.CoreC(), r.sim.ColdestC()
				}
			}
		}
	}
}
