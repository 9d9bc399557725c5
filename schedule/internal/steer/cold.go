package steer

// Cold food takes heat for up to two hours, and gives it back by itself: what is opened for it is too hot later (common
// practice, no source). By so much the grate may lie under its level then, and the vents are left alone.
const (
	dipLook     = 30
	coldLoadKg  = 1.5      // of food that is felt (assumption)
	coldHours   = 90.0     // minutes in which it is, of two hours
	coldMostK   = 40 / 1.8 // the most that it takes (common practice, no source: 15 to 40 F)
	coldFirst   = 45.0     // and in the first of them nobody knows yet what it takes
	coldSureMin = 60.0     // minutes after which a grate that still sinks is no more laid to it (judgment)
	coldSinksK  = 5 / 1.8  // by so much from look to look
	coldShare   = 0.85     // of its share of the loss, what a load takes of the rise: the loss grows faster than that
)

// inDip says whether a grate that is too cool is so by the cold food over it, and comes back by itself: of a fire that has grown, and
// stood near its level before; no cooler than its band and what that food takes, not sinking on when it should be over, and, once it has had some time, back in its band within the hour as the fire is known.
func (f *Fire) inDip(want Want) bool {
	off := f.off(want)
	if off >= 0 || f.young() || f.coldKg() < coldLoadKg || !f.stoodBefore(want) {
		return false
	}
	takes := coldShare * f.coldAt(f.minute) * (want.LevelC - f.airC(f.minute))
	if -off > min(bandK+takes, coldMostK)+1e-9 || f.burntDown() || f.sinksOn() {
		return false
	}
	return f.minute-f.coldOn() <= coldFirst || f.plain(f.bits(), f.Vents(), reachMinutes).Middle >= want.LevelC-bandK
}

// coldOn is when the last cold food went on.
func (f *Fire) coldOn() float64 {
	on := 0.0
	for _, m := range f.meats {
		on = max(on, m.Minute)
	}
	return on
}

// stoodBefore says whether the grate was read near its level shortly before the food went on: else it is no dip.
func (f *Fire) stoodBefore(want Want) bool {
	on := f.coldOn()
	for i := len(f.readings) - 1; i >= 0; i-- {
		if r := f.readings[i]; r.Kind == Grate && !r.Deaf && r.Minute <= on {
			return on-r.Minute <= stale && r.C >= want.LevelC-bandK
		}
	}
	return false
}

// coldKg is what went on cold and is still felt.
func (f *Fire) coldKg() float64 {
	kg := 0.0
	for _, m := range f.meats {
		if since := f.minute - m.Minute; since >= 0 && since < coldHours {
			kg += m.Kg
		}
	}
	return kg
}

// sinksOn says whether the grate was read to sink from look to look, the food on for so long that it should rise by now.
func (f *Fire) sinksOn() bool {
	on := f.coldOn()
	later, seen := 0.0, 0
	for i := len(f.readings) - 1; i >= 0; i-- {
		r := f.readings[i]
		if r.Kind != Grate || r.Deaf {
			continue
		}
		if r.Minute < on+coldSureMin/2 {
			return false
		}
		if seen > 0 && r.C < later+coldSinksK {
			return false
		}
		if seen++; seen > 1 && f.minute-on >= coldSureMin {
			return true
		}
		later = r.C
	}
	return false
}
