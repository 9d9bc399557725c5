package schedule

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
)

// journey is the day of one piece so far and as it is going on: what surrounds
// it, in minutes from its put-on. A pace f runs through it f times slower than
// the model does.
type journey struct {
	body    heat.Body
	past    []surround // from minute 0; the last one holds until now
	now     float64    // minutes from the put-on
	asked   []float64  // minutes at which the core is wanted
	coming  []surround // timed, from now on: a fire that has to be rebuilt
	ahead   heat.Surroundings
	wrap    wrapAhead
	targetC float64
	tenderS float64 // how long it must be that hot, at the model's own pace; 0: it is done there
	everyS  float64 // between samples of the curve, at the model's own pace
}

// endsAs sets where a cook on the grate ends: before the sear, when it has been
// tender-hot for long enough, or at its target.
func (c *journey) endsAs(w way, kind cut.Cut) {
	switch {
	case w.sear:
		c.targetC = w.wrapC
	case w.tenderS > 0:
		c.targetC, c.tenderS = kind.TenderAboveC, w.tenderS
	default:
		c.targetC = w.pullC
	}
}

// surround is what the piece feels from a minute on.
type surround struct {
	from float64
	in   heat.Surroundings
}

// wrapAhead is a wrap that is still to come, at a core temperature or a minute.
type wrapAhead struct {
	in      heat.Surroundings // under the wrap
	coreC   float64           // 0: by the minute
	minute  float64
	planned bool
	waits   func(minute float64) float64 // to the end of quiet hours
}

// path is what the model makes of a course at one pace. Minutes are from the
// put-on; done is +Inf where the core never gets there.
type path struct {
	lnf        float64
	cores      []float64 // at the asked minutes
	nowC       float64
	wrap, done float64
	end        heat.Sim // at the target, at the model's own pace
	curve      heat.Curve

	atNow heat.Sim // where what is to come begins
	past  int      // points of the curve up to then
	hotS  float64  // how long it has been at its target by then
}

// longestAhead bounds, in minutes, what a piece may still take.
const longestAhead = 48 * 60

// run follows the course at the pace exp(lnf).
func (c *journey) run(lnf float64) path {
	f := math.Exp(lnf)
	p := path{lnf: lnf, wrap: math.NaN(), done: math.Inf(1)}
	p.curve.EveryS = c.everyS
	p.curve.Points = make([]heat.Point, 0, 2*curveSamples)
	var s heat.Sim
	s.StartWith(c.body, c.past[0].in, heat.Coarse)
	for i, seg := range c.past {
		until := c.now
		if i+1 < len(c.past) {
			until = math.Min(c.past[i+1].from, c.now)
		}
		if seconds := (until - seg.from) / f * 60; seconds > 0 {
			s.Cook(heat.Recipe{Stages: []heat.Stage{{In: seg.in, AtMostS: seconds}}}, &p.curve)
		}
	}
	p.nowC, p.atNow, p.past = s.CoreC(), s, len(p.curve.Points)
	p.cores = make([]float64, len(c.asked))
	for i, at := range c.asked {
		p.cores[i] = sample(p.curve, c.body.StartC, p.nowC, at/f*60)
	}
	at, over := 0.0, false
	if p.hotS, at, over = ripe(p.curve, c.targetC, c.tenderS); over {
		p.done, p.end = at/60*f, s
		return p
	}
	c.finish(&s, &p, f)
	return p
}

// curveSamples is how many samples a path keeps, about.
const curveSamples = 150

// again is the path with another future: what is past stays.
func (p path) again(c *journey) path {
	if p.done <= c.now {
		return p
	}
	p.curve.Points = append(make([]heat.Point, 0, p.past+curveSamples), p.curve.Points[:p.past]...)
	p.wrap, p.done = math.NaN(), math.Inf(1)
	s := p.atNow
	c.finish(&s, &p, math.Exp(p.lnf))
	return p
}

// to runs in the given surroundings until the piece is done, or for at most
// limitS; hotS is how long it has been at its target before.
func (p *path) to(s *heat.Sim, c *journey, stage heat.Stage, limitS float64, hotS *float64) bool {
	from := s.ElapsedS()
	if s.CoreC() < c.targetC && s.Cook(heat.Recipe{Stages: []heat.Stage{stage}, TargetC: c.targetC, LimitS: limitS}, &p.curve).Status != heat.Reached {
		return false
	}
	left, hotFrom := c.tenderS-*hotS, s.ElapsedS()
	stage.AtMostS = math.Min(left, limitS-(hotFrom-from))
	if stage.AtMostS > 0 {
		s.Cook(heat.Recipe{Stages: []heat.Stage{stage}}, &p.curve)
		*hotS += s.ElapsedS() - hotFrom
	}
	return stage.AtMostS >= left
}

// finish runs from now to the target.
func (c *journey) finish(s *heat.Sim, p *path, f float64) {
	hotS := p.hotS
	done := func(in heat.Surroundings, limitS float64) bool {
		if !p.to(s, c, heat.Stage{In: in, AtMostS: limitS}, limitS, &hotS) {
			return false
		}
		p.done, p.end = s.ElapsedS()/60*f, *s
		return true
	}
	for i := 0; i+1 < len(c.coming); i++ {
		if done(c.coming[i].in, (c.coming[i+1].from-c.coming[i].from)/f*60) {
			return
		}
	}
	in := c.ahead
	if c.wrap.planned {
		if !c.toWrap(s, p, f, done) {
			return
		}
		in = c.wrap.in
	}
	if p.to(s, c, heat.Stage{In: in}, longestAhead*60, &hotS) {
		p.done, p.end = s.ElapsedS()/60*f, *s
	}
}

// toWrap runs to the wrap; false if the cook ends before it.
func (c *journey) toWrap(s *heat.Sim, p *path, f float64, done func(heat.Surroundings, float64) bool) bool {
	at := c.now
	switch {
	case c.wrap.coreC == 0:
		at = math.Max(c.wrap.minute, c.now)
	case s.CoreC() < c.wrap.coreC && c.wrap.coreC > c.targetC:
		done(c.ahead, longestAhead*60)
		return false
	case s.CoreC() < c.wrap.coreC:
		stage := heat.Stage{In: c.ahead}
		if s.Cook(heat.Recipe{Stages: []heat.Stage{stage}, TargetC: c.wrap.coreC, LimitS: longestAhead * 60}, &p.curve).Status != heat.Reached {
			return false
		}
		at = s.ElapsedS() / 60 * f
	}
	at = c.wrap.waits(at)
	if wait := at/f*60 - s.ElapsedS(); wait > 1 && done(c.ahead, wait) {
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
