package steer

import "math"

// Rules of hands, whatever the guesses say: what was done is not judged before it is felt, a grate in its band is left alone,
// near its level it is moved by little, and what stays out of its band is not left alone. They keep a cook from chasing the
// fire. Of a fire that was looked at a few times more is known, and a little more is allowed: on simulated cooks strict rules
// to the end cost a tenth of the minutes and a third of the overshoots that advice saves.
const (
	knownLooks   = 3
	feltMinutes  = 15.0     // a move of a vent or a lid put on is felt by then (common practice, no source)
	feltKnown    = 9.0      // and a move by one who follows the fire closely (12 cost 2 in 100 of the minutes, simulated)
	unfeltFarK   = 80 / 1.8 // so far too hot, nobody waits for that (judgment)
	nearF        = 20.0     // off the level: within it a vent of a fire that is hardly known is moved by a factor of two at most,
	offF         = 35.0     // within this one of a known fire by four, and beyond it by any,
	farF         = 60.0     // beyond this any fire by four (judgment)
	anyF         = 100.0    // and beyond this by any
	comesMinutes = 30.0     // as it was read to go, it is back by then
	youngMinutes = 45.0     // since the pour: a fire that still grows,
	grownMinutes = 20.0     // but after so many no more so fast that one look tells it (assumption)
	firstMinutes = 12.0     // until then its first look may close as far as it likes: it comes up fast (judgment)
	sidesK       = 3 / 1.8  // less is no step towards its level
	onceFarK     = 32 / 1.8 // so far off at its only look nothing waits for a second (judgment)
	shutHotK     = 30 / 1.8 // a fire that was shut off and is hotter than this is given the least air
)

// known says whether the grate was looked at often enough to be followed closely.
func (f *Fire) known() bool { return f.grates() >= knownLooks }

// off is by how much the grate is above its level: as it was read just now, else as it is believed to be.
func (f *Fire) off(want Want) float64 {
	if r, ok := f.lastGrate(); ok && f.minute-r.Minute <= besideMinutes {
		return r.C - want.LevelC
	}
	return f.Now().Middle - want.LevelC
}

// lastGrate is the newest reading of the grate that counts.
func (f *Fire) lastGrate() (Seen, bool) {
	for i := len(f.readings) - 1; i >= 0; i-- {
		if r := f.readings[i]; r.Kind == Grate && !r.Deaf {
			return r, true
		}
	}
	return Seen{}, false
}

// young says whether the fire was lit so lately that it still grows.
func (f *Fire) young() bool {
	return !f.begin.MidCook && f.minute-f.begin.PourMinute <= youngMinutes
}

// seenOnce says whether a fire was looked at once only, and has grown so far that one look does not tell how fast it still does.
func (f *Fire) seenOnce() bool { return f.grates() < 2 && f.minute-f.begin.PourMinute > grownMinutes }

// unfelt says whether something was done so lately that the grate does not tell of it yet.
func (f *Fire) unfelt(want Want) bool {
	off, felt := f.off(want), feltMinutes
	if f.known() {
		felt = feltKnown
	}
	switch {
	case off > unfeltFarK:
		return false
	case f.moves > 0 && f.minute-f.ventsAt < felt, !f.known() && f.minute-f.lidShut < feltMinutes:
		return true
	}
	return off < 0 && f.freshCoals()
}

// inBand says whether the grate is in its band as it was read, and nobody knows better: the fire was hardly looked at yet, and
// is not one that grows and is about to go far over.
func (f *Fire) inBand(bits []guess, want Want) bool {
	if f.known() || math.Abs(f.off(want)) > bandK+1e-9 {
		return false
	}
	return !f.young() || f.seenOnce() || f.plain(bits, f.Vents(), feltMinutes).Middle < want.LevelC+bandK/2
}

// along says whether vents would push a grate on that was read to come back by itself, in a fire of which little is known yet: of
// one that is known that would cost a fifteenth of the minutes (simulated cooks).
func (f *Fire) along(v Vents, want Want) bool {
	return !f.known() && f.comes(want) && f.off(want)*(f.airThrough(v)-f.airThrough(f.Vents())) < 0
}

// comes says whether it was read to come back, by so much that it is in its band within half an hour.
func (f *Fire) comes(want Want) bool {
	last, ok := f.lastGrate()
	if !ok {
		return false
	}
	for i := len(f.readings) - 1; i >= 0; i-- {
		r := f.readings[i]
		took := last.Minute - r.Minute
		if r.Kind != Grate || r.Deaf || took < looksApart {
			continue
		}
		off, was := math.Abs(last.C-want.LevelC), math.Abs(r.C-want.LevelC)
		return took <= stale && was-off > sidesK && off-(was-off)/took*comesMinutes <= bandK
	}
	return false
}

// step says whether new vents are no more than hands should move at once, so far off the level: of a fire that was hardly looked at less.
func (f *Fire) step(v Vents, want Want) bool {
	off, most := 1.8*math.Abs(f.off(want)), 2.0
	switch {
	case want.SteerBottom && !f.bottomAlone(v):
		return false
	case off > anyF, f.young() && !(f.grates() < 2 && f.minute-f.begin.PourMinute > firstMinutes), f.known() && off > offF:
		return true
	case f.known(), off > farF:
		most = 4
	case off > nearF:
		most = 3
	}
	return withinFactor(f.top, v.Top, most) && withinFactor(f.bottom, v.Bottom, most)
}

// bottomAlone says whether vents of a grill that is steered by its bottom leave the top one: it is moved only when the bottom has no
// more to give that way, or, to open, where it is the narrower way; never both at once.
func (f *Fire) bottomAlone(v Vents) bool {
	switch top, bottom := !sameMark(v.Top, f.top), !sameMark(v.Bottom, f.bottom); {
	case !top:
		return true
	case bottom:
		return false
	case v.Top < f.top:
		return f.bottom <= bottomMarks()[0]+1e-9
	}
	return f.bottom > 0.99 || f.top < 1./2
}

func withinFactor(from, to, most float64) bool {
	from, to = max(from, leastDrawn), max(to, leastDrawn)
	return max(from/to, to/from) <= most*(1+1e-9)
}

// stays says whether it is out of its band, was so at the look before, and is not read to come back.
func (f *Fire) stays(want Want) bool {
	off, seen := f.off(want), 0
	if f.comes(want) || f.young() && f.grows() || f.coldLoad() && off < 0 && off > -2*bandK {
		return false
	}
	for _, r := range f.readings {
		if r.Kind != Grate || r.Deaf || r.Minute < f.ventsAt+lidSettles {
			continue
		}
		if e := r.C - want.LevelC; e*off > 0 && math.Abs(e) > bandK {
			seen++
		} else {
			seen = 0
		}
	}
	return seen >= 2 || f.grates() < 2 && math.Abs(off) > onceFarK
}

// grows says whether the grate is foretold to come up as the vents stand.
func (f *Fire) grows() bool {
	return f.plain(f.bits(), f.Vents(), lookLast).Middle > f.Now().Middle
}

// shut says whether both vents are shut, with food over the fire: that puts a fire out.
func (f *Fire) shut(want Want) bool { return f.told && !want.NoFood && f.top <= 0 && f.bottom <= 0 }

// reopened are the vents that wake a fire which was shut off: the cooler it is, the wider. One that is still far too hot
// stays shut until it has fallen, but for the least that its top vent may have.
func (f *Fire) reopened(want Want) Vents {
	switch off := f.off(want); {
	case off > shutHotK:
		return Vents{leastTop, 1. / 16}
	case off > -bandK:
		return Vents{1. / 4, 1. / 8}
	case off > -2*bandK:
		return Vents{1. / 2, 1. / 4}
	}
	return Vents{1, 1}
}

// unreadOpen are the vents of a fire that was shut off and that nobody read since: enough to keep it, until it is read.
func unreadOpen() Vents { return Vents{1. / 4, 1. / 8} }

// pushed is the choice of a grate that stays out of its band though nothing brings it back: the best of the vents that
// are open, or shut, a mark further.
func (f *Fire) pushed(bits []guess, want Want) (best Vents, ok bool) {
	off, least := f.off(want), math.Inf(1)
	for _, v := range f.oneFurther(off > 0, want) {
		if !f.allowed(v, want) || !f.step(v, want) {
			continue
		}
		if cost := f.course(bits, v, want.LevelC, least); cost < least {
			best, least, ok = v, cost, true
		}
	}
	return best, ok
}

// oneFurther are the marks of the fine control that are more closed, or more open; where it has no more to give, those of the
// other vent.
func (f *Fire) oneFurther(less bool, want Want) []Vents {
	var tops, bottoms []Vents
	beyond := func(mark, now float64) bool {
		return !sameMark(mark, now) && (mark < now) == less
	}
	for _, t := range topMarks() {
		if v := (Vents{t, f.bottom}); beyond(t, f.top) && f.allowed(v, want) {
			tops = append(tops, v)
		}
	}
	for _, b := range bottomMarks() {
		if v := (Vents{f.top, b}); beyond(b, f.bottom) && f.allowed(v, want) {
			bottoms = append(bottoms, v)
		}
	}
	fine, other := tops, bottoms
	if want.SteerBottom || !less && f.begin.Grill.Usual().Ratio*f.bottom < f.top { // the bottom is the narrower way
		fine, other = bottoms, tops
	}
	if len(fine) > 0 {
		return fine
	}
	return other
}
