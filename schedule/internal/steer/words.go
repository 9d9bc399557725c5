package steer

import (
	"fmt"
	"strings"

	"example.com/cookday/schedule/internal/fire"
	"example.com/cookday/schedule/unit"
)

// Told is an advice as a cook reads it: first what to do, then what to expect, when to look, and why.
type Told struct {
	Do     string
	Expect string
	Look   string
	Why    string
	Also   []string // what else to mind, and other ways
}

// Sentences are all of it in one line.
func (t Told) Sentences() string {
	var parts []string
	for _, s := range append([]string{t.Do, t.Expect, t.Look, t.Why}, t.Also...) {
		if s != "" {
			parts = append(parts, s)
		}
	}
	return strings.Join(parts, " ")
}

// Tell puts an advice into words.
func (a Advice) Tell(sys unit.System) Told {
	w := wording{a, sys}
	t := Told{Do: w.do(), Why: w.why()}
	t.Expect, t.Look = w.expect(), w.look()
	t.Also = w.also()
	return t
}

// guessK is the width of a range from which on it tells a cook nothing (100 °F; judgment): then only the direction is told. A
// single figure is never told.
const guessK = 100 / 1.8

// expect is what the grate will show; of coals that are added, once they are in.
func (w wording) expect() string {
	a := w.a
	if !a.Figures() {
		return ""
	}
	for _, r := range a.Remedies {
		if r.Do == a.Do && r.Count == a.Count {
			return fmt.Sprintf("Expect %s 45 min later, by your thermometer at the grate; until then about %s.", w.span(r.In45), w.span(a.In15))
		}
	}
	if a.In15.High-a.In15.Low > guessK {
		return fmt.Sprintf("Expect it %s, by your thermometer at the grate. How far is a guess yet: log the next reading, with the vents as they stand.", w.heading())
	}
	return fmt.Sprintf("Expect %s in 15 min and %s in 30 min, by your thermometer at the grate.", w.span(a.In15), w.span(a.In30))
}

// heading is where the grate is bound for, without a figure.
func (w wording) heading() string {
	switch by := w.a.In30.Middle - w.a.Now.Middle; {
	case by > headingK:
		return "to come up"
	case by < -headingK:
		return "to come down"
	}
	return "to stay about where it is"
}

// headingK is a change that a cook sees (assumption).
const headingK = 10 / 1.8

func (w wording) look() string {
	a := w.a
	switch {
	case a.LookMinutes == 0, a.Do == Relight, a.Do == ReadAgain:
		return "" // what to do says it
	case a.Do == LookFirst:
		return fmt.Sprintf("If you see neither, read again in %d min.", a.LookMinutes)
	case a.Do == Leave && a.LookMinutes >= lookLast:
		return fmt.Sprintf("Look again in %d min, or %d min after the lid was off.", a.LookMinutes, lidAgainIn)
	}
	return fmt.Sprintf("Look again in %d min.", a.LookShown())
}

// LookShown is when to look again as a cook is told it: nobody looks in nine minutes.
func (a Advice) LookShown() int {
	if a.LookMinutes > readAgainIn && a.LookMinutes < lidAgainIn {
		return lidAgainIn
	}
	return a.LookMinutes
}

// Figures says whether the advice may name what to expect: never of a lid's gauge alone, nor of a reading that cannot be.
func (a Advice) Figures() bool {
	switch a.Do {
	case ReadAgain, LookFirst, HoldProbe, NoAdvice, Relight:
		return false
	}
	return a.Trust != NoReading
}

type wording struct {
	a   Advice
	sys unit.System
}

func (w wording) grate(c float64) string { return w.sys.Grate(unit.Temperature(c)) }

// span is "265 to 290 °F".
func (w wording) span(r Range) string {
	low, high := w.grate(r.Low), w.grate(r.High)
	if low == high {
		return "about " + low
	}
	return strings.Fields(low)[0] + " to " + high
}

func (w wording) do() string {
	a := w.a
	switch a.Do {
	case Leave:
		if a.Why == LidWasOff {
			return "Leave the vents as they are: the lid was off just now."
		}
		return "Leave the vents as they are."
	case Move:
		if a.Trust == NoReading {
			return w.move() + " Then read the grate: hold a thermometer at grate height, 2 in from the food."
		}
		return w.move()
	case AddLit:
		switch {
		case a.AllOpen() && a.Ashy:
			return fmt.Sprintf("Light %d more coals, rake the ash out, and add them when they are gray.", a.Count)
		case a.AllOpen():
			return fmt.Sprintf("Light %d more coals, lid shut meanwhile, and add them when they are gray.", a.Count)
		}
		return fmt.Sprintf("Light %d more coals and add them when they are gray. %s", a.Count, openThem(a.To))
	case AddUnlit:
		return fmt.Sprintf("Lay %d unlit coals against the lit ones. %s", a.Count, openThem(a.To))
	case ClearAsh:
		text := "Clear the ash: work the cleaner a few times. "
		if a.Door {
			text = "Clear the ash: rake gently through the door. "
		}
		if a.AllOpen() {
			return strings.TrimSpace(text)
		}
		return text + openThem(a.To)
	case ReadAgain:
		return "Don't touch the vents yet. Move the probe 2 in from the food, at grate height, and read again in 5 min."
	case LookFirst:
		return "Don't open the lid. Look from where you stand: flames, or heavy smoke? " + putOut
	case Relight:
		if a.Stormy {
			return "The fire is out, and it is too windy to light another. " + toOven
		}
		return "The fire is out. Light a fresh chimney, and measure the food."
	case NoAdvice:
		return w.practice()
	}
	return w.hold()
}

// practice is all that is said where nothing is known of the vents, or they steer nothing.
func (w wording) practice() string {
	to := func(lowF, highF float64) string { return w.span(Range{Low: unit.FToC(lowF), High: unit.FToC(highF)}) }
	switch w.a.Outside {
	case Ceramic:
		return "Nothing is advised here on the vents of a ceramic cooker. Move them by little, and wait an hour for what that does."
	case TooHotToSteer:
		return "All vents open, lid off, the coals raked into a heap under the grate. Not hot enough? Food off and a chimney of lit coals on top, or sear longer."
	}
	return fmt.Sprintf("By common practice: both vents a quarter open for %s, a half for %s, all open for %s. Halve or double the top vent, and wait 15 min.",
		to(225, 275), w.grate(unit.FToC(300)), to(350, 400))
}

const (
	putOut = "If so, shut both vents, stand back, and don't look for 15 min. Never water."
	// What is under its minimum goes on at full heat, or not at all.
	ovenHeat = "poultry and ground meat at 325 °F, other meat at 250 °F or more"
	toOven   = "Take the food to the kitchen oven now, in a rimmed pan: " + ovenHeat + "."
)

// hold asks for a look at grate height, and says only the direction.
func (w wording) hold() string {
	a := w.a
	if a.Trust != GaugeOnly {
		return "Read the grate: hold a thermometer at grate height, 2 in from the food."
	}
	text := "Hold a thermometer at grate height first. "
	vent := "top"
	if a.Want.SteerBottom {
		vent = "bottom"
	}
	switch {
	case a.Direction < 0:
		return text + fmt.Sprintf("If the grate is too hot as well, close the %s vent a little.", vent)
	case a.Direction > 0:
		return text + fmt.Sprintf("If the grate is too cool as well, open the %s vent a little.", vent)
	}
	return text + "Until then leave the vents as they are."
}

func openThem(v Vents) string {
	if v.Top > 0.99 && v.Bottom > 0.99 {
		return "Open both vents fully."
	}
	return fmt.Sprintf("Set the top vent to %s and the bottom vent to %s.", fire.MarkWords(v.Top), fire.MarkWords(v.Bottom))
}

func (w wording) move() string {
	a := w.a
	var parts []string
	for _, v := range []struct {
		name     string
		from, to float64
	}{{"top", a.From.Top, a.To.Top}, {"bottom", a.From.Bottom, a.To.Bottom}} {
		if sameMark(v.from, v.to) {
			continue
		}
		verb := "open"
		if v.to < v.from {
			verb = "close"
		}
		parts = append(parts, fmt.Sprintf("%s the %s vent from %s to %s", verb, v.name, fire.MarkWords(v.from), fire.MarkWords(v.to)))
	}
	text := strings.Join(parts, ", and ")
	if len(parts) == 1 && sameMark(a.From.Bottom, a.To.Bottom) {
		text += "; leave the bottom vent as it is"
	} else if len(parts) == 1 {
		text += "; leave the top vent as it is"
	}
	return strings.ToUpper(text[:1]) + text[1:] + "."
}
