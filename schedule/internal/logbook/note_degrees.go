package logbook

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/cookday/schedule/unit"
)

// degrees is a temperature with its unit; the sentence asks back where it is in doubt.
func (n *noteReader) degrees(kind Kind, dish, text string) (string, string) {
	if text == "" || !noteNumber.MatchString(text) {
		return text, ""
	}
	if strings.HasSuffix(text, "f") || strings.HasSuffix(text, "c") {
		return strings.ToUpper(text), ""
	}
	value, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
	if err != nil {
		return text, ""
	}
	own, other := "F", "C"
	ownC, otherC := unit.FToC(value), value
	if n.day.Units == unit.Metric {
		own, other, ownC, otherC = "C", "F", otherC, ownC
	}
	if !n.doubtful(kind, dish, ownC, otherC) {
		return text + " " + own, ""
	}
	return "", fmt.Sprintf("%s %s does not fit here; %s %s, that is %s, may be meant. Type the letter after the number: %s%s if it does show that, else %s%s.",
		text, own, text, other, n.day.Units.Core(unit.Temperature(otherC)), text, own, text, other)
}

// A temperature is in doubt where it is far from what it should be near, and in the other
// unit would be near it (assumptions).
const farK, nearK, freshHours = 25, 15, 1.5

// coldGrateC is colder than a fire that died hours ago leaves a grate on a summer night:
// a digit may be missing (assumption).
const coldGrateC = 10

// doubtful says whether a number was likely meant in the other unit.
func (n *noteReader) doubtful(kind Kind, dish string, ownC, otherC float64) bool {
	if kind == Grate && ownC < coldGrateC {
		return true
	}
	if kind != Core && kind != Outer {
		level, ok := n.levelC()
		return ok && (ownC-level < -2*farK || ownC-level > 2*farK) && otherC-level > -2*nearK && otherC-level < 2*nearK
	}
	if ownC > 105 { // no meat is above boiling
		return true
	}
	var last *Entry
	on := false
	for i, e := range n.log {
		if e.Dish != dish && (dish != "" || len(n.day.Dishes) > 1) {
			continue
		}
		switch {
		case e.Kind == Core:
			last = &n.log[i]
		case e.Kind == On:
			on = n.at.Sub(e.At).Hours() > freshHours
		}
	}
	if last != nil {
		off := ownC - last.C
		return (off < -farK || off > farK) && otherC-last.C > -nearK && otherC-last.C < nearK
	}
	return on && ownC < 25 && otherC > 40
}

// levelC is the planned heat of the fire at the time of the note.
func (n *noteReader) levelC() (float64, bool) {
	level, ok := 0.0, false
	for _, f := range n.day.Fires {
		if !ok || !f.From.After(n.at) {
			level, ok = f.LevelC, true
		}
	}
	return level, ok
}
