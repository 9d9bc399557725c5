package steer

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
		if f.sunk(want.LevelC) {
			return TooWeak
		}
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
	return f.staysBeyond(stuckMinutes, func(c, later float64) bool { return c >= levelC+bandK && c <= later+trendK })
}

// sunk says whether it was read below the band under open vents, and did not come up.
func (f *Fire) sunk(levelC float64) bool {
	if f.top < 0.99 || f.bottom < 0.99 {
		return false
	}
	return f.staysBeyond(sunkMinutes, func(c, later float64) bool { return c <= levelC-bandK && c >= later-trendK })
}

// staysBeyond says whether the readings of the grate of so many minutes are all as asked, each beside the one after it.
func (f *Fire) staysBeyond(minutes float64, so func(c, later float64) bool) bool {
	later, any := 0.0, false
	for i := len(f.readings) - 1; i >= 0; i-- {
		r := f.readings[i]
		if r.Kind != Grate || r.Deaf {
			continue
		}
		if !any {
			later = r.C
		}
		if r.Minute < f.ventsAt || !so(r.C, later) {
			return false // another fire, or on its way back
		}
		if any && f.minute-r.Minute >= minutes {
			return true
		}
		later, any = r.C, true
	}
	return false
}

const (
	stuckMinutes = 45.0
	sunkMinutes  = 20.0
)

// plain is a range as the guesses lie.
func (f *Fire) plain(bits []guess, v Vents, minutes float64) Range {
	run := f.runner(bits, v)
	run.to(minutes)
	air := f.airC(f.minute + minutes)
	low, middle, high := quantiles(run.guesses, func(g *guess) float64 { return g.coals.RiseK })
	return Range{air + low, air + middle, air + high}
}
