package steer

import (
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
)

// Range is the grate, degC: one in ten is below Low, one in ten above High.
type Range struct{ Low, Middle, High float64 }

// Ranges are widened: ten of the guesses lie outside on each side, and the thermometer has errors of its own. Beyond an
// hour they are too sure of themselves (measured on logged cooks), and so they are after a single reading.
const (
	widenK    = 9 / 1.8
	longWiden = 1.3
	longAfter = 60.0
	fewWiden  = 1.5
)

// Vents are shares open.
type Vents struct{ Top, Bottom float64 }

// Vents are those that stand now.
func (f *Fire) Vents() Vents { return Vents{f.top, f.bottom} }

// Air is the open air at a minute, degC.
func (f *Fire) airC(minute float64) float64 { return f.weather(minute).AirC }

// Now is what the grate has now.
func (f *Fire) Now() Range { return f.rangeOf(f.guesses, f.minute, 0) }

// Ahead is the grate some minutes from now under some vents, at each of the minutes asked for.
func (f *Fire) Ahead(v Vents, minutes ...float64) []Range {
	return f.aheadOf(f.guesses, v, minutes)
}

func (f *Fire) aheadOf(from []guess, v Vents, minutes []float64) []Range {
	run := f.runner(from, v)
	out := make([]Range, len(minutes))
	for i, m := range minutes {
		run.to(m)
		out[i] = f.rangeOf(run.guesses, f.minute+m, m)
	}
	return out
}

func (f *Fire) rangeOf(from []guess, minute, ahead float64) Range {
	air := f.airC(minute)
	low, middle, high := quantiles(from, func(g *guess) float64 { return g.coals.RiseK })
	by := widenK * f.widen(ahead)
	grow := f.widen(ahead)
	return Range{air + middle - (middle-low)*grow - by, air + middle, air + middle + (high-middle)*grow + by}
}

// widen is how much wider a range is told than the guesses lie.
func (f *Fire) widen(ahead float64) float64 {
	by := 1.0
	if ahead > longAfter {
		by = longWiden
	}
	if f.grates() < 2 {
		by = fewWiden
	}
	return by
}

// Looks is how many readings of the grate itself were believed.
func (f *Fire) Looks() int { return f.grates() }

// grates is how many readings of the grate were believed.
func (f *Fire) grates() int {
	n := 0
	for _, r := range f.readings {
		if r.Kind == Grate && !r.Deaf {
			n++
		}
	}
	return n
}

// quantiles are the tenth, the half and the nine tenths of a figure.
func quantiles(from []guess, of func(*guess) float64) (low, middle, high float64) {
	list := make([]float64, len(from))
	for i := range from {
		list[i] = of(&from[i])
	}
	slices.Sort(list)
	at := func(share float64) float64 { return list[int(math.Ceil(share*float64(len(list))-1e-9))-1] }
	return at(0.1), at(0.5), at(0.9)
}

// runner lets guesses burn on from now, all alike and without dice.
type runner struct {
	fire    *Fire
	vents   Vents
	at      float64
	guesses []guess
}

func (f *Fire) runner(from []guess, v Vents) *runner {
	return &runner{f, v, 0, slices.Clone(from)}
}

func (r *runner) to(minutes float64) {
	for r.at < minutes {
		dt := min(stepMinutes, minutes-r.at)
		s, cold := r.fire.settingUnder(r.fire.minute+r.at, r.vents), r.fire.coldAt(r.fire.minute+r.at)
		stepAll(r.guesses, &r.fire.hearth, &s, cold, dt)
		r.at += dt
	}
}

// settingUnder is a minute to come with other vents: the lid is on by then.
func (f *Fire) settingUnder(minute float64, v Vents) fire.Setting {
	s := f.setting(minute)
	s.Top, s.Bottom, s.LidOff = v.Top, v.Bottom, false
	return s
}

// Share is how many of the guesses keep the grate within a band about a level through some minutes, untouched: how sure
// a night is.
func (f *Fire) Share(levelC, bandK, minutes float64) float64 {
	run := f.runner(f.guesses, f.Vents())
	in := make([]bool, len(run.guesses))
	for i := range in {
		in[i] = true
	}
	for m := 15.0; m <= minutes; m += 15 {
		run.to(m)
		air := f.airC(f.minute + m)
		for i := range run.guesses {
			in[i] = in[i] && math.Abs(air+run.guesses[i].coals.RiseK-levelC) <= bandK
		}
	}
	n := 0
	for i := range in {
		if in[i] {
			n++
		}
	}
	return float64(n) / float64(len(in))
}

// aheadShown is what a thermometer of a kind will show some minutes from now.
func (f *Fire) aheadShown(minutes float64, k Kind) Range {
	run := f.runner(f.guesses, f.Vents())
	run.to(minutes)
	air := f.airC(f.minute + minutes)
	low, middle, high := quantiles(run.guesses, func(g *guess) float64 { return g.shows(k) })
	grow := f.widen(minutes)
	return Range{air + middle - (middle-low)*grow - widenK*grow, air + middle, air + middle + (high-middle)*grow + widenK*grow}
}
