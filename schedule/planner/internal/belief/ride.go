package belief

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// ride is a piece on its way through a journey at a pace, which may change on the way.
type ride struct {
	c     *Journey
	sim   heat.Sim
	f     float64 // minutes of the cook for one of the model
	at    float64 // the minute, and the model's seconds, at which that pace began
	atS   float64
	hotS  float64 // how long it has been at its target, at the model's pace
	wrap  float64 // the minute of a wrap to come; NaN for none
	curve heat.Curve
}

// set puts the piece on at a pace. Its curve is kept if it is asked for.
func (r *ride) set(c *Journey, pace float64, keeps bool) {
	r.c, r.f, r.at, r.atS, r.hotS, r.wrap = c, math.Exp(pace), 0, 0, 0, math.NaN()
	r.sim.StartWith(c.Body, c.Past[0].In, heat.Coarse)
	if r.curve = (heat.Curve{}); keeps {
		r.curve = heat.Curve{EveryS: c.EveryS, Points: make([]heat.Point, 0, CurveSamples)}
	}
}

func (r *ride) minute() float64 { return r.at + (r.sim.ElapsedS()-r.atS)/60*r.f }

// goesOnAt changes the pace from here on.
func (r *ride) goesOnAt(pace float64) {
	r.at, r.atS, r.f = r.minute(), r.sim.ElapsedS(), math.Exp(pace)
}

// passes takes the piece on for some minutes, done or not.
func (r *ride) passes(in heat.Surroundings, minutes float64) {
	end := r.sim.ElapsedS() + minutes/r.f*60
	if r.c.TenderS > 0 {
		r.goes(in, minutes)
	}
	if left := end - r.sim.ElapsedS(); left > 1e-3 {
		r.sim.Cook(heat.Recipe{Stages: []heat.Stage{{In: in, AtMostS: left}}}, &r.curve)
	}
}

// goes takes the piece on for some minutes, or until it is done, and says whether it is.
func (r *ride) goes(in heat.Surroundings, minutes float64) bool {
	left := minutes / r.f * 60
	if left > 0 && r.sim.CoreC() < r.c.TargetC {
		from := r.sim.ElapsedS()
		stage := heat.Stage{In: in, AtMostS: left}
		if r.sim.Cook(heat.Recipe{Stages: []heat.Stage{stage}, TargetC: r.c.TargetC, LimitS: left}, &r.curve).Status != heat.Reached {
			return false
		}
		left -= r.sim.ElapsedS() - from
	}
	if r.sim.CoreC() < r.c.TargetC-1e-6 {
		return false
	}
	hot := math.Min(left, r.c.TenderS-r.hotS)
	if hot > 0 {
		r.sim.Cook(heat.Recipe{Stages: []heat.Stage{{In: in, AtMostS: hot}}}, &r.curve)
		r.hotS += hot
	}
	return r.hotS >= r.c.TenderS-1e-3
}

// through takes the piece through what has been, up to a minute; where it stops when it
// is done, it says whether it is.
func (r *ride) through(until float64, stops bool) bool {
	for i, seg := range r.c.Past {
		end := until
		if i+1 < len(r.c.Past) {
			end = math.Min(r.c.Past[i+1].From, until)
		}
		took := end - math.Max(seg.From, r.minute())
		switch {
		case took <= 1e-6:
		case stops:
			if r.goes(seg.In, took) {
				return true
			}
		default:
			r.passes(seg.In, took)
		}
	}
	return false
}

// finish takes the piece from where it is to its end, and gives the minute of that; two
// days after now where it does not come to it.
func (r *ride) finish() float64 {
	if r.through(r.c.Now, true) || r.ahead() {
		return math.Min(r.minute(), r.c.Now+LongestAhead)
	}
	return r.c.Now + LongestAhead
}

// ahead goes from now to the end; false where that never comes.
func (r *ride) ahead() bool {
	c := r.c
	for i := 0; i+1 < len(c.Coming); i++ {
		if r.goes(c.Coming[i].In, c.Coming[i+1].From-c.Coming[i].From) {
			return true
		}
	}
	in := c.Ahead
	if c.Wrap.Planned {
		if done, wraps := r.toWrap(); !wraps {
			return done
		}
		in = c.Wrap.In
	}
	return r.toEnd(in)
}

// toEnd goes on in one sort of surroundings until the piece is done.
func (r *ride) toEnd(in heat.Surroundings) bool {
	if r.sim.CoreC() < r.c.TargetC && r.sim.Cook(heat.Recipe{Stages: []heat.Stage{{In: in}}, TargetC: r.c.TargetC, LimitS: LongestAhead * 60}, &r.curve).Status != heat.Reached {
		return false
	}
	return r.goes(in, LongestAhead)
}

// toWrap goes on to the wrap; it says whether the piece is done before it, and whether
// it comes to it.
func (r *ride) toWrap() (done, wraps bool) {
	c := r.c
	at := math.Max(c.Wrap.Minute, r.minute())
	if c.Wrap.CoreC != 0 {
		at = r.minute()
		switch core := r.sim.CoreC(); {
		case core >= c.Wrap.CoreC:
		case c.Wrap.CoreC > c.TargetC:
			return r.toEnd(c.Ahead), false
		default:
			stage := heat.Stage{In: c.Ahead}
			if r.sim.Cook(heat.Recipe{Stages: []heat.Stage{stage}, TargetC: c.Wrap.CoreC, LimitS: LongestAhead * 60}, &r.curve).Status != heat.Reached {
				return false, false
			}
			at = r.minute()
		}
	}
	at = c.Wrap.Waits(at)
	if wait := at - r.minute(); wait > 1.0/60 && r.goes(c.Ahead, wait) {
		return true, false
	}
	r.wrap = r.minute()
	return false, true
}

// Sample reads a curve that has its first point at its start, at an instant in s;
// beyond its last point it is endC.
func Sample(c heat.Curve, startC, endC, atS float64) float64 {
	i := atS / c.EveryS
	k := int(i)
	at := func(k int) float64 {
		switch {
		case k < 0:
			return startC
		case k >= len(c.Points):
			return endC
		}
		return c.Points[k].CoreC
	}
	return at(k) + (i-float64(k))*(at(k+1)-at(k))
}
