package steer

const (
	windyMS      = 4.0          // in the open, from which a change without a touch is laid to it
	stormMS      = 20 * 0.44704 // 20 mph
	trendK       = 15 / 1.8
	warmingUntil = 60.0 // minutes after the pour
	starvedN     = 1.5
	nearlyShut   = 1. / 8
)

// reason is why the advice is as it is: one, the first that fits.
func (f *Fire) reason(a Advice) Why {
	off := a.Now.Middle - a.Want.LevelC
	late := f.plain(f.bits(), f.Vents(), lookLast).Middle - a.Want.LevelC
	since := f.minute - f.begin.PourMinute
	switch {
	case a.Do == Move && f.shut(a.Want):
		return VentsShut
	case a.InDip && !f.freshCoals():
		return ColdLoad
	case a.Do == Leave && f.unfelt(a.Want) && !f.freshCoals():
		return Unfelt
	case !f.begin.MidCook && since < warmingUntil && off < -bandK/2 && late > off+trendK:
		return Warms
	case a.Do == Move && f.lessAir(a) && f.minute-f.lidShut <= caughtMinutes:
		return Caught
	case a.Do == Move && f.lessAir(a) && off > bandK/2:
		return f.hotWhy()
	case a.Do == Move && f.lessAir(a):
		return Rising
	case a.Do == Move && off < -bandK/2:
		return f.coolWhy()
	case a.Do == Move:
		return Sinking
	}
	return f.leftAlone(off, late, a.Want)
}

// leftAlone is why vents stay as they are under a grate that is off its level by so much now, and by so much later.
func (f *Fire) leftAlone(off, late float64, want Want) Why {
	switch {
	case abs(off) <= bandK/2 && abs(late) <= bandK:
		return InBand
	case abs(off) <= bandK/2 && late > 0:
		return Rising
	case abs(off) <= bandK/2:
		return Sinking
	case off < 0 && f.litLately():
		return LitLately
	case off < 0 && f.freshCoals():
		return FreshCoals
	case off < 0 && f.coldLoad():
		return ColdLoad
	case abs(f.off(want)) <= bandK:
		return NearLevel
	case f.mayPass(want) && comesRight(off, late, f.worst(off, want)):
		return ComingRight
	case f.mayPass(want) && off*late < 0:
		return PassesBy
	case off > 0:
		return f.hotBecause()
	}
	if why := f.weakBecause(f.ashHelps(f.bits(), want)); why != Cool || f.top > 0.99 && f.bottom > 0.99 {
		return why
	}
	return FewLit // more air was tried in thought, and did not pay
}

// mayPass says whether anything speaks for it that a grate comes back by itself: it was read to, something was done lately, the
// fire still grows, or a single look is all there is and vents have more to give.
func (f *Fire) mayPass(want Want) bool {
	return f.comes(want) || f.young() || f.minute-f.touched <= lookLast || f.grates() < 2 && (f.top < 0.99 || f.bottom < 0.99)
}

// worst is how far off its level the grate may still be later, on the side where it is now.
func (f *Fire) worst(off float64, want Want) float64 {
	r := f.plain(f.bits(), f.Vents(), lookLast)
	if off > 0 {
		return r.High - want.LevelC
	}
	return want.LevelC - r.Low
}

// comesRight says whether what is off its level by so much now, and by so much later, is on its way back: by
// so much that one in ten of what may be is no further off then (worst) than it is now.
func comesRight(off, late, worst float64) bool {
	return off*late <= 0 && abs(late) <= bandK || abs(off)-abs(late) >= trendK && worst < abs(off) || abs(off) > abs(late) && abs(late) <= bandK/2
}

func (f *Fire) lessAir(a Advice) bool { return f.airThrough(a.To) < f.airThrough(a.From) }

func (f *Fire) hotWhy() Why {
	if f.windy() && f.ventsAt < f.minute-lookLast {
		return WindBlows
	}
	if f.litN() > manyLit && f.top <= nearlyShut+0.05 {
		return ManyLit
	}
	return Hot
}

func (f *Fire) coolWhy() Why {
	switch {
	case f.freshCoals():
		return FreshCoals
	case f.windy():
		return WindBlows
	case min(f.top, f.bottom) <= nearlyShut && f.litN() > starvedN:
		return Starved
	}
	return Cool
}

// freshCoals says whether unlit coals still take heat: they smolder white before they catch.
func (f *Fire) freshCoals() bool { return f.fed && f.minute-f.fedAt <= catchMinutes }

const (
	catchMinutes  = 30.0 // until unlit coals beside lit ones have caught (common practice, no source: 15 to 30)
	freshCount    = 10   // coals that are felt
	caughtMinutes = 20.0 // after a lid was off, that what caught meanwhile is felt
)

// litLately says whether lit coals were added so lately that they do not show yet.
func (f *Fire) litLately() bool { return f.litLater && f.minute-f.litAt < showMinutes }

// showMinutes is when lit coals that were added show at the grate (common practice, no source: 15 to 20).
const showMinutes = 20.0

// ashLies says whether so much may have burnt that ash is a reason: not in the first hours of a fire whose light is known.
func (f *Fire) ashLies() bool { return f.begin.MidCook || f.minute-f.begin.PourMinute >= ashMinutes }

// ashMinutes is how long a fire burns before its ash is a reason for anything (common practice, no source).
const ashMinutes = 150.0

// windy says whether it blows, as told or as forecast.
func (f *Fire) windy() bool { return f.weather(f.minute).WindMS > windyMS }

// coldLoad says whether cold meat still takes heat.
func (f *Fire) coldLoad() bool {
	for _, m := range f.meats {
		if gone := f.minute - m.Minute; gone >= 0 && gone < 90 && m.Kg > 0 {
			return true
		}
	}
	return false
}
