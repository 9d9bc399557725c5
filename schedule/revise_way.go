package schedule

import (
	"math"

	"example.com/cookday/schedule/internal/heat"
)

// taught is the way after what other pieces said of the grate: its mean error
// and what is left of its spread, in standard deviations of the unknown one.
// z is the quantile that the plan counts with.
func (w way) taught(mean, sd, z float64) way {
	if mean == 0 && sd == 1 || w.spread.S <= 0 {
		return w
	}
	s := spread{Median: w.spread.Median + w.spread.Grate*mean, Grate: w.spread.Grate * sd}
	s.S = math.Hypot(w.spread.own(), s.Grate)
	as := func(p pace, planned float64) pace {
		at := func(z float64) float64 { return p.at((s.Median + s.S*z - w.spread.Median) / w.spread.S) }
		q := pace{early: at(-zTenth), expected: at(0), late: at(zTenth)}
		q.planned = q.at(planned) // by the window that is shown: the line through the old one bends elsewhere
		return q
	}
	w.first = as(w.first, z)
	if w.second.planned > 0 && !w.sear {
		w.second = as(w.second, z)
	}
	w.spread = s
	return w
}

// leastLeft is how long, in minutes, a piece that is not off yet still takes.
const leastLeft = 1

// liveWay is the way of a piece on the grate, counted from its put-on: what has
// passed is fixed, the rest has the spread of the belief.
func (v *revision) liveWay(a *afoot) way {
	b, w := a.believed, a.way()
	least := a.journey.now + leastLeft
	quantiles := [4]float64{b.quantile(0.1), b.quantile(0.5), b.quantile(0.9), b.quantile(v.day.req.Confidence)}
	var done, wrap [4]float64
	for i, x := range quantiles {
		done[i] = math.Min(math.Max(b.done(x), least), a.journey.now+longestAhead)
		wrap[i] = math.Min(math.Max(b.wrap(x), a.journey.now), done[i]-leastLeft)
	}
	of := func(x [4]float64) pace { return pace{early: x[0], expected: x[1], late: x[2], planned: x[3]} }
	total := of(done)
	sear := w.second
	w.first, w.second = total, pace{}
	switch {
	case w.sear:
		w.second = sear
	case a.wrap.set && a.wrapMinute() < least:
		m := a.wrapMinute()
		w.first, w.second = pace{m, m, m, m}, total.plus(pace{-m, -m, -m, -m})
	case a.journey.wrap.planned:
		slowAfterToo(&wrap, done)
		w.first = of(wrap)
		for i := range done {
			done[i] = math.Max(done[i]-wrap[i], leastLeft)
		}
		w.second = of(done)
	}
	if a.with != "" {
		w.with = a.with
	}
	if !w.sear && w.second.planned == 0 {
		w.with = ""
	}
	w.spread = spread{Median: quantiles[1], S: math.Max((quantiles[2]-quantiles[0])/(2*zTenth), 0.005)}
	w.spread.Grate = math.Min(a.way().spread.Grate*b.grateS, 0.95*w.spread.S)
	w.state = b.stateAt(quantiles[1])
	f := math.Exp(quantiles[1])
	w.modelDone, w.modelWrap = total.expected/f, w.first.expected/f
	w.believed, w.journey = b, a.journey
	return w
}

// slowAfterToo keeps the stage after the wrap from being longer on a fast day, or
// shorter on a slow one, than expected: the second of each is the expected one.
func slowAfterToo(wrap *[4]float64, done [4]float64) {
	second := done[1] - wrap[1]
	for i := range wrap {
		switch at := done[i] - second; {
		case done[i] < done[1]:
			wrap[i] = math.Min(math.Max(wrap[i], at), wrap[1])
		default:
			wrap[i] = math.Max(math.Min(wrap[i], at), wrap[1])
		}
	}
}

func (a *afoot) wrapMinute() float64 { return a.wrap.at.Sub(a.on.at).Minutes() }

// stateAt is the piece at its target on the path nearest to x; nil if it never gets there.
func (b *belief) stateAt(x float64) *heat.Sim {
	best := -1
	for i := range b.paths {
		if !math.IsInf(b.paths[i].done, 1) && (best < 0 || math.Abs(b.paths[i].lnf-x) < math.Abs(b.paths[best].lnf-x)) {
			best = i
		}
	}
	if best < 0 {
		return nil
	}
	return &b.paths[best].end
}

// until is the way of a piece that comes off at a minute, done or not: a second
// stage that has not begun is as good as none.
func (w way) until(minute float64, wrapped bool) way {
	all := func(m float64) pace { return pace{m, m, m, m} }
	w.spread = spread{}
	switch {
	case w.stages() == 1:
		w.first = all(minute)
	case wrapped && !w.sear:
		w.first = all(math.Min(w.first.expected, minute-leastLeft))
		w.second = all(minute - w.first.expected)
	default:
		w.first, w.second = all(minute-leastLeft), all(leastLeft)
	}
	return w
}

// clockWay is the way of a piece that the model does not follow: as planned,
// and not done before now.
func (v *revision) clockWay(a *afoot) way {
	w := a.way()
	least := v.now.Sub(a.on.at).Minutes() + leastLeft
	if w.stages() > 1 {
		return w
	}
	for _, m := range []*float64{&w.first.early, &w.first.expected, &w.first.late, &w.first.planned} {
		*m = math.Max(*m, least)
	}
	return w
}

// pastWay is the way of a batch that is off: as long as it took where the log
// says so, else as planned.
func (a *afoot) pastWay() way {
	w := a.way()
	if !a.off.logged && !a.on.logged && !a.wrap.logged && !a.gone {
		return w
	}
	total := math.Max(a.off.at.Sub(a.on.at).Minutes(), leastLeft)
	same := func(m float64) pace { return pace{m, m, m, m} }
	w.first, w.second = same(total), pace{}
	if a.wrap.set && a.wrap.at.Before(a.off.at) && !w.sear {
		m := a.wrapMinute()
		w.first, w.second = same(m), same(total-m)
		if a.with != "" {
			w.with = a.with
		}
	} else if !w.sear {
		w.with = ""
	}
	w.spread = spread{}
	return w
}
