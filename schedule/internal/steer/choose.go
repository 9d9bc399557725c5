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

// What a minute costs, as a share of one out of the band: nothing at the level, innerPart at the band's edge, beyond which comes the whole,
// not at once, for nobody knows the edge that well, and then farSlope for each degree; hot counts hotter. Moving costs as much as so
// many such minutes of the costTo that are looked ahead, a doubling of the opening perDouble more (assumptions, tuned on simulated cooks).
const (
	bandF     = 1.8 * bandK
	edgeF     = 4.0
	innerPart = 0.2
	farSlope  = 0.0128
	hotter    = 1.25
	costFrom  = 6
	costTo    = 36
	moveTop   = 0.075
	moveOther = 0.105
	perDouble = 0.035
	costBits  = 40

	// What nobody foresees, a lid that is lifted, a gust, pushes a fire up more often than down: a little lower is aimed at.
	aimUnderK = 4.5 / 1.8

	eagerForced = 0.15 // of the price of a move where hands are at the vents already
)

// Of a grill that cooks taught more of what is foretold comes true: the margin for what nobody foresees may be smaller, and a move has to
// be worth more. Its guesses agree more, too; it is looked at as often as in a first cook nevertheless, not less. On 300 simulated grills
// each of two seeds a third cook was so outside its band for 0.95 of a first one's minutes with 0.88 of its moves and as many
// overshoots; with the same figures a stranger's grill has 0.98, 0.93 and 1.08 of them, a taught one without them 0.99, 0.94 and 0.92.
const (
	taughtCooks = 2
	taughtPrice = 1.35 // times the price of a move
	taughtUnder = 0.6  // times the margin
	taughtShare = 0.2  // as lookShare
)

// taught says whether some cooks taught the grill of this fire.
func (f *Fire) taught() bool {
	own := f.begin.Own
	return own != nil && own.Cooks >= taughtCooks && len(own.Figures) > 0
}

// under is by how much lower than the level is aimed at.
func (f *Fire) under() float64 {
	if f.taught() {
		return taughtUnder * aimUnderK
	}
	return aimUnderK
}

func costOf(e float64) float64 {
	if e > 0 {
		e *= hotter
	}
	e = math.Abs(e)
	in := min(e/bandF, 1)
	return innerPart*in*in + 1/(1+math.Exp((bandF-e)/edgeF)) + farSlope*max(e-bandF, 0)
}

// course is what a choice of vents costs on a few guesses; no further than most, beyond which it does not matter.
func (f *Fire) course(bits []guess, v Vents, levelC, most float64) float64 {
	run := f.runner(bits, v)
	sum, whole := 0.0, ((costTo-costFrom)/stepMinutes+1)*float64(len(bits))
	for m := float64(costFrom); m <= costTo; m += stepMinutes {
		run.to(m)
		air := f.airC(f.minute + m)
		for i := range run.guesses {
			sum += costOf(1.8 * (air + run.guesses[i].coals.RiseK - levelC))
		}
		if sum > most*whole {
			break
		}
	}
	return sum / whole
}

// moving is what the hands cost.
func (f *Fire) moving(v Vents, want Want) float64 {
	top, bottom := float64(moveTop), float64(moveOther)
	if want.SteerBottom {
		top, bottom = bottom, top
	}
	if f.taught() {
		top, bottom = taughtPrice*top, taughtPrice*bottom
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

// choice are the best of the marks, and whether they are others than those that stand.
type choice struct {
	vents Vents
	move  bool
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

// choose weighs the vents that hands may set now by what they do until the next looks, beside leaving them alone. One vent is moved at a
// time: both at once come right sooner, and go too far (on simulated cooks a fifth of the moves more).
func (f *Fire) choose(bits []guess, want Want) choice {
	now := f.Vents()
	forced := !f.allowed(now, want) // then hands are at the vents already
	switch {
	case f.shut(want):
		v := f.reopened(want)
		return choice{v, v != now}
	case !forced && (f.unfelt(want) || f.inBand(bits, want)):
		return choice{vents: now}
	}
	level, least, eager := want.LevelC-f.under(), math.Inf(1), eagerForced
	if !forced {
		least, eager = f.course(bits, now, level, math.Inf(1)), 1
	}
	best := now
	for _, v := range f.within(want, forced) {
		hands := f.moving(v, want) * eager
		if hands >= least {
			continue
		}
		if cost := f.course(bits, v, level, least-hands) + hands; cost < least {
			best, least = v, cost
		}
	}
	if best == now && f.stays(want) {
		if v, ok := f.pushed(bits, want); ok {
			best = v
		}
	}
	return choice{best, best != now}
}

// within are the vents that hands may set now, those of the fine control first: one vent at a time, but where they are to be moved anyway.
func (f *Fire) within(want Want, forced bool) (out []Vents) {
	try := func(v Vents) {
		if v == f.Vents() || !f.allowed(v, want) || f.chokes(v, want) {
			return
		}
		if forced || f.step(v, want) && !f.against(v, want) && !f.along(v, want) {
			out = append(out, v)
		}
	}
	for _, t := range topMarks() {
		try(Vents{t, f.bottom})
	}
	for _, b := range bottomMarks() {
		try(Vents{f.top, b})
	}
	for _, t := range topMarks() {
		for _, b := range bottomMarks() {
			if forced && t != f.top && b != f.bottom {
				try(Vents{t, b})
			}
		}
	}
	return out
}

// against says whether vents would push the grate further from its level than it was read just now, out of its band. A fire that grows is
// closed before it is there.
func (f *Fire) against(v Vents, want Want) bool {
	more := f.airThrough(v) - f.airThrough(f.Vents())
	if more < 0 && f.young() {
		return false
	}
	r, ok := f.lastGrate()
	off := r.C - want.LevelC
	return ok && f.minute-r.Minute <= besideMinutes && math.Abs(off) > bandK && off*more > 0
}

// chokes says whether vents would be closed so far that the fire falls well below a hot level before anybody looks again: by common
// practice a half holds 300 F, all open 350 and more.
func (f *Fire) chokes(v Vents, want Want) bool {
	top, bottom := 1./3, 1./2
	switch {
	case want.LevelC < hotC:
		return false
	case want.LevelC > searC:
		top = 1. / 2
	}
	return v.Top < f.top && v.Top < top-1e-9 || v.Bottom < f.bottom && v.Bottom < bottom-1e-9
}

// hotC is the least level at which that is so (340 F).
const hotC = (340.0 - 32) / 1.8

// allowed are the vents that may be advised.
func (f *Fire) allowed(v Vents, want Want) bool {
	least := leastTop
	if want.SteerBottom {
		least = leastTopWhere
	}
	return v.Top >= least-1e-9 && (v.Bottom >= 1./16-1e-9 || v == f.Vents())
}
