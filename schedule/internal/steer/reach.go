package steer

import "math"

// Reach is what vents alone can do for a level.
type Reach int

// What they can do.
const (
	WithinReach Reach = iota
	TooWeak           // all open, and still too cool
	TooHot            // at their least marks, and still too hot
)

const (
	bandK        = 25 / 1.8 // 25 F either way is good enough (common practice, no source)
	reachMinutes = 60.0
	looksApart   = 5.0 // two looks that agree are at least so far apart
)

// reach asks the extreme marks.
func (f *Fire) reach(want Want) Reach {
	bits := f.bits()
	least := Vents{topMarks()[0], bottomMarks()[0]}
	if want.SteerBottom {
		least.Top = leastTopWhere
	}
	now := f.Now().Middle
	if now > want.LevelC && f.stuck(want.LevelC, least) {
		return TooHot
	}
	if now < want.LevelC {
		if r := f.plain(bits, Vents{1, 1}, reachMinutes); r.High < want.LevelC-bandK {
			return TooWeak
		}
		return WithinReach
	}
	if r := f.plain(bits, least, reachMinutes); r.Low > want.LevelC+bandK {
		return TooHot
	}
	return WithinReach
}

// stuck says whether the grate was read above the band for so long that no more is to be hoped of vents at their least.
func (f *Fire) stuck(levelC float64, least Vents) bool {
	if f.top > least.Top+1e-9 || f.bottom > least.Bottom+1e-9 {
		return false
	}
	last := math.Inf(1)
	for i := len(f.readings) - 1; i >= 0; i-- {
		r := f.readings[i]
		switch {
		case r.Kind != Grate || r.Deaf:
			continue
		case r.Minute < f.ventsAt || r.C < levelC+bandK || r.C > last+trendK:
			return false // another fire, or it comes down
		case f.minute-r.Minute >= stuckMinutes:
			return true
		}
		last = min(last, r.C)
	}
	return false
}

const stuckMinutes = 45.0

// plain is a range as the guesses lie.
func (f *Fire) plain(bits []guess, v Vents, minutes float64) Range {
	run := f.runner(bits, v)
	run.to(minutes)
	air := f.airC(f.minute + minutes)
	low, middle, high := quantiles(run.guesses, func(g *guess) float64 { return g.coals.RiseK })
	return Range{air + low, air + middle, air + high}
}
