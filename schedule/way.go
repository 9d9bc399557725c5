package schedule

import (
	"math"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/heat"
)

// pace is one length of time, minutes, at four quantiles: the 10th, 50th and
// 90th percentile and the asked chance, which is what the plan counts with.
type pace struct{ early, expected, late, planned float64 }

// paces applies f to the four standard normal quantiles; z is that of the
// asked chance.
func paces(z float64, f func(z float64) float64) pace {
	return pace{early: f(-zTenth), expected: f(0), late: f(zTenth), planned: f(z)}
}

func (p pace) plus(q pace) pace {
	return pace{p.early + q.early, p.expected + q.expected, p.late + q.late, p.planned + q.planned}
}

func (p pace) minutes() Minutes { return Minutes{Early: p.early, Expected: p.expected, Late: p.late} }

// way is one way of cooking a lot: where, how hot, under what, and how long.
type way struct {
	kind   string // of the first stage: bare or sear
	direct bool
	levelC float64 // of the fire for an indirect way; of the air over the coals for a direct one
	band   string
	with   string // what the second stage is wrapped in
	wrapC  float64
	fixed  bool // the wrap is by the clock: it waits
	oven   bool // the second stage is in the kitchen oven
	sear   bool // the second stage is over the hot coals

	first, second pace // minutes; second is zero without a second stage
	spread        spread
	flips         int
	pullC         float64  // core at take-off
	cost          int      // in the solver's units, over the cut's habit
	state         heat.Sim // at take-off, at the model's own pace
	held          bool     // state is set
	modelWrap     float64  // minutes to the wrap and to take-off at the model's own pace
	modelDone     float64
}

func (w way) total() pace { return w.first.plus(w.second) }

func (w way) stages() int {
	if w.second.planned > 0 {
		return 2
	}
	return 1
}

// finishAt is the whole cook in minutes at the standard normal quantile z,
// interpolated between the four known paces in the logarithm of time, where
// it is a straight line but for wraps that wait.
func (w way) quantileOf(minutes float64) float64 {
	t := w.total()
	if w.spread.S <= 0 || minutes <= 0 {
		return math.Inf(1)
	}
	lo, hi := t.expected, t.late
	zlo, zhi := 0.0, zTenth
	if minutes < t.expected {
		lo, hi, zlo, zhi = t.early, t.expected, -zTenth, 0
	}
	slope := (zhi - zlo) / (math.Log(hi) - math.Log(lo))
	if math.IsNaN(slope) || math.IsInf(slope, 0) {
		slope = 1 / w.spread.S
	}
	return zlo + slope*(math.Log(minutes)-math.Log(lo))
}

// spreadOf is the uncertainty of a cook: measured log errors of the heat model
// against government charts, university records and cooks' logs. Rows for
// direct heat and small pieces are widened because fires differ.
func spreadOf(c cut.Cut, direct bool, levelC float64) spread {
	const hotFromC = 148 // 300 F
	switch {
	case direct:
		return spread{S: 0.20}
	case c.Spread == "tough":
		return spread{Median: -0.10, S: 0.20}
	case c.Spread == "tough-thin":
		return spread{Median: 0.10, S: 0.25}
	case c.Style == cut.Bird:
		return spread{Median: -0.05, S: 0.25}
	case c.Style == cut.Roast && levelC < hotFromC:
		return spread{Median: -0.07, S: 0.27}
	case c.Style == cut.Roast:
		return spread{S: 0.16}
	}
	return spread{S: 0.20}
}

// slowMarginK is how far the asymptote of the core may lie above the target
// before the pace counts as sure; nearer than that the spread grows.
const (
	slowMarginK  = 8
	slowSpreadUp = 0.15
)
