package revise

import (
	"math"
	"time"

	"example.com/cookday/schedule"
	"example.com/cookday/schedule/internal/heat"
	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/internal/plans"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
)

// journeyStep is how finely the history of the air is looked at, minutes.
const journeyStep = 15

// journeyOf is the day of the piece: the air as measured, wraps, stops, and what
// is to come.
func (v *Revision) journeyOf(a *liveBatch) *belief.Journey {
	if !v.countsOnRecovery(a) {
		x := *v
		x.grate.cold, v = nil, &x
	}
	w := a.way()
	c := &belief.Journey{Body: a.batch.It.Body(a.batch.MassKg), Now: v.until(a).Sub(a.on.at).Minutes(), TargetC: w.PullC, Indoors: v.inOven(a) && !a.oven.at.After(v.now), Wrapped: math.NaN()}
	if a.wrap.set {
		c.Wrapped = a.wrapMinute()
	}
	c.EveryS = math.Min(math.Max(w.ModelDone*60/belief.CurveSamples, 5), 300)
	day.JourneyEndsAs(c, w, a.batch.It.Cut)
	c.TargetC = math.Min(c.TargetC, a.searFrom())
	level := w.AirC
	marks := []float64{0}
	if len(v.grate.readings)+len(v.grate.outages)+len(v.grate.levels) > 0 {
		step := math.Max(journeyStep, c.Now/48)
		for m := step; m < c.Now; m += step {
			marks = append(marks, m)
		}
	}
	c.Past = v.surrounds(a, marks, level)
	ahead := v.grate.ahead(v.now, func(time.Time) float64 { return level })
	coming := v.comingAir()
	if a.sent != "" {
		coming = nil
	}
	if n := len(coming); n > 0 {
		ahead = coming[n-1].c
	}
	ready := c.Now + float64(v.day.Grill.SetupMinutes(v.hearth.Fires[v.fireNow()]))
	_, dead := v.grate.dead()
	switch {
	case a.oven.set && a.oven.at.After(v.now): // it is carried in before it is done
		in := v.envAt(a, v.now.Add(time.Minute), level, ahead)
		ready = math.Max(a.oven.at.Sub(a.on.at).Minutes(), c.Now+1)
		c.Coming = []belief.Surround{{From: c.Now, In: in}, {From: ready}}
	case a.oven.set:
	case dead: // it is rebuilt
		air := v.airFor(a, v.now)
		c.Coming = []belief.Surround{{From: c.Now, In: v.envAt(a, v.now, level, (air+v.day.Night.AirC)/2)}, {From: ready}}
	case v.grate.sinks(): // it is fed, and grows
		c.Coming = []belief.Surround{{From: c.Now, In: v.envAt(a, v.now, level, ahead)}, {From: ready}}
		ahead = level
	}
	c.Ahead = v.envAt(a, instant.Later(v.now.Add(time.Minute), a.oven.at), level, ahead)
	if n := len(c.Coming); n > 0 {
		c.Coming[n-1].In = c.Ahead
	}
	for _, air := range coming {
		if in := v.envAt(a, v.now.Add(time.Minute), level, level+math.Round((air.c-level)/airStepK)*airStepK); len(c.Coming) == 0 || c.Coming[len(c.Coming)-1].In != in {
			c.Coming = append(c.Coming, belief.Surround{From: c.Now + air.minutes, In: in})
		}
	}
	v.wrapToCome(a, c, ahead)
	return c
}

// surrounds are the surroundings of the past, changing at marks and at what was
// done to the piece.
func (v *Revision) surrounds(a *liveBatch, marks []float64, level float64) []belief.Surround {
	at := func(t time.Time) { marks = append(marks, math.Max(t.Sub(a.on.at).Minutes(), 0)) }
	for _, k := range []known{a.wrap, a.oven} {
		if k.set {
			at(k.at)
		}
	}
	for _, o := range v.grate.outages {
		if at(instant.Later(o.from, a.on.at)); !o.open {
			at(instant.Later(o.to, a.on.at))
		}
	}
	for _, h := range a.heats {
		at(h.at)
	}
	for _, s := range a.indoors {
		at(s.from)
		at(s.to)
		for _, h := range s.heats {
			at(h.at)
		}
	}
	for _, s := range a.stands {
		at(s.from)
		if !s.open {
			at(s.to)
		}
	}
	marks = sortedMarks(marks)
	var out []belief.Surround
	for i, m := range marks {
		middle := m
		if i+1 < len(marks) {
			middle = (m + marks[i+1]) / 2
		}
		t := a.on.at.Add(instant.Minutes(middle))
		air := v.airFor(a, t)
		air = level + math.Round((air-level)/airStepK)*airStepK
		in := v.envAt(a, a.on.at.Add(instant.Minutes(m)), level, air)
		if n := len(out); n == 0 || out[n-1].In != in {
			out = append(out, belief.Surround{From: m, In: in})
		}
	}
	return out
}

func sortedMarks(marks []float64) []float64 {
	for i := 1; i < len(marks); i++ {
		for j := i; j > 0 && marks[j] < marks[j-1]; j-- {
			marks[j], marks[j-1] = marks[j-1], marks[j]
		}
	}
	return marks
}

// envAt is what surrounds the piece from an instant on, in air of that temperature.
func (v *Revision) envAt(a *liveBatch, t time.Time, level, air float64) heat.Surroundings {
	for _, s := range a.stands {
		if t.Before(s.from) || !s.open && !t.Before(s.to) {
			continue
		}
		if s.kind == schedule.LogChilled {
			return heat.Counter(heat.RefrigeratorC)
		}
		return heat.Counter(math.Max(v.day.Air.AirC, 10))
	}
	wrapped := a.wrap.set && !t.Before(a.wrap.at)
	if a.oven.set && !t.Before(a.oven.at) {
		return a.inside(a.ovenAtC(t), level, t)
	}
	if s, was := a.wasIndoors(t); was {
		return a.inside(s.at(t), level, t)
	}
	in := heat.Grate(air, v.day.Outdoors)
	if wrapped {
		in = day.Covered(in, a.with)
	}
	return in
}

// wrapsByClock says whether the cook asked for the wrap after a time; one that only waits
// for the end of quiet hours goes by the core once they are over.
func (a *liveBatch) wrapsByClock() bool {
	wrap := a.batch.It.Dish.Wrap
	return a.way().Fixed && wrap != nil && wrap.After != nil
}

// wrapToCome adds the wrap that is planned and not done yet.
func (v *Revision) wrapToCome(a *liveBatch, c *belief.Journey, ahead float64) {
	w := a.way()
	if a.wrap.set || a.bare || a.oven.set || w.With == "" || w.Sear {
		return
	}
	in := day.Covered(heat.Grate(ahead, v.day.Outdoors), w.With)
	if a.first != nil && a.first.Oven {
		in = day.Covered(heat.Oven(w.LevelC), w.With)
	}
	c.Wrap = belief.WrapAhead{Planned: true, In: in, CoreC: w.WrapC, Waits: func(m float64) float64 {
		t := v.day.AfterQuiet(plans.FixedWindow(a.on.at.Add(instant.Minutes(m)))).Expected
		return t.Sub(a.on.at).Minutes()
	}}
	if a.wrapsByClock() {
		c.Wrap.CoreC, c.Wrap.Minute = 0, w.First.Planned
	}
}
