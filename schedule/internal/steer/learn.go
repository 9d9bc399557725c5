package steer

import (
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
)

// A cook teaches its grill where it was watched and moved: one settled figure teaches nothing (on reports of cooks the
// usual figures foretold better than what one or two of them had taught).
const (
	learnReads = 6
	learnMoves = 2
	oddShare   = 1. / 3 // a log of which so many readings cannot be is no teacher
	firstStep  = 1.     // times what is unsure of a figure, that the first cook may move it
	mostStep   = 0.5    // and a later one: one odd log moves little
	mostOff    = 2.5    // and that it may ever be from the usual grill's
	leastSure  = 0.35   // of the spread between grills that is always left
)

// How a whole log is weighed: draws of the grill run through it untouched. A reading is off by fitF, once in a while by
// wildF, for the fire of a day is no clock; readings closer than apartMinutes are one. So many draws have to stay alive that
// no single one makes the record (assumptions, chosen on simulated cooks).
const (
	learnDraws   = 1200
	leastAlive   = 40
	fitK         = 20 / 1.8
	fitWildK     = 80 / 1.8
	fitWildShare = 0.1
	apartMinutes = 60.0
)

// Learned is the record of the grill after this fire, for the next one. It is not taught by a fire that was hardly read or
// moved, nor by a log that cannot be: then it is the record before, and ok is false.
func (f *Fire) Learned() (r Record, ok bool) {
	if f.begin.Own != nil {
		r = *f.begin.Own
	}
	if !f.teaches() {
		return r, false
	}
	draws, weights := f.weighed()
	before, usual := f.begin.record(), usualRecord(&Begin{})
	next := Record{Cooks: r.Cooks + 1, Figures: map[string]Figure{}}
	plain := f.begin.Grill.Usual()
	most := mostStep
	if len(r.Figures) == 0 {
		most = firstStep
	}
	for _, k := range traitKeys {
		mean, sd := logsOf(draws, weights, k, *k.of(&plain))
		was, wide := before[k.key], usual[k.key].Spread
		step := clamp(mean-math.Log(was.Middle), most*was.Spread)
		next.Figures[k.key] = Figure{
			Middle: math.Exp(clamp(math.Log(was.Middle)+step, mostOff*wide)),
			Spread: min(max(sd, k.floor()*wide), wide),
		}
	}
	return next, true
}

// weighed are draws of the grill, each with how well the whole log fits it; the weights add up to 1.
func (f *Fire) weighed() ([]guess, []float64) {
	b := *f.begin
	b.Seed++
	w := &weigher{logs: make([]float64, learnDraws), last: math.Inf(-1)}
	run := newFire(&b, f.log, learnDraws)
	run.weigher = w
	run.burn(f.log, f.minute)
	return run.guesses, w.weights()
}

// weigher takes what readings say of draws that nothing moves.
type weigher struct {
	logs []float64 // of each draw
	last float64   // minute of the reading before
}

func (w *weigher) read(guesses []guess, k Kind, rise, minute float64) {
	part := min(1, (minute-w.last)/apartMinutes)
	w.last = minute
	for i := range guesses {
		e := rise - guesses[i].shows(k)
		fit := (1-fitWildShare)/fitK*math.Exp(-e*e/(2*fitK*fitK)) + fitWildShare/fitWildK*math.Exp(-e*e/(2*fitWildK*fitWildK))
		w.logs[i] += part * math.Log(max(fit, math.SmallestNonzeroFloat64))
	}
}

// weights are softened until enough of the draws count.
func (w *weigher) weights() []float64 {
	best := slices.Max(w.logs)
	for soft := 1.0; ; soft *= 0.8 {
		out, sum, squares := make([]float64, len(w.logs)), 0.0, 0.0
		for i, l := range w.logs {
			out[i] = math.Exp(soft * (l - best))
			sum += out[i]
		}
		for i := range out {
			out[i] /= sum
			squares += out[i] * out[i]
		}
		if 1/squares >= leastAlive {
			return out
		}
	}
}

// floor is the share of the spread between grills that no number of cooks takes away.
func (k traitKey) floor() float64 {
	if k.least > 0 {
		return k.least
	}
	return leastSure
}

func clamp(x, most float64) float64 { return min(max(x, -most), most) }

// teaches says whether anything is to be learned of this fire.
func (f *Fire) teaches() bool {
	odd := 0
	for _, r := range f.readings {
		if r.Surprise > oddSurprise {
			odd++
		}
	}
	return f.grates() >= learnReads && f.moves >= learnMoves && float64(odd) <= oddShare*float64(len(f.readings))
}

// logsOf are mean and spread of the logarithm of a trait over weighed draws, against the usual grill's.
func logsOf(draws []guess, weights []float64, k traitKey, usual float64) (mean, sd float64) {
	for i := range draws {
		mean += weights[i] * math.Log(*k.of(&draws[i].traits)/usual)
	}
	for i := range draws {
		d := math.Log(*k.of(&draws[i].traits)/usual) - mean
		sd += weights[i] * d * d
	}
	return mean, math.Sqrt(sd)
}

// Traits are the middles of what is known of a grill: the usual ones, or its own.
func (r *Record) Traits(usual fire.Traits) fire.Traits {
	if r == nil {
		return usual
	}
	for _, k := range traitKeys {
		if f, known := r.Figures[k.key]; known && f.Middle > 0 {
			*k.of(&usual) *= f.Middle
		}
	}
	return usual
}

// FigureNames are the names of what is learned, in their order.
func FigureNames() []string {
	var out []string
	for _, k := range traitKeys {
		out = append(out, k.key)
	}
	return out
}
