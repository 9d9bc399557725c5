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
	if a.Figures() {
		t.Expect = fmt.Sprintf("Expect %s in 15 min and %s in 30 min, by your thermometer at the grate.", w.span(a.In15), w.span(a.In30))
	}
	if a.LookMinutes > 0 {
		t.Look = fmt.Sprintf("Look again in %d min.", a.LookMinutes)
		if a.Do == Leave && a.LookMinutes >= lookLast {
			t.Look = fmt.Sprintf("Look again in %d min, or %d min after the lid was off.", a.LookMinutes, lidAgainIn)
		}
	}
	t.Also = w.also()
	return t
}

// Figures says whether the advice may name what to expect: never of a lid's gauge alone, nor of a reading that cannot be.
func (a Advice) Figures() bool {
	switch a.Do {
	case ReadAgain, LookFirst, HoldProbe, NoAdvice, Relight:
		return false
	}
	return true
}

type wording struct {
	a   Advice
	sys unit.System
}

func (w wording) grate(c float64) string { return w.sys.Grate(unit.Temperature(c)) }

// span is "265 to 290 F".
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
		return w.move()
	case AddLit:
		return fmt.Sprintf("Light %d more coals and add them when they are gray. %s", a.Count, openThem(a.To))
	case AddUnlit:
		return fmt.Sprintf("Lay %d unlit coals against the lit ones. %s", a.Count, openThem(a.To))
	case ClearAsh:
		return "Clear the ash: work the cleaner a few times, or rake gently through the door. " + openThem(a.To)
	case ReadAgain:
		return "Don't touch the vents yet. Move the probe 2 in from the food, at grate height, and read again in 5 min."
	case LookFirst:
		return "Don't open the lid. Look from where you stand: flames, or heavy smoke? " + putOut
	case Relight:
		return "The fire is out. Take the food off the grate, and light a fresh chimney."
	case NoAdvice:
		return Practice
	}
	return w.hold()
}

// Practice is all that is said where nothing is known.
const Practice = "By common practice: both vents a quarter open for 225 to 275 F, a half for 300 F, all open for 350 to 400 F. Halve or double the top vent, and wait 15 min."

const putOut = "Then shut both vents, stand back, and don't look for 15 min. Never water."

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
