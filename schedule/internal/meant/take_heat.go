package meant

import (
	"strconv"
	"strings"

	"example.com/cookday/schedule/cut"
	"example.com/cookday/schedule/internal/strict"
	"example.com/cookday/schedule/unit"
)

// target is how done a dish is to be, in words of its own.
func (t *taker) target(dish, value *strict.Node) (*strict.Node, bool) {
	if dish.Get("target") != nil {
		return nil, false
	}
	if c := dish.Get("cut"); c != nil && value.Kind == strict.NodeText {
		if found, unknown := cut.One(c.Text); unknown == "" {
			if word, usual := donenessOf(found, value.Text); usual {
				t.say("%s of %s is as it is usually done", strconv.Quote(value.Text), c.Text)
				return dish, true
			} else if word != "" {
				return dish.With("target", strict.NewText(word, value.Line)), true
			}
		}
	}
	return dish.With("target", value), true
}

// heatOf says whether a field is a heat, and may be that of the grate or of the meat.
func heatOf(word string) bool {
	return oneOf(word, "temp", "temperature", "heat", "at", "cookat", "cooktemp", "cookingtemp", "gratetemp", "pit", "pittemp", "smokertemp", "grilltemp", "oventemp", "chambertemp", "finishtemp", "internal", "internaltemp", "core", "coretemp", "final", "finaltemp", "targettemp", "doneat", "pull", "pullat", "pulltemp", "tempinternal")
}

// whichHeat tells the heat at the grate from the one inside, where the name or the figure
// leaves no doubt: no grate is held at 203 F, and no meat is done at 225 F.
func (t *taker) whichHeat(word string, value *strict.Node, of string) (field, text string) {
	text = value.Text
	if value.Kind == strict.NodeNumber || digitsOnly.MatchString(strings.TrimSpace(text)) {
		text += " " + heatUnit(of, value.Text)
	}
	at, err := unit.ParseTemperature(text)
	if err != nil {
		return "", ""
	}
	inside := oneOf(word, "finishtemp", "internal", "internaltemp", "core", "coretemp", "final", "finaltemp", "targettemp", "doneat", "pull", "pullat", "pulltemp", "tempinternal")
	outside := oneOf(word, "cookat", "cooktemp", "cookingtemp", "gratetemp", "pit", "pittemp", "smokertemp", "grilltemp", "oventemp", "chambertemp")
	f := at.Fahrenheit()
	switch {
	case inside && f <= 212, !outside && f >= 110 && f <= 208:
		if !inside {
			t.say("%s is read as how hot it is inside when it is done; the heat at the grate would be level: %s", strconv.Quote(word+": "+value.Text), text)
		}
		return "target", text
	case outside && f >= 180, !inside && f >= 215:
		return "level", text
	}
	return "", ""
}

// isGrateHeat says whether a heat at the top of a request can only be that of the grate.
func (t *taker) isGrateHeat(name string, value *strict.Node) bool {
	if value.Kind != strict.NodeText && value.Kind != strict.NodeNumber {
		return false
	}
	_, of := unitOfName(name)
	text := value.Text
	if value.Kind == strict.NodeNumber || digitsOnly.MatchString(strings.TrimSpace(text)) {
		text += " " + heatUnit(of, value.Text)
	}
	at, err := unit.ParseTemperature(text)
	return err == nil && at.Fahrenheit() >= 215 && at.Fahrenheit() <= 700
}

// startHeat is how cold a dish goes on, with its unit: of a bare number what it can only be,
// for no refrigerator is at 5 F or at 38 C; empty where it may be either.
func startHeat(text, of string) string {
	number := strings.TrimSpace(text)
	v, err := strconv.ParseFloat(number, 64)
	switch {
	case err != nil && isQuantity(text):
		return text
	case err != nil:
		return ""
	case of != "":
		return number + " " + of
	case v >= 30 && v <= 75:
		return number + " F"
	case v >= -1 && v <= 12:
		return number + " C"
	}
	return ""
}

// heatUnit is the unit of a heat that is given without one.
func heatUnit(of, number string) string {
	if of != "" {
		return strings.ToUpper(of)
	}
	if v, err := strconv.ParseFloat(number, 64); err == nil && v <= 105 { // no meat is done at 105 F, and no grate is held there
		return "C"
	}
	return "F"
}
