package steer

import "example.com/cookday/schedule/internal/fire"

// Do is what an advice tells the cook to do.
type Do int

// What there is to do.
const (
	Leave     Do = iota // leave the vents
	Move                // set the vents
	AddLit              // add lit coals
	AddUnlit            // lay unlit coals on
	ClearAsh            // work the cleaner, or rake
	ReadAgain           // something is wrong with the reading
	LookFirst           // fat may burn: look from outside
	HoldProbe           // only the lid was read: hold a thermometer at grate height
	Relight             // it is out
	NoAdvice            // outside what is known: the table of practice only
)

// Advice is one thing to do now, what to expect of it, when to look again, and why.
type Advice struct {
	Do               Do
	Now              Range
	From, To         Vents
	Count            int // of coals
	In15, In30       Range
	LookMinutes      int
	Why              Why
	Reach            Reach
	Trust            Trust
	Direction        int      // of a lid reading alone: -1 less air, 1 more, 0 leave it
	Remedies         []Remedy // instead of vents, or beside them
	Outside          Outside  // what is not steered here
	NoneHelps        bool     // no remedy brings the level
	MinutesToBand    int      // of a fire that is too hot at its least marks; 0 if not within two hours
	LitN             float64  // lit coals for their air: under 0.7 they are the limit, at 2 the air is
	TopBelowLeast    bool     // the top vent stands lower than it may with food on
	Want             Want
	LongCool         bool    // too cool to cook on for more than half an hour, as read
	Ashy             bool    // so much burnt that its ash may be a reason
	Door             bool    // the coals are reached by a door, and not by a cleaner from below
	InDip            bool    // cold food takes so much that it is left alone
	RoseFast         bool    // after the light, as was foretold
	Ending           bool    // by what was counted its coals are nearly gone, though it does not show
	Stormy           bool    // wind that no fire should be lit in
	GaugeAtLevelLowC float64 // what the gauge may show at the level, at the ends of what is known
	GaugeAtLevelHiC  float64
}

// Outside says why vents are not advised on.
type Outside int

// The reasons.
const (
	Steered Outside = iota
	Ceramic
	TooHotToSteer
)

// Why is the reason of an advice.
type Why int

// The reasons.
const (
	InBand      Why = iota // it stays near its level
	ComingRight            // it comes back by itself
	Warms                  // the fire is still growing after the light
	Hot                    // more air than the level needs
	Cool                   // less air than it needs
	Rising                 // near the level now, on its way above
	Sinking                // near it, on its way below
	ManyLit                // more lit than the air can hold back
	Leaks                  // air gets in beside the vents
	Starved                // vents nearly shut on many lit coals
	FewLit                 // few lit, and unlit enough
	Spent                  // the coals are nearly burnt
	Ashed                  // ash closes the bed
	ColdLoad               // cold meat or water takes the heat
	WindBlows              // wind, and a change without a touch
	BadReading             // the reading does not fit
	FatBurns               // up at once
	FarOver                // at one look, so far above that food may burn or the probe sees coals
	LidWasOff
	NothingRead
	FireOut
	PassesBy   // it comes back, and may go past
	FreshCoals // unlit coals take heat until they catch
	Caught     // more coals are lit since the lid was off
	GaugeAlone // only the lid was read
	ColdGrill  // so cool that nothing burns
	Unfelt     // what was done just now is not felt yet
	NearLevel  // within its band
	VentsShut  // both are, and the coals get no air
	LitLately  // lit coals were added just now
)

// Figures of looking (tuned on simulated cooks).
const (
	lookStep    = 3
	lookFirst   = 12
	lookYoung   = 8
	lookMoved   = 15
	lookLast    = 30
	lookOffF    = 18
	lookShare   = 0.25
	readAgainIn = 5
	lidAgainIn  = 10
)

// Advise is the one thing to do now. NaN-free: a fire of which nothing is known is told so.
func (f *Fire) Advise(want Want) Advice {
	a := Advice{Do: Leave, Now: f.Now(), From: f.Vents(), To: f.Vents(), Trust: f.trust(), Want: want, LookMinutes: lookFirst}
	a.TopBelowLeast = !want.NoFood && f.top < leastTop-1e-9
	a.LitN, a.LongCool = f.litN(), f.longCool()
	a.Ashy, a.Door = f.ashLies(), f.begin.Grill.Kind == fire.Upright
	a.RoseFast = a.Trust == Trusted && f.readings[len(f.readings)-1].JumpK > flareK
	a.Stormy = f.weather(f.minute).WindMS > stormMS
	switch {
	case f.out:
		a.Do, a.Why = Relight, FireOut
		return f.expecting(a)
	case f.cold(a.Trust):
		a.Do, a.Why = Relight, ColdGrill
		return f.expecting(a)
	case a.Trust == Jumped:
		a.Do, a.Why, a.LookMinutes = LookFirst, FatBurns, readAgainIn
		return a
	case f.farOver(want, a.Trust):
		a.Do, a.Why, a.LookMinutes = LookFirst, FarOver, readAgainIn
		return a
	case a.Trust == Odd:
		a.Do, a.Why, a.LookMinutes = ReadAgain, BadReading, readAgainIn
		return a
	case a.Trust == NoReading && f.shut(want):
		a.Do, a.To, a.Why, a.LookMinutes = Move, unreadOpen(), VentsShut, readAgainIn
		return f.expecting(a)
	case a.Trust == NoReading:
		a.Do, a.Why, a.LookMinutes = HoldProbe, NothingRead, readAgainIn
		return f.expecting(a)
	case a.Trust == LidAbout:
		a.Why, a.LookMinutes = LidWasOff, lookAfterLid(f.deafUntil-f.minute)
		return f.expecting(a)
	}
	bits := f.bits()
	best := f.choose(bits, want)
	if a.Trust == GaugeOnly {
		return f.byLid(a, best)
	}
	if best.move && f.airThrough(best.vents) > f.airThrough(f.Vents()) && f.allowed(f.Vents(), want) && f.inDip(want) {
		best.move, a.InDip = false, true
	}
	if best.move {
		a.Do, a.To = Move, best.vents
	}
	a = f.expecting(a)
	if a.LookMinutes = f.lookAgain(bits, a.To, want); a.InDip {
		a.LookMinutes = dipLook
	}
	a.Why = f.reason(a)
	return f.beyondVents(a, bits)
}

// longCool says whether the readings of half an hour and more are all too cool to cook on.
func (f *Fire) longCool() bool {
	for i := len(f.readings) - 1; i >= 0 && f.readings[i].C < coolC; i-- {
		if f.minute-f.readings[i].Minute > coolMinutes {
			return true
		}
	}
	return false
}

const coolMinutes = 30.0

// expecting adds what the grate will do.
func (f *Fire) expecting(a Advice) Advice {
	r := f.Ahead(a.To, 15, 30)
	a.In15, a.In30 = r[0], r[1]
	return a
}

// lookAfterLid is when the probe tells the truth again.
func lookAfterLid(deaf float64) int {
	if deaf > 0 && deaf < lookLast {
		return int(deaf) + 2
	}
	return lidAgainIn
}

// byLid is the direction only: the gauge may stand far from the grate.
func (f *Fire) byLid(a Advice, best choice) Advice {
	a.Do, a.LookMinutes = HoldProbe, readAgainIn
	if best.move {
		a.Direction = -1
		if f.airThrough(best.vents) > f.airThrough(f.Vents()) {
			a.Direction = 1
		}
	}
	low, high := f.gaugeAt(a.Want.LevelC)
	a.GaugeAtLevelLowC, a.GaugeAtLevelHiC = low, high
	a.Why = GaugeAlone
	return a
}

// gaugeAt is what the gauge may show when the grate is at a level.
func (f *Fire) gaugeAt(levelC float64) (low, high float64) {
	air := f.airC(f.minute)
	l, _, h := quantiles(f.guesses, func(g *guess) float64 { return g.traits.GaugeRatio })
	return air + l*(levelC-air), air + h*(levelC-air)
}

// airThrough compares openings: the lesser one counts most.
func (f *Fire) airThrough(v Vents) float64 {
	t := f.begin.Grill.Usual()
	top, bottom := v.Top+t.Leak, t.Ratio*v.Bottom+t.Leak
	return 1 / (1/(top*top) + 1/(bottom*bottom))
}

// lookAgain is the first time at which so many guesses are off that a look pays.
func (f *Fire) lookAgain(bits []guess, v Vents, want Want) int {
	run := f.runner(bits, v)
	first, share := lookFirst, lookShare
	if f.taught() {
		share = taughtShare
	}
	switch {
	case f.young():
		first = lookYoung
	case v != f.Vents() && !f.known():
		first = lookMoved
	}
	for m := first; m < lookLast; m += lookStep {
		run.to(float64(m))
		off, air := 0, f.airC(f.minute+float64(m))
		for i := range run.guesses {
			if e := 1.8 * (air + run.guesses[i].coals.RiseK - want.LevelC); e > lookOffF || e < -lookOffF {
				off++
			}
		}
		if float64(off) > share*float64(len(run.guesses)) {
			return m
		}
	}
	return lookLast
}

// litN is the middle of how many coals are lit for their air.
func (f *Fire) litN() float64 {
	s := f.setting(f.minute)
	s.LidOff = false
	_, middle, _ := quantiles(f.guesses, func(g *guess) float64 {
		at := s
		at.Top, at.Bottom = g.top.lets(s.Top), g.bottom.lets(s.Bottom)
		return f.hearth.Lit(&g.traits, g.coals, at)
	})
	return middle
}
