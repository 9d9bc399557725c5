package steer

import "slices"

// Remedy is something else than vents, and what the grate would have 45 min later with the vents set for it.
type Remedy struct {
	Do    Do
	Count int
	In45  Range
	Vents Vents
	Helps bool // it brings the middle near the level
}

const (
	remedyMinutes = 45.0
	nearK         = 20 / 1.8
	mostLit       = 40
	unlitTried    = 20
	spentShare    = 1. / 3 // of what has burnt, likewise, if it is not twice that much
	spentCoals    = 12.0   // lit and unlit together (of a 22.5 in kettle)
	ashBurnt      = 60.0
	worthK        = 15 / 1.8 // the least gain that a remedy, or more air, is worth the hands for (judgment)
	manyLit       = 2.2
	fewLit        = 0.7
	leaky         = 2.0
)

// beyondVents says what vents cannot do, once two looks agree on it, and what can.
func (f *Fire) beyondVents(a Advice, bits []guess) Advice {
	if f.shut(a.Want) {
		return a
	}
	alone := f.airAlone(a, bits)
	open := alone || f.openAndCool(a.Want)
	a.Reach = f.reach(a.Want)
	if ends := f.burntDown(); ends && f.off(a.Want) >= -bandK && a.Reach != TooHot { // it gives heat yet: what was read beats what was counted
		a.Reach, a.Ending = WithinReach, true
		return a
	} else if open || ends && a.Reach != TooHot {
		a.Reach = TooWeak
	}
	if a.Reach == TooWeak && (f.litLately() || f.chilled(a.Want)) {
		a.Remedies, a.Reach = f.feeding(bits, a.Want), WithinReach
		return a
	}
	if a.Reach == WithinReach || f.begin.Own == nil && f.grates() < 2 && a.Reach == TooHot {
		a.Reach = WithinReach
		return a
	}
	agreed := open || f.reachedBefore(a) || a.Reach == TooWeak && (f.burntDown() || f.fewFrom(a.Want))
	switch a.Reach {
	case TooWeak:
		a.Remedies = f.feeding(bits, a.Want)
		if !agreed {
			a.Reach = WithinReach
			return a
		}
		a.Why = f.weakBecause(slices.ContainsFunc(a.Remedies, func(r Remedy) bool { return r.Do == ClearAsh }))
		if a.Why == WindBlows && f.fewFrom(a.Want) || a.Why == Cool && alone {
			a.Why = FewLit
		}
		if alone && a.Why != Ashed {
			a.Remedies = slices.DeleteFunc(a.Remedies, func(r Remedy) bool { return r.Do == ClearAsh })
		}
		if a.Stormy { // nothing is lit in such a wind
			a.Remedies = slices.DeleteFunc(a.Remedies, func(r Remedy) bool { return r.Do == AddLit })
		}
		for _, r := range a.Remedies {
			if r.Helps {
				a.Do, a.Count, a.To = r.Do, r.Count, r.Vents
				return a
			}
		}
		if best, ok := warmest(a.Remedies); ok {
			a.Do, a.Count, a.To, a.NoneHelps = best.Do, best.Count, best.Vents, true
		}
	case TooHot:
		if !agreed {
			a.Reach = WithinReach
			return a
		}
		a.Why = f.hotBecause()
		a.MinutesToBand = f.minutesToBand(bits, a.To, a.Want)
	}
	return a
}

// openAndCool says whether all vents are open and the grate is far below its level, though nothing speaks for it that it
// comes up: it is not air that it lacks.
func (f *Fire) openAndCool(want Want) bool {
	since := f.minute - f.begin.PourMinute
	switch off := f.off(want); {
	case f.top < 0.99 || f.bottom < 0.99 || off > -openCoolK || !f.told:
		return false
	case f.comes(want) || f.freshCoals() || f.coldLoad() && off > -2*openCoolK || !f.begin.MidCook && since < warmingUntil:
		return false
	}
	return f.moves == 0 || f.minute-f.ventsAt >= sunkMinutes
}

const openCoolK = 40 / 1.8

// airAlone says whether a fire that has burnt for hours on coals that were counted would stay where it is, below its band, with the best
// vents: more air burns what is left and brings next to nothing.
func (f *Fire) airAlone(a Advice, bits []guess) bool {
	if f.begin.MidCook || f.known() || !f.ashLies() || f.off(a.Want) >= -bandK || f.freshCoals() || f.litLately() || f.comes(a.Want) {
		return false
	}
	later := f.plain(bits, a.To, remedyMinutes).Middle
	return later < a.Want.LevelC-bandK && later < f.Now().Middle+worthK
}

// chilled says whether food that went on cold within the hour, or less, explains a grate under all open vents that is this cool.
func (f *Fire) chilled(want Want) bool {
	r, ok := f.lastGrate()
	felt := ok && r.Minute-f.coldOn() >= coldFelt
	return felt && f.stoodBefore(want) && f.coldKg() >= coldLoadKg && f.minute-f.coldOn() <= coldFirst && f.off(want) > -(coldMostK+bandK)
}

// coldFelt is how soon after food went on a grate that is cool is so by it (judgment).
const coldFelt = 5.0

// fewFrom says whether a fire whose lit coals were counted at the pour has had half an hour under open vents and is so far below
// its level that more of them are wanted at once, before food lies on it.
func (f *Fire) fewFrom(want Want) bool {
	since := f.minute - f.begin.PourMinute
	return !f.begin.MidCook && f.top > 0.99 && f.bottom > 0.99 && since >= fewMinutes && since < ashMinutes && f.off(want) < -2*bandK && !f.comes(want)
}

// fewMinutes is when a fire that was lit shows what its lit coals give (common practice, no source: 20 to 30).
const fewMinutes = 25.0

// warmest is the remedy of several that brings most; of those that bring as much lit coals, for with them the ash comes out as
// well, and then the least trouble.
func warmest(all []Remedy) (best Remedy, ok bool) {
	for i, r := range all {
		more := r.In45.Middle - best.In45.Middle
		if i == 0 || more > muchWarmerK || r.Do == AddLit && more > -muchWarmerK {
			best, ok = r, true
		}
	}
	return best, ok
}

const muchWarmerK = 10 / 1.8

// reachedBefore says whether the look before found the same. It is asked on what is believed now, at the readings' own
// minutes: two readings of the grate some minutes apart, both on that side.
func (f *Fire) reachedBefore(a Advice) bool {
	last := -1.0
	for i := len(f.readings) - 1; i >= 0; i-- {
		r := f.readings[i]
		off := r.C - a.Want.LevelC
		if r.Kind != Grate || r.Deaf {
			continue
		}
		least := bandK
		if last >= 0 {
			least = bandK / 2 // the look before, on its way there
		}
		if a.Reach == TooWeak && off > -least || a.Reach == TooHot && off < least {
			return false
		}
		if last >= 0 && last-r.Minute >= looksApart {
			return last-r.Minute <= stale
		}
		if last < 0 {
			last = r.Minute
		}
	}
	return false
}

// with is the fire after a change of its coals, with the vents that serve it best of a few.
func (f *Fire) with(bits []guess, want Want, change func(*guess)) (Range, Vents) {
	changed := make([]guess, len(bits))
	for i, g := range bits {
		change(&g)
		changed[i] = g
	}
	var best Range
	var vents Vents
	for k, v := range []Vents{{1, 1}, {0.5, 1}, {0.5, 0.5}, {0.25, 0.5}} {
		run := f.plain(changed, v, remedyMinutes)
		if k == 0 || run.Middle > want.LevelC-nearK && abs(run.Middle-want.LevelC) < abs(best.Middle-want.LevelC) {
			best, vents = run, v
		}
	}
	best.Low, best.High = best.Low-widenK, best.High+widenK
	return best, vents
}

// burntDown says whether a fire whose coals were counted must be at its end by now, as was foretold of it.
func (f *Fire) burntDown() bool {
	_, left, _ := quantiles(f.guesses, func(g *guess) float64 { return g.coals.Lit + g.coals.Unlit })
	return !f.begin.MidCook && f.minute-f.begin.PourMinute > countedMinutes && left < spentCoals*f.hearth.Size()
}

const countedMinutes = 120.0

func abs(x float64) float64 { return max(x, -x) }

// feeding are the remedies of a fire that is too weak, the smallest first.
func (f *Fire) feeding(bits []guess, want Want) []Remedy {
	var out []Remedy
	add := func(do Do, count int, change func(*guess)) Remedy {
		r := Remedy{Do: do, Count: count}
		r.In45, r.Vents = f.with(bits, want, change)
		r.Helps = r.In45.Middle > want.LevelC-nearK
		out = append(out, r)
		return r
	}
	alone, _ := f.with(bits, want, func(*guess) {})
	if f.ashLies() {
		if clear := add(ClearAsh, 0, cleared); clear.In45.Middle < alone.Middle+worthK {
			out = out[:0]
		} else if clear.Helps {
			return out
		}
	}
	if f.off(want) < -openCoolK { // unlit coals cool it more before they catch
		count := f.litFor(bits, want)
		add(AddLit, count, lit(count))
		return out
	}
	if add(AddUnlit, unlitTried, func(g *guess) { g.coals.Unlit += unlitTried }).Helps {
		return out
	}
	if out[len(out)-1].In45.Middle < alone.Middle+worthK {
		out = out[:len(out)-1] // unlit coals alone do next to nothing in time
	}
	count := f.litFor(bits, want)
	add(AddLit, count, lit(count))
	return out
}

// Fewer lit coals than these are not worth the lid, and they are counted by fives (judgment).
const (
	leastLit = 15
	litBy    = 5
)

func lit(n int) func(*guess) { return func(g *guess) { g.coals.Lit += float64(n) } }

// litFor is how many lit coals bring the grate near a level, no fewer and no more than are advised.
func (f *Fire) litFor(bits []guess, want Want) int {
	low, high := leastLit/litBy, mostLit/litBy
	for low < high {
		middle := (low + high) / 2
		if r, _ := f.with(bits, want, lit(middle*litBy)); r.Middle > want.LevelC-nearK {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return high * litBy
}

// LitFor is how many lit coals a fire that sinks wants to come back near a level within 45 min.
func (f *Fire) LitFor(want Want) int { return f.litFor(f.bits(), want) }

func cleared(g *guess) { g.coals.Burnt *= ashLeft }

// ashHelps says whether clearing the ash would bring anything: else it is not what keeps the fire down.
func (f *Fire) ashHelps(bits []guess, want Want) bool {
	if f.burnt() <= ashBurnt*f.hearth.Size()*f.hearth.Size() {
		return false
	}
	alone, _ := f.with(bits, want, func(*guess) {})
	with, _ := f.with(bits, want, cleared)
	return with.Middle >= alone.Middle+worthK
}

// burnt is what lies there as ash, in briquettes.
func (f *Fire) burnt() float64 {
	_, burnt, _ := quantiles(f.guesses, func(g *guess) float64 { return g.coals.Burnt })
	return burnt
}

// weakBecause names what keeps the fire down, the likeliest that the log knows of.
func (f *Fire) weakBecause(ashHelps bool) Why {
	_, left, _ := quantiles(f.guesses, func(g *guess) float64 { return g.coals.Lit + g.coals.Unlit })
	_, unlit, _ := quantiles(f.guesses, func(g *guess) float64 { return g.coals.Unlit })
	switch size := f.hearth.Size(); {
	case left < spentCoals*size, left < spentShare*f.burnt() && left < 2*spentCoals*size:
		return Spent
	case f.litN() < fewLit && unlit > spentCoals*size:
		return FewLit
	case ashHelps:
		return Ashed
	case f.windy():
		return WindBlows
	case f.litN() < fewLit:
		return FewLit
	}
	return Cool
}

func (f *Fire) hotBecause() Why {
	if f.told && f.bottom <= leastDrawn && f.top > nearlyShut {
		return Leaks // the way from below is shut already
	}
	_, leak, _ := quantiles(f.guesses, func(g *guess) float64 { return g.traits.Leak })
	usual := f.begin.Grill.Usual()
	if leak > leaky*usual.Leak {
		return Leaks
	}
	if f.litN() > f.fullN() {
		return ManyLit
	}
	return Leaks
}

func (f *Fire) fullN() float64 {
	_, full, _ := quantiles(f.guesses, func(g *guess) float64 { return g.traits.Full })
	return full
}

// minutesToBand is how long a fire that is too hot takes at its least marks.
func (f *Fire) minutesToBand(bits []guess, v Vents, want Want) int {
	for m := 15; m <= 120; m += 15 {
		if r := f.plain(bits, v, float64(m)); r.Middle <= want.LevelC+bandK {
			return m
		}
	}
	return 0
}
