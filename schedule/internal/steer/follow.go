package steer

import (
	"math"
	"slices"

	"example.com/cookday/schedule/internal/fire"
)

// Fire is what is believed of a fire after its log.
type Fire struct {
	begin   *Begin
	log     []Event  // as taken
	weigher *weigher // of draws that nothing moves; nil where readings pull at the guesses
	hearth  fire.Hearth
	sway    sway
	dice    dice
	minute  float64
	guesses []guess
	few     []guess // that stand for all, until something is known anew

	top, bottom float64
	told        bool // vents: somebody said so
	lidOffFrom  float64
	lidOff      bool
	closesAt    float64 // of a lid whose closing nobody tells
	deafUntil   float64 // readings before mean little
	litLater    bool    // lit coals were added to it
	litAt       float64 // and when, the last of them
	meats       []Event
	windMS      float64 // as told; below zero: as forecast
	out         bool
	fed         bool    // unlit coals, at fedAt
	fedAt       float64 // minute
	lidShut     float64 // minute at which the lid was last closed

	readings []Seen
	touched  float64 // minute of the last thing that was done
	moves    int
	ventsAt  float64 // minute since which they stand so
}

// Seen is a reading, and how it fitted what was expected.
type Seen struct {
	Event
	ExpectedC float64
	Surprise  float64 // square of the error in its own spread
	Deaf      bool    // the lid was off: it moved nothing
	JumpK     float64 // against the reading before, if that is at most 10 min old and nothing was done since
	Reach     Reach   // what the vents could do then
}

const stepMinutes = 3.0

// Lids (practice says 1-4 min; the settling is measured on logs for a short look, and longer for a load).
const (
	lidMinutes     = 3
	lidSettles     = 6
	loadSettles    = 15
	bigLoadKg      = 4 // assumption
	jumpWithinMins = 10
)

// Follow believes a log up to a minute. Vents are those of Begin until the log names others.
func Follow(b Begin, events []Event, until float64) *Fire {
	log := inOrder(events)
	f := newFire(&b, log, guesses)
	f.burn(log, until)
	return f
}

// newFire is a fire before anything is known of it, as so many guesses.
func newFire(b *Begin, log []Event, n int) *Fire {
	f := &Fire{begin: b, hearth: b.Grill.Hearth(b.Layout, b.Section), dice: dice{state: b.Seed}, top: b.Top, bottom: b.Bottom, told: !b.VentsUnsure, windMS: -1}
	f.sway = swayOf(b.record())
	f.minute = b.PourMinute
	if b.MidCook && len(log) > 0 {
		f.minute = log[0].Minute
	}
	f.touched, f.lidShut = f.minute, math.Inf(-1)
	f.start(log, n)
	return f
}

// burn takes what a log says up to a minute.
func (f *Fire) burn(log []Event, until float64) {
	for _, e := range log {
		if e.Minute > until {
			break
		}
		if e.isReading() && e.Minute < f.minute {
			continue // before the pour
		}
		f.advance(e.Minute)
		f.take(e)
	}
	f.advance(until)
}

// start draws the guesses. Of a fire met in mid cook vents that are told at once are those it burnt under.
func (f *Fire) start(log []Event, n int) {
	for _, e := range log {
		if e.Kind == VentsSet && e.Minute == f.minute && f.begin.MidCook && !slices.ContainsFunc(log, func(o Event) bool { return o.Kind == VentsSet && o.Minute == e.Minute && o != e }) {
			f.vents(e)
		}
	}
	s, known := f.setting(f.minute), f.begin.record()
	f.guesses = make([]guess, n)
	for i := range f.guesses {
		f.guesses[i] = f.begin.draw(&f.dice, known, &f.hearth, s)
	}
}

func (f *Fire) weather(minute float64) fire.Weather {
	w := f.begin.Weather(minute)
	if f.windMS >= 0 {
		w.WindMS = f.windMS
	}
	return w
}

// setting is what stands about the fire, but for its cold food.
func (f *Fire) setting(minute float64) fire.Setting {
	s := f.begin.Grill.Setting(f.weather(minute), f.top, f.bottom, 0)
	s.LidOff = f.lidOff
	return s
}

// coldAt is the share that cold food adds to the loss.
func (f *Fire) coldAt(minute float64) float64 {
	cold := 0.0
	for _, m := range f.meats {
		cold += fire.ColdMeat(m.Kg, minute-m.Minute)
	}
	return cold
}

// advance lets the guesses burn on.
func (f *Fire) advance(to float64) {
	f.few = nil
	for f.minute < to {
		end := min(to, f.minute+stepMinutes)
		if f.lidOff && f.closesAt > f.minute {
			end = min(end, f.closesAt)
		}
		s, cold, dt := f.setting(f.minute), f.coldAt(f.minute), end-f.minute
		root := math.Sqrt(dt / 5)
		stepAll(f.guesses, &f.hearth, &s, cold, dt)
		if f.weigher == nil {
			by := gusts(root) // of all of them
			f.each(func(g *guess) { g.wander(&f.dice, root, by) })
		}
		f.minute = end
		if f.lidOff && f.minute >= f.closesAt {
			f.closeLid()
		}
	}
}

func (f *Fire) closeLid() {
	settles := float64(lidSettles)
	for _, m := range f.meats {
		if m.Minute >= f.lidOffFrom {
			settles = max(settles, settlesAfter(m.Kg))
		}
	}
	f.lidOff, f.lidShut, f.deafUntil = false, f.minute, f.minute+settles
}

// settlesAfter is how long a load deafens the probe.
func settlesAfter(kg float64) float64 {
	if kg > bigLoadKg {
		return loadSettles
	}
	return lidSettles
}

// take believes one event.
func (f *Fire) take(e Event) {
	f.few = nil
	if f.weigher == nil {
		f.log = append(f.log, e)
	}
	if e.isReading() {
		f.read(e)
		return
	}
	f.touched = e.Minute
	switch e.Kind {
	case VentsSet:
		f.vents(e)
	case LidOff:
		f.lidOff, f.lidOffFrom, f.closesAt = true, e.Minute, e.Minute+lidMinutes
		if e.closed > e.Minute {
			f.closesAt = e.closed
		}
		f.deafUntil = math.Inf(1)
	case LidOn:
		f.closeLid()
	case Meat:
		f.meats = append(f.meats, e)
		f.deafUntil = max(f.deafUntil, e.Minute+settlesAfter(e.Kg))
	case Wind:
		f.windMS = e.WindMS
	case Out:
		f.out = true
		f.each(func(g *guess) { g.coals.Lit = 0 })
	default:
		f.coals(e)
	}
}

// coals are poured or added, or their ash is cleared.
func (f *Fire) coals(e Event) {
	f.out = f.out && (e.Kind == Unlit || e.Kind == CoalsOut)
	if e.Kind == Unlit && e.Count >= freshCount*f.hearth.Size() && e.Minute > f.begin.PourMinute+stepMinutes {
		f.fed, f.fedAt = true, e.Minute
	}
	if e.Kind == Lit && e.Count >= freshCount*f.hearth.Size() && e.Minute > f.begin.PourMinute+stepMinutes {
		f.litLater, f.litAt = true, e.Minute
	}
	f.each(func(g *guess) {
		switch e.Kind {
		case Pour:
			g.coals.Lit += e.Count * f.dice.factor(countSpread)
			g.coals.Unlit += e.Unlit * f.dice.factor(countSpread)
		case Lit:
			g.coals.Lit += e.Count * f.dice.factor(countSpread)
		case Unlit:
			g.coals.Unlit += e.Count * f.dice.factor(countSpread)
		case CoalsOut:
			g.takeOut(e.Count, f.dice.factor(countSpread))
		case AshCleared:
			g.coals.Burnt *= ashLeft * f.dice.factor(burntSpread)
		}
	})
}

// ashLeft is what a rake leaves of the ash (assumption).
const ashLeft = 0.15

func (f *Fire) each(do func(*guess)) {
	for i := range f.guesses {
		do(&f.guesses[i])
	}
}

func (f *Fire) vents(e Event) {
	was := [2]float64{f.top, f.bottom}
	if e.Top >= 0 {
		f.top = min(e.Top, 1)
	}
	if e.Bottom >= 0 {
		f.bottom = min(e.Bottom, 1)
	}
	f.told = true
	if was != [2]float64{f.top, f.bottom} {
		f.moves, f.ventsAt = f.moves+1, e.Minute
	}
}

// read weighs the guesses by a reading.
func (f *Fire) read(e Event) {
	rise := e.C - f.weather(e.Minute).AirC
	mean, sd := f.moments(e.Kind)
	seen := Seen{Event: e, ExpectedC: e.C - rise + mean, Deaf: f.lidOff || e.Minute < f.deafUntil}
	seen.Surprise = (rise - mean) * (rise - mean) / (sd*sd + readK*readK)
	for _, r := range f.readings {
		if r.Kind == e.Kind && !r.Deaf && e.Minute-r.Minute <= jumpWithinMins && f.touched <= r.Minute {
			seen.JumpK = e.C - r.C
		}
	}
	f.readings = append(f.readings, seen)
	switch {
	case seen.Deaf:
	case f.weigher == nil && e.Kind == Gauge && f.grateLately(e.Minute):
		f.pullRatio(rise)
	case f.weigher != nil:
		f.weigher.read(f.guesses, e.Kind, rise, e.Minute)
	case f.agreed(len(f.readings)-1) || f.couldBe(len(f.readings)-1): // what a second look confirms, or time explains, is no slip
		f.pull(e.Kind, rise, 0)
	default:
		f.pull(e.Kind, rise, seen.Surprise)
	}
}

// moments are mean and spread of what a thermometer would show, K above the air.
func (f *Fire) moments(k Kind) (mean, sd float64) {
	squares, n := 0.0, float64(len(f.guesses))
	for i := range f.guesses {
		x := f.guesses[i].shows(k)
		mean += x / n
		squares += x * x / n
	}
	return mean, math.Sqrt(max(squares-mean*mean, 0))
}
