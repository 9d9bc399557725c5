package belief

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// Journey is the day of one piece so far and as it is going on: what surrounds
// it, in minutes from its put-on. A pace f runs through it f times slower than
// the model does.
type Journey struct {
	Body    heat.Body
	Past    []Surround // from minute 0; the last one holds until now
	Now     float64    // minutes from the put-on
	Asked   []float64  // minutes at which the core is wanted
	Coming  []Surround // timed, from now on: a fire that has to be rebuilt
	Ahead   heat.Surroundings
	Wrap    WrapAhead
	TargetC float64
	TenderS float64 // how long it must be that hot, at the model's own pace; 0: it is done there
	EveryS  float64 // between samples of the curve, at the model's own pace
}

// Surround is what the piece feels from a minute on.
type Surround struct {
	From float64
	In   heat.Surroundings
}

// WrapAhead is a wrap that is still to come, at a core temperature or a minute.
type WrapAhead struct {
	In      heat.Surroundings // under the wrap
	CoreC   float64           // 0: by the minute
	Minute  float64
	Planned bool
	Waits   func(minute float64) float64 // to the end of quiet hours
}

// Path is what the model makes of a course at one pace. Minutes are from the
// put-on; done is +Inf where the core never gets there.
type Path struct {
	Lnf        float64
	cores      []float64 // at the asked minutes
	NowC       float64
	wrap, Done float64
	End        heat.Sim // at the target, at the model's own pace
	Curve      heat.Curve

	atNow heat.Sim // where what is to come begins
	past  int      // points of the curve up to then
	hotS  float64  // how long it has been at its target by then
}

// LongestAhead bounds, in minutes, what a piece may still take.
const LongestAhead = 48 * 60

// run follows the course at the pace exp(lnf).
func (c *Journey) run(lnf float64) Path {
	f := math.Exp(lnf)
	p := Path{Lnf: lnf, wrap: math.NaN(), Done: math.Inf(1)}
	p.Curve.EveryS = c.EveryS
	p.Curve.Points = make([]heat.Point, 0, 2*CurveSamples)
	var s heat.Sim
	s.StartWith(c.Body, c.Past[0].In, heat.Coarse)
	for i, seg := range c.Past {
		until := c.Now
		if i+1 < len(c.Past) {
			until = math.Min(c.Past[i+1].From, c.Now)
		}
		if seconds := (until - seg.From) / f * 60; seconds > 0 {
			s.Cook(heat.Recipe{Stages: []heat.Stage{{In: seg.In, AtMostS: seconds}}}, &p.Curve)
		}
	}
	p.NowC, p.atNow, p.past = s.CoreC(), s, len(p.Curve.Points)
	p.cores = make([]float64, len(c.Asked))
	for i, at := range c.Asked {
		p.cores[i] = Sample(p.Curve, c.Body.StartC, p.NowC, at/f*60)
	}
	at, over := 0.0, false
	if p.hotS, at, over = ripe(p.Curve, c.TargetC, c.TenderS); over {
		p.Done, p.End = at/60*f, s
		return p
	}
	c.finish(&s, &p, f)
	return p
}

// CurveSamples is how many samples a path keeps, about.
const CurveSamples = 150

// again is the path with another future: what is past stays.
func (p Path) again(c *Journey) Path {
	if p.Done <= c.Now {
		return p
	}
	p.Curve.Points = append(make([]heat.Point, 0, p.past+CurveSamples), p.Curve.Points[:p.past]...)
	p.wrap, p.Done = math.NaN(), math.Inf(1)
	s := p.atNow
	c.finish(&s, &p, math.Exp(p.Lnf))
	return p
}

// to runs in the given surroundings until the piece is done, or for at most
// limitS; hotS is how long it has been at its target before.
func (p *Path) to(s *heat.Sim, c *Journey, stage heat.Stage, limitS float64, hotS *float64) bool {
	from := s.ElapsedS()
	if s.CoreC() < c.TargetC && s.Cook(heat.Recipe{Stages: []heat.Stage{stage}, TargetC: c.TargetC, LimitS: limitS}, &p.Curve).Status != heat.Reached {
		return false
	}
	left, hotFrom := c.TenderS-*hotS, s.ElapsedS()
	stage.AtMostS = math.Min(left, limitS-(hotFrom-from))
	if stage.AtMostS > 0 {
		s.Cook(heat.Recipe{Stages: []heat.Stage{stage}}, &p.Curve)
		*hotS += s.ElapsedS() - hotFrom
	}
	return stage.AtMostS >= left
}

// finish runs from now to the target.
func (c *Journey) finish(s *heat.Sim, p *Path, f float64) {
	hotS := p.hotS
	done := func(in heat.Surroundings, limitS float64) bool {
		if !p.to(s, c, heat.Stage{In: in, AtMostS: limitS}, limitS, &hotS) {
			return false
		}
		p.Done, p.End = s.ElapsedS()/60*f, *s
		return true
	}
	for i := 0; i+1 < len(c.Coming); i++ {
		if done(c.Coming[i].In, (c.Coming[i+1].From-c.Coming[i].From)/f*60) {
			return
		}
	}
	in := c.Ahead
	if c.Wrap.Planned {
		if !c.toWrap(s, p, f, done) {
			return
		}
		in = c.Wrap.In
	}
	if p.to(s, c, heat.Stage{In: in}, LongestAhead*60, &hotS) {
		p.Done, p.End = s.ElapsedS()/60*f, *s
	}
}

// toWrap runs to the wrap; false if the cook ends before it.
func (c *Journey) toWrap(s *heat.Sim, p *Path, f float64, done func(heat.Surroundings, float64) bool) bool {
	at := c.Now
	switch {
	case c.Wrap.CoreC == 0:
		at = math.Max(c.Wrap.Minute, c.Now)
	case s.CoreC() < c.Wrap.CoreC && c.Wrap.CoreC > c.TargetC:
		done(c.Ahead, LongestAhead*60)
		return false
	case s.CoreC() < c.Wrap.CoreC:
		stage := heat.Stage{In: c.Ahead}
		if s.Cook(heat.Recipe{Stages: []heat.Stage{stage}, TargetC: c.Wrap.CoreC, LimitS: LongestAhead * 60}, &p.Curve).Status != heat.Reached {
			return false
		}
		at = s.ElapsedS() / 60 * f
	}
	at = c.Wrap.Waits(at)
	if wait := at/f*60 - s.ElapsedS(); wait > 1 && done(c.Ahead, wait) {
		return false
	}
	p.wrap = at
	return true
}

// ripe is how long, in s, the core has been at its target by the end of a curve,
// and when it had been so for as long as it takes, if it had.
func ripe(c heat.Curve, targetC, takesS float64) (hotS, at float64, done bool) {
	for i, p := range c.Points {
		if p.CoreC < targetC {
			continue
		}
		from := p.AtS
		if i > 0 {
			a := c.Points[i-1]
			from = a.AtS
			if a.CoreC < targetC {
				from += (targetC - a.CoreC) / (p.CoreC - a.CoreC) * (p.AtS - a.AtS)
			}
		}
		if hotS += p.AtS - from; hotS >= takesS {
			return hotS, p.AtS - (hotS - takesS), true
		}
	}
	return hotS, 0, false
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
