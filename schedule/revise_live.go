package schedule

import (
	"context"
	"math"
	"time"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
)

// believe follows every piece that cooks beside the coals, judges its readings,
// and shares the grate's error between the pieces.
func (v *revision) believe(ctx context.Context) error {
	var all []*belief
	for _, a := range v.afoot {
		if err := ctx.Err(); err != nil { // a piece with many readings takes milliseconds
			return err
		}
		if a.where == cooking && a.followed() {
			if err := v.follow(ctx, a); err != nil {
				return err
			}
			all = append(all, a.believed)
		}
	}
	mean, sd := shareGrate(all, v.grateRatio())
	for _, a := range v.afoot {
		switch {
		case a.believed != nil:
			a.live = v.liveWay(a)
		case a.where == cooking:
			a.live = v.clockWay(a)
		}
		if a.where == waiting {
			for i, w := range a.batch.ways {
				a.batch.ways[i] = w.taught(mean, sd, v.day.z)
			}
		}
	}
	return nil
}

// followed says whether the model follows the piece from its put-on: whatever
// cooks beside the coals.
func (a *afoot) followed() bool {
	w := a.way()
	return w.state != nil && !w.direct && a.batch.it.cut.Style != cut.Timed
}

// way is the way the batch was put on; of what the log added, its first.
func (a *afoot) way() way {
	if a.first != nil {
		return a.first.way
	}
	return a.batch.ways[0]
}

// grateRatio is how much of the grate's error is left where a thermometer stands
// beside the meat.
func (v *revision) grateRatio() float64 {
	for _, r := range v.grate.readings {
		if !r.gauge {
			return measuredShare
		}
	}
	return 1
}

// follow runs the piece through its day at all paces and weighs its readings.
func (v *revision) follow(ctx context.Context, a *afoot) error {
	a.journey = v.journeyOf(a)
	a.readings = nil
	for _, e := range a.cores {
		a.readings = append(a.readings, reading{minute: e.At.Sub(a.on.at).Minutes(), coreC: e.C})
		a.journey.asked = append(a.journey.asked, e.At.Sub(a.on.at).Minutes())
	}
	b, err := newBelief(ctx, a.journey, a.way().spread, a.batch.it.cut.Style == cut.Tough)
	if err != nil {
		return err
	}
	a.believed = b
	b.whole, b.lost, b.place = a.way().modelDone, v.lostMinutes(a), v.placeSpread(a)
	sieve{
		fast: &b.paths[0], slow: &b.paths[len(b.paths)-1], errorK: b.errorK, paths: b.paths,
		airC:     func(m float64) float64 { return v.airFor(a, a.on.at.Add(minutes(m))) },
		outsideC: v.day.air.AirC,
		cooking:  func(from, to float64) bool { return v.onFire(a, from, to) },
		targetC:  a.way().pullC,
	}.sift(a.readings)
	return b.weigh(ctx, a.readings)
}

// lostMinutes is how long the piece has been without heat since its put-on.
func (v *revision) lostMinutes(a *afoot) float64 {
	lost := 0.0
	for _, e := range v.episodes(a) {
		lost += e.ToMinute - e.FromMinute
	}
	return lost
}

// placeSpread is what the place of the probe does to the instant of the take-off,
// as a standard deviation of the logarithm of the whole cook.
func (v *revision) placeSpread(a *afoot) float64 {
	w := a.way()
	if w.state == nil || w.modelDone <= 0 {
		return 0
	}
	const aheadS = 60.0
	in := heat.Grate(w.airC, v.day.outdoors)
	if w.with != "" {
		in = covered(in, w.with)
	}
	s := *w.state
	s.Change(in)
	before := s.CoreC()
	s.Cook(heat.Recipe{Stages: []heat.Stage{{In: in, AtMostS: aheadS}}}, nil)
	riseK := s.CoreC() - before
	if riseK <= 0 {
		return mostPlaceSpread
	}
	return math.Min(placeErrorK/(riseK/aheadS*60)/w.modelDone, mostPlaceSpread)
}

// onFire says whether the piece was on a live fire from one minute to another.
func (v *revision) onFire(a *afoot, from, to float64) bool {
	start, end := a.on.at.Add(minutes(from)), a.on.at.Add(minutes(to))
	for _, s := range a.stands {
		if s.from.Before(end) && start.Before(s.to.Add(time.Hour)) {
			return false
		}
	}
	for _, o := range v.grate.outages {
		if o.from.Before(end) && start.Before(o.to.Add(time.Hour)) {
			return false
		}
	}
	return true
}

// airFor is the air beside the piece at an instant of the past.
func (v *revision) airFor(a *afoot, at time.Time) float64 {
	level := a.way().airC
	return v.grate.airAt(at, func(time.Time) float64 { return level })
}

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
