package revise

import (
	"math"

	"example.com/cookday/schedule/internal/instant"
	"example.com/cookday/schedule/planner/internal/assemble"
	"example.com/cookday/schedule/planner/internal/belief"
	"example.com/cookday/schedule/planner/internal/day"
	"example.com/cookday/schedule/planner/internal/spread"
)

// wayTaught is the way after what other pieces said of the grate: its mean error
// and what is left of its spread, in standard deviations of the unknown one.
func wayTaught(w day.Way, mean, sd float64) day.Way {
	if mean == 0 && sd == 1 || w.Spread.S <= 0 {
		return w
	}
	s := w.Spread.Told(mean, sd)
	as := func(p spread.Pace) spread.Pace {
		at := func(z float64) float64 { return p.At(w.Spread.Z(math.Log(s.Factor(z)))) }
		q := spread.Pace{Early: at(-spread.ZTenth), Expected: at(0), Late: at(spread.ZTenth)}
		q.Planned = q.At(w.Z) // by the window that is shown: the line through the old one bends elsewhere
		return q
	}
	w.First = as(w.First)
	if w.Second.Planned > 0 && !w.Sear {
		w.Second = as(w.Second)
	}
	w.Spread = s
	return w
}

// liveWay is the way of a piece on the grate, counted from its put-on: what has
// passed is fixed, the rest has the spread of the belief.
func (v *Revision) liveWay(a *liveBatch) day.Way {
	b, w := a.believed, a.way()
	least := a.journey.Now + assemble.LeastLeft
	if n := len(a.journey.Coming); n > 0 && v.overDeadFire(a) && b.Rest != nil {
		least = math.Max(least, a.journey.Coming[n-1].From+assemble.LeastLeft) // no fire burns before that
	}
	var done, wrap [4]float64
	for i, p := range []float64{0.1, 0.5, 0.9, v.day.Req.Confidence} {
		done[i] = math.Min(math.Max(b.Quantile(p), least), a.journey.Now+belief.LongestAhead)
		wrap[i] = b.WrapAt(p)
		if wrap[i] < done[i] && a.journey.Wrap.Planned {
			wrap[i] = a.journey.Wrap.Waits(math.Max(wrap[i], a.journey.Now))
		}
		wrap[i] = math.Min(math.Max(wrap[i], a.journey.Now), done[i]-assemble.LeastLeft)
	}
	if w.Others = a.awaitsOthers(); w.Others {
		v.withOthers(a, &done, least)
	}
	of := func(x [4]float64) spread.Pace {
		return spread.Pace{Early: x[0], Expected: x[1], Late: x[2], Planned: x[3]}
	}
	total := of(done)
	sear := w.Second
	w.First, w.Second = total, spread.Pace{}
	switch {
	case w.Sear:
		w.Second = sear
	case a.wrap.set && a.wrapMinute() < least:
		m := a.wrapMinute()
		w.First, w.Second = spread.Same(m), total.Plus(spread.Same(-m))
	case a.journey.Wrap.Planned && b.Wraps():
		slowAfterToo(&wrap, done)
		w.Fixed = w.Fixed && (a.wrapsByClock() || v.day.InQuiet(a.on.at.Add(instant.Minutes(b.WrapAt(0.5)))))
		w.First, w.Second = of(wrap), of(afterWrap(wrap, done))
	}
	if a.with != "" {
		w.With = a.with
	}
	if !w.Sear && w.Second.Planned == 0 {
		w.With = ""
	}
	whole := func(minutes float64) float64 { return math.Log(minutes / w.ModelDone) }
	w.Spread = spread.Between(whole(total.Early), whole(total.Expected), whole(total.Late))
	w.Spread.Grate = math.Min(a.way().Spread.Grate*b.GrateS, 0.95*w.Spread.S)
	w.State, w.Believed = b.End(), b
	w.ModelWrap = w.First.Expected / math.Exp(w.Spread.Median)
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

// afterWrap is the stage after the wrap: what a wrap was moved for is not lost again to the
// last digit of a difference.
func afterWrap(wrap, done [4]float64) (out [4]float64) {
	for i := range out {
		out[i] = math.Max(done[i]-wrap[i], assemble.LeastLeft)
	}
	for i := range out {
		if done[i] < done[1] {
			out[i] = math.Min(out[i], out[1])
		} else {
			out[i] = math.Max(out[i], out[1])
		}
	}
	return out
}

func (a *liveBatch) wrapMinute() float64 { return a.wrap.at.Sub(a.on.at).Minutes() }

// wayUntil is the way of a piece that comes off at a minute, done or not: a second
// stage that has not begun is as good as none.
func wayUntil(w day.Way, minute float64, wrapped bool) day.Way {
	w.Spread = spread.Spread{}
	switch {
	case w.Stages() == 1:
		w.First = spread.Same(minute)
	case wrapped && !w.Sear:
		w.First = spread.Same(math.Min(w.First.Expected, minute-assemble.LeastLeft))
		w.Second = spread.Same(minute - w.First.Expected)
	default:
		w.First, w.Second = spread.Same(minute-assemble.LeastLeft), spread.Same(assemble.LeastLeft)
	}
	return w
}

// clockWay is the way of a piece that the model does not follow: as planned,
// and not done before now.
func (v *Revision) clockWay(a *liveBatch) day.Way {
	w := a.way()
	least := v.now.Sub(a.on.at).Minutes() + assemble.LeastLeft
	if w.Stages() > 1 {
		return w
	}
	for _, m := range []*float64{&w.First.Early, &w.First.Expected, &w.First.Late, &w.First.Planned} {
		*m = math.Max(*m, least)
	}
	return w
}

// leftBare says whether a piece was not wrapped on the grate: as the cook said, or for it was
// carried indoors before that.
func (a *liveBatch) leftBare() bool { return a.bare || a.oven.set && !a.wrap.set }

// pastWay is the way of a batch that is off: as long as it took where the log
// says so, else as planned.
func (a *liveBatch) pastWay() day.Way {
	w := a.way()
	if !a.off.logged && !a.on.logged && !a.wrap.logged && !a.gone && !a.leftBare() {
		return w
	}
	total := math.Max(a.off.at.Sub(a.on.at).Minutes(), assemble.LeastLeft)
	w.First, w.Second = spread.Same(total), spread.Pace{}
	if a.wrap.set && a.wrap.at.Before(a.off.at) && !w.Sear {
		m := a.wrapMinute()
		w.First, w.Second = spread.Same(m), spread.Same(total-m)
		if a.with != "" {
			w.With = a.with
		}
	} else if !w.Sear {
		w.With = ""
	}
	w.Spread = spread.Spread{}
	return w
}
