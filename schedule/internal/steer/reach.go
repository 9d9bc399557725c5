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

// plain is a range as the guesses lie.
func (f *Fire) plain(bits []guess, v Vents, minutes float64) Range {
	run := f.runner(bits, v)
	run.to(minutes)
	air := f.airC(f.minute + minutes)
	low, middle, high := quantiles(run.guesses, func(g *guess) float64 { return g.coals.RiseK })
	return Range{air + low, air + middle, air + high}
}
