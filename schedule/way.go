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
	airC   float64 // what the model is given for that level, of an indirect way
	band   string
	with   string // what the second stage is wrapped in
	wrapC  float64
	fixed  bool // the wrap is by the clock: it waits
	inOven pace // minutes of the second stage if it is in the kitchen oven; zero: not offered
	sear   bool // the second stage is over the hot coals

	first, second pace // minutes; second is zero without a second stage
	spread        spread
	flips         int
	pullC         float64   // core at take-off
	tenderS       float64   // how long it must be tender-hot, at the model's own pace; 0: the core decides
	cost          int       // in the solver's units, over the cut's habit
	state         *heat.Sim // at take-off, at the model's own pace; nil where the model follows nothing
	modelWrap     float64   // minutes to the wrap and to take-off at the model's own pace
	modelDone     float64

	believed *belief // of a piece that is on the grate in a revision, with its journey so far
	journey  *journey
}

func (w way) total() pace { return w.first.plus(w.second) }

// when is what the model shows at an instant in s, in minutes from the put-on at a
// standard normal quantile of the pace: before the wrap with the first stage, which
// may wait for a clock, and after it with the second.
func (w way) when(modelS float64) func(z float64) float64 {
	at := modelS / 60
	return func(z float64) float64 {
		f := w.spread.factor(z)
		if w.stages() == 1 || at <= w.modelWrap {
			return math.Min(at*f, w.first.at(z))
		}
		return math.Min(w.first.at(z)+(at-w.modelWrap)*f, w.total().at(z))
	}
}

func (w way) stages() int {
	if w.second.planned > 0 {
		return 2
	}
	return 1
}

// at is the pace at the standard normal quantile z: a straight line in the
// logarithm through early, expected and late, which it is exactly but for wraps
// that wait for a clock.
func (p pace) at(z float64) float64 {
	from, to := p.expected, p.late
	if z < 0 {
		from, to = p.expected, p.early
	}
	if from <= 0 || to <= 0 {
		return from
	}
	return from * math.Exp(math.Log(to/from)*math.Abs(z)/zTenth)
}

// quantileOf is the inverse of at: the standard normal quantile at which it takes
// so many minutes.
func (p pace) quantileOf(minutes float64) float64 {
	s := p.scaled()
	return s.quantileOf(minutes)
}

// scaledPace is a pace of which much is asked: the slopes of its logarithm below and
// above the median are worked out.
type scaledPace struct {
	pace
	below, above float64
}

func (p pace) scaled() scaledPace {
	return scaledPace{pace: p, below: p.slope(p.early), above: p.slope(p.late)}
}

func (p pace) slope(to float64) float64 { return math.Abs(math.Log(to/p.expected)) / zTenth }

func (p *scaledPace) quantileOf(minutes float64) float64 {
	slope, sign := p.above, 1.0
	if minutes < p.expected {
		slope, sign = p.below, -1
	}
	switch {
	case minutes <= 0:
		return math.Inf(-1)
	case !(slope > 0):
		return sign * math.Inf(1)
	}
	return sign * math.Abs(math.Log(minutes/p.expected)) / slope
}

// quantileOf is that of the whole cook.
func (w way) quantileOf(minutes float64) float64 { return w.total().quantileOf(minutes) }

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
// before the pace counts as sure; nearer than that the spread grows. An asymptote
// within airLimitedK of the boiling point is set by the meat, not by the grate.
const (
	slowMarginK  = 8
	slowSpreadUp = 0.15
	airLimitedK  = 0.5
)
