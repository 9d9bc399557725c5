package steer

import (
	"cmp"
	"math"
	"slices"
)

// Want is the level that the cook wants.
type Want struct {
	LevelC      float64
	SteerBottom bool // the bottom vent is the fine control: the cook said so, or the grill is made so
	NoFood      bool // nothing lies on the grate
}

// Marks of the vents. With food on the top is not below an eighth: the bottom closes further instead.
func topMarks() []float64    { return []float64{1. / 8, 1. / 6, 1. / 4, 1. / 3, 1. / 2, 2. / 3, 1} }
func bottomMarks() []float64 { return []float64{1. / 16, 1. / 8, 1. / 4, 1. / 2, 1} }

const (
	leastTop      = 1. / 8
	leastTopWhere = 1. / 4 // where the bottom is the fine control
)

// What a course costs, in F squared: being out of a band of outF counts in full and the rest of the error a quarter, little
// more above mostF, for far off is hardly worse than off and a few wild guesses must not decide; hot counts hotter; what comes
// after lateFrom a little more. Beyond half an hour the next look decides. Moving costs as much as an error of 16 F or so,
// so that small ones are left alone (assumptions, tuned on simulated cooks).
const (
	outF      = 15
	mostF     = 35
	farSlope  = 8
	innerPart = 0.25
	hotter    = 1.1
	lateMore  = 1.3
	lateFrom  = 30
	costFrom  = 6
	costTo    = 30
	moveTop   = 20
	moveOther = 25
	perDouble = 6
	pairsOver = 150 // one vent alone does it badly: try both
	worthIt   = 0.8
	worthLess = 10
	costBits  = 40

	// What nobody foresees, a lid that is lifted, a gust, pushes a fire up more often than down: a little lower is aimed at.
	aimUnderK = 5 / 1.8

	farK          = 35 / 1.8 // so far off, a move is worth more
	eagerFar      = 0.35
	eagerStays    = 0.25
	touchedLately = 20.0 // minutes: what was done is not to be judged yet
	eagerForced   = 0.15
)

func costOf(e float64) float64 {
	if e > 0 {
		e *= hotter
	}
	e = math.Abs(e)
	return bent(max(e-outF, 0)) + innerPart*bent(e)
}

// bent is a square that goes on as a gentle line.
func bent(x float64) float64 {
	if x <= mostF {
		return x * x
	}
	return mostF*mostF + farSlope*(x-mostF)
}

// course is what a choice of vents costs on a few guesses; no further than most, beyond which it does not matter.
func (f *Fire) course(bits []guess, v Vents, levelC, most float64) float64 {
	run := f.runner(bits, v)
	sum, whole := 0.0, courseWeight()*float64(len(bits))
	for m := float64(costFrom); m <= costTo; m += stepMinutes {
		run.to(m)
		air, part := f.airC(f.minute+m), 0.0
		for i := range run.guesses {
			part += costOf(1.8 * (air + run.guesses[i].coals.RiseK - levelC))
		}
		if sum += part * weightAt(m); sum > most*whole {
			break
		}
	}
	return sum / whole
}

func weightAt(minute float64) float64 {
	if minute > lateFrom {
		return lateMore
	}
	return 1
}

func courseWeight() float64 {
	sum := 0.0
	for m := float64(costFrom); m <= costTo; m += stepMinutes {
		sum += weightAt(m)
	}
	return sum
}

// moving is what the hands cost.
func (f *Fire) moving(v Vents, want Want) float64 {
	top, bottom := float64(moveTop), float64(moveOther)
	if want.SteerBottom {
		top, bottom = bottom, top
	}
	return hand(f.top, v.Top, top) + hand(f.bottom, v.Bottom, bottom)
}

func hand(from, to, price float64) float64 {
	if sameMark(from, to) {
		return 0
	}
	return price + perDouble*math.Abs(math.Log2(max(to, leastDrawn)/max(from, leastDrawn)))
}

// leastDrawn stands for a vent that is shut where marks are compared.
const leastDrawn = 1. / 32

// sameMark says whether two openings are one mark: hands are no finer than a twelfth.
func sameMark(a, b float64) bool { return math.Abs(a-b) <= max(a, b)/12+1e-9 }

// choice is the best of the marks and what it costs beside leaving the vents alone.
type choice struct {
	vents      Vents
	cost, stay float64
	move       bool
}

// bits are a few guesses that stand for all: one of each step, from the coolest that the grate may be in half an hour to
// the hottest. Any few of them would cost less and mislead more.
func (f *Fire) bits() []guess {
	if f.few == nil {
		f.few = f.drawBits()
	}
	return f.few
}

func (f *Fire) drawBits() []guess {
	run := f.runner(f.guesses, f.Vents())
	run.to(bitsAt)
	order := make([]int, len(f.guesses))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(run.guesses[a].coals.RiseK, run.guesses[b].coals.RiseK) })
	out := make([]guess, costBits)
	for i := range out {
		out[i] = f.guesses[order[(2*i+1)*len(order)/(2*costBits)]]
	}
	return out
}

const bitsAt = 30.0

func (f *Fire) choose(bits []guess, want Want) choice {
	if f.shut(want) {
		v := f.reopened(want)
		return choice{vents: v, move: v != f.Vents()}
	}
	if f.allowed(f.Vents(), want) && (f.unfelt(want) || f.inBand(bits, want)) {
		return choice{vents: f.Vents()}
	}
	asked := want
	want.LevelC -= aimUnderK
	stay := f.course(bits, f.Vents(), want.LevelC, math.Inf(1))
	best := choice{vents: f.Vents(), cost: stay, stay: stay}
	forced, eager := !f.allowed(f.Vents(), want), 1.0
	switch {
	case forced: // the hands are there already
		best.cost, eager = math.Inf(1), eagerForced
	case f.staysOff(bits, want):
		eager = eagerStays
	case f.far(math.Abs(f.Now().Middle - want.LevelC)):
		eager = eagerFar
	}
	try := func(v Vents) {
		if !f.allowed(v, want) || v == f.Vents() || !forced && !f.step(v, asked) {
			return
		}
		hands := f.moving(v, want) * eager
		if hands >= best.cost {
			return
		}
		if cost := f.course(bits, v, want.LevelC, best.cost-hands) + hands; cost < best.cost {
			best.vents, best.cost = v, cost
		}
	}
	if want.SteerBottom {
		for _, b := range bottomMarks() {
			try(Vents{f.top, b})
		}
	} else {
		for _, t := range topMarks() {
			try(Vents{t, f.bottom})
		}
	}
	if best.cost > pairsOver && !f.oneVentDoes(bits, want) {
		for _, t := range topMarks() {
			for _, b := range bottomMarks() {
				if want.SteerBottom && t != f.top || !want.SteerBottom && b != f.bottom { // else it was tried
					try(Vents{t, b})
				}
			}
		}
	}
	if !forced && (f.staysIn(bits, best.vents, want) || f.against(best.vents, asked)) {
		best.vents = f.Vents()
	}
	if !forced && f.along(best.vents, asked) {
		best.vents = f.Vents()
	}
	best.move = best.vents != f.Vents() && (forced || best.cost < stay-eager*((1-worthIt)*stay+worthLess))
	if !best.move {
		best.vents = f.Vents()
		if v, ok := f.pushed(bits, asked); ok && f.stays(asked) {
			best.vents, best.move = v, true
		}
	}
	return best
}

// staysIn says whether the grate is in its band and there is no reason for these other vents: it was looked at once, its fire grown,
// or they give more air and it is not foretold to sink out of it. What is to go over is met early, for a grate comes down five times
// slower than up.
func (f *Fire) staysIn(bits []guess, v Vents, want Want) bool {
	level := want.LevelC + aimUnderK
	if math.Abs(f.Now().Middle-level) > bandK+atBandK {
		return false
	}
	grown := f.begin.MidCook || f.minute-f.begin.PourMinute > grownMinutes
	return f.grates() < 2 && grown || f.airThrough(v) > f.airThrough(f.Vents()) && f.plain(bits, f.Vents(), costTo).Middle >= level-bandK
}

// grownMinutes is when a fire that was lit does no more grow so fast that one look tells it (assumption).
const grownMinutes = 20.0

// atBandK is what a reading at the edge of the band may be over it and still be in it.
const atBandK = 3 / 1.8

// against says whether vents would push the grate further from its level than it was read just now, out of its band.
func (f *Fire) against(v Vents, want Want) bool {
	more := f.airThrough(v) - f.airThrough(f.Vents())
	for i := len(f.readings) - 1; i >= 0; i-- {
		if r := f.readings[i]; r.Kind == Grate && !r.Deaf {
			off := r.C - want.LevelC
			return f.minute-r.Minute <= besideMinutes && math.Abs(off) > bandK && off*more > 0
		}
	}
	return false
}

// oneVentDoes says whether the fine control alone can bring the grate to its level within an hour: then the other vent is
// left alone. Two vents at once come down sooner, and too far.
func (f *Fire) oneVentDoes(bits []guess, want Want) bool {
	off, v := f.Now().Middle-want.LevelC, f.Vents()
	switch {
	case want.SteerBottom && off < 0:
		v.Bottom = 1
	case want.SteerBottom:
		v.Bottom = bottomMarks()[0]
	case off < 0:
		v.Top = 1
	default:
		v.Top = leastTop
	}
	return off*(f.plain(bits, v, reachMinutes).Middle-want.LevelC) <= 0
}

// staysOff says whether the grate is out of its band, and half an hour later still is: that is not left alone where vents
// can do anything about it.
func (f *Fire) staysOff(bits []guess, want Want) bool {
	off := f.Now().Middle - want.LevelC
	if math.Abs(off) <= bandK || f.minute-f.touched < touchedLately {
		return false
	}
	if math.Abs(off) > farK && f.odd() {
		return true // what a second look confirmed has a cause that nobody knows: it is not taken to pass
	}
	late := f.plain(bits, f.Vents(), costTo).Middle - want.LevelC
	return off*late > 0 && math.Abs(late) > bandK
}

// far says whether the grate is so far off that a move is worth more; after a single look nobody knows that it comes back
// by itself.
func (f *Fire) far(offK float64) bool { return offK > farK || f.grates() < 2 && offK > bandK }

// allowed are the vents that may be advised.
func (f *Fire) allowed(v Vents, want Want) bool {
	least := leastTop
	if want.SteerBottom {
		least = leastTopWhere
	}
	return v.Top >= least-1e-9 && (v.Bottom >= 1./16-1e-9 || v == f.Vents())
}
