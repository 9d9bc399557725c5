package steer

// Trust is what to think of the last reading.
type Trust int

// What to think.
const (
	Trusted   Trust = iota
	NoReading       // nothing was read, or long ago
	GaugeOnly       // the gauge in the lid, never compared with the grate
	Odd             // it cannot be, or the fire changed at once: read again
	Jumped          // up at once, without a touch: fat may burn
	LidAbout        // the lid was off just now
)

const (
	oddSurprise  = 12
	jumpK        = 35 / 1.8 // in 10 min, without a touch
	flareK       = 30 / 1.8 // up in flareMinutes: a forgotten lid went from 250 to over 650 F
	flareMinutes = 6
	agreeK       = 20 / 1.8 // a second reading that agrees
	agreeFrom    = 4.0      // minutes after the first
	stale        = 90.0
	oldRead      = 45.0      // minutes: what was read before that is no ground for a move (judgment)
	apartSlow    = 15.0      // minutes: in so long a fire does much by itself,
	slowK        = 60 / 1.8  // so much either way, and
	backK        = 150 / 1.8 // so much towards its level, as it does when cold food warms or its vents were opened (judgment)
)

// trust judges the last reading that counts.
func (f *Fire) trust() Trust {
	n := len(f.readings)
	if n == 0 {
		return NoReading
	}
	last := f.readings[n-1]
	switch {
	case f.minute-last.Minute > oldRead:
		return NoReading
	case last.Deaf || f.lidOff:
		return LidAbout
	case f.gaugeAlone():
		if last.JumpK > flareK {
			return Jumped
		}
		return GaugeOnly
	case f.growing(last):
		return Trusted
	case last.JumpK > jumpK || last.JumpK > flareK && f.sinceLast(n-1) <= flareMinutes:
		return Jumped
	case last.JumpK < -jumpK || n > 1 && last.Surprise > oddSurprise:
		if f.agreed(n-1) || f.couldBe(n-1) {
			return Trusted
		}
		return Odd
	}
	return Trusted
}

// farOver says whether food lies under a grate that was read once, and so hot that it may burn: hotter than a roast ever wants it and far
// above this one's level (judgment). A second look that agrees is the fire's.
func (f *Fire) farOver(want Want, t Trust) bool {
	if want.NoFood || t != Trusted && t != Odd {
		return false
	}
	n := len(f.readings) - 1
	last := f.readings[n]
	return last.Kind == Grate && last.C >= burnsC && last.C-want.LevelC >= farOverK && !f.agreed(n)
}

const (
	burnsC   = (500.0 - 32) / 1.8
	farOverK = 200 / 1.8
)

// cold says whether the grate is so cool that nothing burns: long after the light, by a reading that is believed.
func (f *Fire) cold(t Trust) bool {
	if t != Trusted || !f.begin.MidCook && f.minute-f.begin.PourMinute < warmingUntil {
		return false
	}
	last := f.readings[len(f.readings)-1]
	return last.Kind == Grate && last.C-f.airC(last.Minute) < coldK
}

const coldK = 50 / 1.8 // above the air; a fire that glows keeps more (judgment)

// growing says whether a fire that was lit within the hour rose by no more than was foretold of it, or little more.
func (f *Fire) growing(r Seen) bool {
	return !f.begin.MidCook && f.minute-f.begin.PourMinute <= warmingUntil && r.C-r.ExpectedC < flareK
}

// gaugeAlone says whether only the lid's gauge was read, and it is not known from cooks before.
func (f *Fire) gaugeAlone() bool {
	const known = 0.1
	if f.begin.Own != nil && f.begin.Own.Cooks > 0 {
		if g, ok := f.begin.Own.Figures["gauge"]; ok && g.Spread < known {
			return false
		}
	}
	return f.grates() == 0
}

func (f *Fire) sinceLast(i int) float64 {
	if i == 0 {
		return stale
	}
	return f.readings[i].Minute - f.readings[i-1].Minute
}

// besideMinutes is how near a gauge and the grate were read for the one to be beside the other.
const besideMinutes = 20.0

// grateLately says whether the grate was read and believed just before.
func (f *Fire) grateLately(minute float64) bool {
	for _, r := range f.readings {
		if r.Kind == Grate && !r.Deaf && r.Minute <= minute && minute-r.Minute <= besideMinutes {
			return true
		}
	}
	return false
}

// couldBe says whether a fire may well have done by itself, or by what was told of it, what a reading shows that was not
// foretold: there was time for it.
func (f *Fire) couldBe(i int) bool {
	last := f.readings[i]
	for k := i - 1; k >= 0; k-- {
		r := f.readings[k]
		if r.Kind != last.Kind || r.Deaf {
			continue
		}
		took, by := last.Minute-r.Minute, abs(last.C-r.C)
		return took >= apartSlow && (by <= slowK || f.touched > r.Minute && by <= backK || last.C > r.C && by <= backK)
	}
	return false
}

// agreed says whether a reading says what another odd one before it said.
func (f *Fire) agreed(i int) bool {
	last := f.readings[i]
	for _, r := range f.readings[:i] {
		off := r.C - last.C
		if gap := last.Minute - r.Minute; r.Kind == last.Kind && gap >= agreeFrom && gap <= 20 && off < agreeK && off > -agreeK {
			return true
		}
	}
	return false
}
