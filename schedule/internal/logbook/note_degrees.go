package logbook

import (
	"fmt"
	"math"
	"slices"
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
	if meat := kind == Core || kind == Coldest || kind == Outer; meat && (otherC > boilingC || otherC < hardFrozenC) {
		return "", fmt.Sprintf("%s %s does not fit here: no meat is that %s. A digit may be wrong; the air at the grate is noted as: grate %s", text, own, hotOrCold(ownC), text)
	}
	return "", fmt.Sprintf("%s %s does not fit here; %s %s, that is %s, may be meant. Type the letter after the number: %s%s if it does show that, else %s%s.",
		text, own, text, other, n.day.Units.Core(unit.Temperature(otherC)), text, own, text, other)
}

func hotOrCold(c float64) string {
	if c > boilingC {
		return "hot"
	}
	return "cold"
}

// A temperature is in doubt where it is far from what it should be near, and in the other
// unit would be near it (assumptions).
const farK, nearK, freshHours = 25, 15, 4

// coldGrateC is colder than a fire that died hours ago leaves a grate on a summer night:
// a digit may be missing (assumption).
const coldGrateC = 10

// No meat is warmer than boiling water, with what a thermometer may be off; none that
// lies on a fire is colder than this, frozen or not, degC (the second an assumption).
const boilingC, hardFrozenC = 105, -10

// doubtful says whether a number was likely meant in the other unit. What cannot be in the
// other one stands as it was written: bad news is no harder to note than good.
func (n *noteReader) doubtful(kind Kind, dish string, ownC, otherC float64) bool {
	switch kind {
	case Core, Coldest, Outer:
		return n.doubtfulMeat(dish, ownC, otherC)
	case Grate, Gauge, Level:
		level, ok := n.levelC()
		near := ok && math.Abs(otherC-level) < nearK
		if ownC < level && slices.ContainsFunc(n.log, func(e Entry) bool { return e.Kind == kind && e.C > coldGrateC }) {
			near = false // a grate that falls is taken as it is told
		}
		return kind == Grate && ownC < coldGrateC || near && math.Abs(ownC-level) > 2*farK
	}
	return false // an oven that is off reads as low as one that was read in Celsius
}

func (n *noteReader) doubtfulMeat(dish string, ownC, otherC float64) bool {
	switch {
	case ownC > boilingC || ownC < hardFrozenC:
		return true
	case otherC > boilingC:
		return false
	}
	var last *Entry
	on := false
	for i, e := range n.log {
		if e.Dish != dish && (dish != "" || len(n.day.Dishes) > 1) {
			continue
		}
		switch {
		case e.Kind == Core || e.Kind == Coldest:
			last = &n.log[i]
		case e.Kind == On:
			on = n.at.Sub(e.At).Hours() > freshHours
		}
	}
	if last != nil {
		return math.Abs(ownC-last.C) > farK && math.Abs(otherC-last.C) < nearK
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
