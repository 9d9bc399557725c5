package schedule

import (
	"math"
	"time"

	"example.com/cookday/schedule/internal/heat"
)

// journeyStep is how finely the history of the air is looked at, minutes.
const journeyStep = 15

// journeyOf is the day of the piece: the air as measured, wraps, stops, and what
// is to come.
func (v *revision) journeyOf(a *afoot) *journey {
	w := a.way()
	c := &journey{body: a.batch.it.body(a.batch.massKg), now: v.now.Sub(a.on.at).Minutes(), targetC: w.pullC}
	c.everyS = math.Min(math.Max(w.modelDone*60/curveSamples, 5), 300)
	c.endsAs(w, a.batch.it.cut)
	level := w.airC
	marks := []float64{0}
	if len(v.grate.readings)+len(v.grate.outages)+len(v.grate.levels) > 0 {
		step := math.Max(journeyStep, c.now/48)
		for m := step; m < c.now; m += step {
			marks = append(marks, m)
		}
	}
	c.past = v.surrounds(a, marks, level)
	ahead := v.grate.ahead(v.now, func(time.Time) float64 { return level })
	c.ahead = v.envAt(a, v.now.Add(time.Minute), level, ahead)
	if _, dead := v.grate.dead(); dead && !a.oven.set {
		air := v.airFor(a, v.now)
		ready := c.now + float64(v.day.grill.SetupMinutes(v.hearth.fires[v.fireNow()]))
		c.coming = []surround{{c.now, v.envAt(a, v.now, level, (air+v.day.night.AirC)/2)}, {ready, c.ahead}}
	}
	v.wrapToCome(a, c, ahead)
	return c
}

// surrounds are the surroundings of the past, changing at marks and at what was
// done to the piece.
func (v *revision) surrounds(a *afoot, marks []float64, level float64) []surround {
	at := func(t time.Time) { marks = append(marks, math.Max(t.Sub(a.on.at).Minutes(), 0)) }
	for _, k := range []known{a.wrap, a.oven} {
		if k.set {
			at(k.at)
		}
	}
	for _, s := range a.stands {
		at(s.from)
		if !s.open {
			at(s.to)
		}
	}
	marks = sortedMarks(marks)
	var out []surround
	for i, m := range marks {
		middle := m
		if i+1 < len(marks) {
			middle = (m + marks[i+1]) / 2
		}
		t := a.on.at.Add(minutes(middle))
		air := v.airFor(a, t)
		air = level + math.Round((air-level)/airStepK)*airStepK
		in := v.envAt(a, a.on.at.Add(minutes(m)), level, air)
		if n := len(out); n == 0 || out[n-1].in != in {
			out = append(out, surround{m, in})
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
func (v *revision) envAt(a *afoot, t time.Time, level, air float64) heat.Surroundings {
	for _, s := range a.stands {
		if t.Before(s.from) || !s.open && !t.Before(s.to) {
			continue
		}
		if s.kind == LogChilled {
			return heat.Counter(heat.RefrigeratorC)
		}
		return heat.Counter(math.Max(v.day.air.AirC, 10))
	}
	wrapped := a.wrap.set && !t.Before(a.wrap.at)
	if a.oven.set && !t.Before(a.oven.at) {
		ovenC := a.ovenC
		if ovenC == 0 {
			ovenC = level
		}
		in := heat.Oven(ovenC)
		if wrapped {
			in = covered(in, a.with)
		}
		return in
	}
	in := heat.Grate(air, v.day.outdoors)
	if wrapped {
		in = covered(in, a.with)
	}
	return in
}

// wrapToCome adds the wrap that is planned and not done yet.
func (v *revision) wrapToCome(a *afoot, c *journey, ahead float64) {
	w := a.way()
	if a.wrap.set || a.bare || a.oven.set || w.with == "" || w.sear {
		return
	}
	in := covered(heat.Grate(ahead, v.day.outdoors), w.with)
	if a.first != nil && a.first.oven {
		in = covered(heat.Oven(w.levelC), w.with)
	}
	c.wrap = wrapAhead{planned: true, in: in, coreC: w.wrapC, waits: func(m float64) float64 {
		t := v.day.afterQuiet(fixedWindow(a.on.at.Add(minutes(m)))).Expected
		return t.Sub(a.on.at).Minutes()
	}}
	if w.fixed {
		c.wrap.coreC, c.wrap.minute = 0, w.first.planned
	}
}
